import type { Seconds } from '../basics/units.ts';
import type { Entry, Round } from '../log/book.ts';

/** Time in which one shot or more were taken, from one entry of the log to a later one. */
export interface Span {
  readonly seconds: Seconds;
  readonly shots: number;
}

/** No ball is shot, comes down and is noted in less: taps closer than this were noted together. */
const LEAST: Seconds = 1;
/** Nobody takes longer over a shot; our own choice, as is the next. */
const MOST: Seconds = 120;
/** A shot that took more than so many times the usual one was something else: a drink, a call, a word with the coach. */
const TIMES_USUAL = 5;

/**
 * How long the shots of a round took, each from the moment the one before was noted: fetching the ball, the walk to the
 * next stop and the shot itself. Only shots noted one by one tell; the first has no one before it. Left out is what lies
 * around a pause, a turn the clock took, and anything beyond {@link MOST}. Shots noted in one go share their time.
 */
export function spansOf({ entries, breaks = [] }: Pick<Round, 'entries' | 'breaks'>): Span[] {
  const spans: { seconds: number; shots: number }[] = [];
  let open = false;
  for (const [at, entry] of entries.entries()) {
    const before = entries[at - 1];
    const seconds = before ? (entry.at - before.at) / 1000 : NaN;
    // Less than nothing: the device's clock was set back.
    const told = before !== undefined && seconds >= 0 && bothShots(before, entry);
    const whole = told && !breaks.some(between(before, entry));
    const last = spans.at(-1);
    if (whole && seconds < LEAST && open && last) {
      last.seconds += seconds;
      last.shots += 1;
    } else if (whole) spans.push({ seconds, shots: 1 });
    open = whole;
  }
  return spans.filter(({ seconds, shots }) => seconds >= LEAST * shots && seconds <= MOST * shots);
}

/** Leaves out of a round what took many times as long as usual in it. */
export function withoutStops(spans: readonly Span[]): Span[] {
  const each = spans.map(({ seconds, shots }) => seconds / shots).toSorted((a, b) => a - b);
  const usual = each[Math.floor(each.length / 2)] ?? Infinity;
  return spans.filter(({ seconds, shots }) => seconds <= TIMES_USUAL * usual * shots);
}

function bothShots(a: Entry, b: Entry): boolean {
  return a.kind === 'shot' && b.kind === 'shot';
}

function between(from: Entry, to: Entry): (at: number) => boolean {
  return (at) => from.at <= at && at <= to.at;
}
