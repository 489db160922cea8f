import type { EpochMs, Seconds } from '../basics/units.ts';
import type { Entry, Round } from '../log/book.ts';

/*
 * An earlier round shot again beside the one being played, each shot when it fell then. The log knows when a shot was
 * noted, but not when the first countdown was over, so both rounds are set level at their first shots. Where play stood
 * still (a pause, a call, a tablet that went to sleep) the usual time between two shots of that round stands in.
 */

/** Nobody takes longer over one shot; what did was something else. */
const LONGEST: Seconds = 120;
/** Where a round has no time between shots that can be used. Common practice, no source. */
const USUAL: Seconds = 7;

type Played = Pick<Round, 'entries' | 'breaks' | 'imported'>;

/**
 * Seconds from a round's first shot to each of its shots, standstills taken out; null where shots were not noted one by
 * one.
 */
export function shotTimes(round: Played): Seconds[] | null {
  const { entries } = round;
  if (round.imported || entries.some(({ kind }) => kind === 'count')) return null;
  const gaps = gapsOf(round);
  const usual = usualGap(gaps);
  const times: Seconds[] = [];
  for (const at of entries.keys()) {
    times.push(at === 0 ? 0 : (times[at - 1] ?? 0) + (gaps[at - 1] ?? usual));
  }
  return times;
}

/**
 * Seconds since a round's first shot, standstills taken out; null before that shot, and where shots are not noted one by
 * one.
 *
 * @param now while it is being played; null where it stands
 */
export function secondsIn(round: Played, now: EpochMs | null): Seconds | null {
  const last = round.entries.at(-1);
  const before = shotTimes(round)?.at(-1);
  if (!last || before === undefined) return null;
  const since = now === null ? null : gapBetween(round, last.at, now);
  return before + (since ?? 0);
}

/** How many shots had fallen after so many seconds. */
export function fallenBy(times: readonly Seconds[], seconds: Seconds): number {
  const ahead = times.findIndex((time) => time > seconds);
  return ahead === -1 ? times.length : ahead;
}

/** Seconds between each two entries; null where play stood still between them. */
function gapsOf(round: Played): (Seconds | null)[] {
  return round.entries
    .slice(1)
    .map(({ at }, before) => gapBetween(round, (round.entries[before] as Entry).at, at));
}

function gapBetween({ breaks = [] }: Played, from: EpochMs, to: EpochMs): Seconds | null {
  const seconds = (to - from) / 1000;
  const stood = breaks.some((at) => from <= at && at <= to);
  // Less than nothing: the device's clock was set back.
  return stood || seconds < 0 || seconds > LONGEST ? null : seconds;
}

function usualGap(gaps: readonly (Seconds | null)[]): Seconds {
  const told = gaps.filter((gap) => gap !== null).toSorted((a, b) => a - b);
  return told[Math.floor(told.length / 2)] ?? USUAL;
}
