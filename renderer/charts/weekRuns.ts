/* A band over the weeks, cut where weeks with shots meet weeks in which figures are only carried over. */

/** Weeks in a row that are alike. */
export interface Run {
  /** No shots in these weeks: the figures are carried over from their neighbours. */
  readonly carried: boolean;
  /** First and last week, from 0. */
  readonly from: number;
  readonly to: number;
}

/** A place on the axis of weeks, in weeks from its left end, and the value there. */
export type Along = readonly [at: number, value: number];

/** Cuts the weeks into runs as long as they can be. */
export function runsOf(carried: readonly boolean[]): Run[] {
  const runs: Run[] = [];
  for (const [week, now] of carried.entries()) {
    const last = runs.at(-1);
    if (last?.carried === now) runs[runs.length - 1] = { ...last, to: week };
    else runs.push({ carried: now, from: week, to: week });
  }
  return runs;
}

/**
 * A value along a run: through the middle of each week, and to the borders of the run, where it is half-way to the
 * neighbour, so that the next run goes on from there. At the ends of the season it runs on level.
 *
 * @param values one for each week of the season
 */
export function alongRun({ from, to }: Run, values: readonly number[]): Along[] {
  const of = (week: number): number => values[week] ?? NaN;
  const border = (week: number): number => {
    const [before, after] = [values[week - 1] ?? of(week), values[week] ?? of(week - 1)];
    return (before + after) / 2;
  };
  const middles = Array.from({ length: to - from + 1 }, (_, nth): Along => [
    from + nth + 0.5,
    of(from + nth),
  ]);
  return [[from, border(from)], ...middles, [to + 1, border(to + 1)]];
}
