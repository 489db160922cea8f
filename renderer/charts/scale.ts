/** From a value to a place on the drawing. */
export type Scale = (value: number) => number;

/** A straight scale: `from` maps to `start`, `to` to `end`; values beyond are held at the ends. */
export function linear(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
): Scale {
  const step = (end - start) / (to - from);
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  return (value) => start + (Math.min(high, Math.max(low, value)) - from) * step;
}

/** Round values from `from` to `to`, `step` apart, both ends included. */
export function ticks(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, at) => from + at * step);
}

const REACHES = [20, 40, 60, 100] as const;

/** How far an axis of points must reach to either side of 0 to hold all values; half of it is a round tick step. */
export function reachOf(values: Iterable<number>): number {
  let far = 0;
  for (const value of values) far = Math.max(far, Math.abs(value));
  return REACHES.find((reach) => far <= reach) ?? 100;
}

/** Points on an axis, with a real minus sign. */
export function signedTick(points: number): string {
  return points < 0 ? `−${-points}` : String(points);
}

/**
 * Whole tens around some values.
 *
 * @param least how far apart they lie at least, so that luck does not fill the plot
 */
export function tensAround(
  values: readonly number[],
  least: number,
  [floor, ceiling]: readonly [number, number],
): readonly [number, number] {
  let low = Math.max(floor, Math.floor(Math.min(...values) / 10) * 10);
  let high = Math.min(ceiling, Math.ceil(Math.max(...values) / 10) * 10);
  while (high - low < least) {
    if (low > floor) low -= 10;
    if (high < ceiling && high - low < least) high += 10;
  }
  return [low, high];
}
