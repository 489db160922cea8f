import type { Seconds } from '../basics/units.ts';

/**
 * A clock that runs down, as a value: what was left at one moment, and whether it has run since. Moments are on the
 * audio clock, so that what is seen, what is scored and what is heard agree.
 */
export interface GameClock {
  /** Full time. */
  readonly full: Seconds;
  /** What was left at `since`, or is left while it stands. */
  readonly left: Seconds;
  /** Since when it runs; may lie ahead. Null while it stands. */
  readonly since: Seconds | null;
}

/** A clock that stands with `left` on it. */
export function readyClock(full: Seconds, left: Seconds = full): GameClock {
  return { full, left: Math.max(0, Math.min(full, left)), since: null };
}

/** Runs the clock from `at` on, which may lie ahead. A running clock goes on from what it has left then. */
export function runClock(clock: GameClock, at: Seconds): GameClock {
  return { ...clock, left: leftAt(clock, at), since: at };
}

export function pauseClock(clock: GameClock, at: Seconds): GameClock {
  return { ...clock, left: leftAt(clock, at), since: null };
}

/** What is left at a moment; never below nothing. */
export function leftAt(clock: GameClock, at: Seconds): Seconds {
  if (clock.since === null || at <= clock.since) return clock.left;
  return Math.max(0, clock.left - (at - clock.since));
}

/** When it runs out; Infinity while it stands. */
export function endsAt(clock: GameClock): Seconds {
  return clock.since === null ? Number.POSITIVE_INFINITY : clock.since + clock.left;
}

/** Rounding of sums of seconds stays below this. */
const DUST = 1e-7;

/**
 * Time left as a scoreboard writes it: `34`, below ten seconds `9.4`, and `1:10` and `0:34` on a clock that began with a
 * minute or more. Rounds up, as time left is read: `0.0` stands only when it is over.
 *
 * Tenths are the smallest step that means something: a shot off a catch needs three of them (common practice).
 */
export function writeClock(left: Seconds, full: Seconds = left): string {
  if (left <= 0) return '0.0';
  const tenths = Math.max(1, Math.ceil((left - DUST) * 10));
  if (tenths < 100) return `${Math.floor(tenths / 10)}.${tenths % 10}`;
  const seconds = Math.ceil(left - DUST);
  if (Math.max(left, full) < 60) return String(seconds);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
