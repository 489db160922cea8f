import { oncePerList } from '../basics/remembered.ts';
import type { Points } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { Tally } from '../log/roundCells.ts';
import { cellsOf, type ByCondition, type Stratum } from './drop.ts';
import { sessionsOf } from './model/sessionOrder.ts';

/*
 * What may be said about a drop. The thresholds are fixed before anyone shoots, so that nobody can look until the
 * answer suits.
 */

/** No verdict before this many pressured shots: with 25 and 25 even a drop of 10 points shows one time in seven. */
export const LEAST_PRESSURED = 100;
/** No verdict before this many sessions with like shots in both conditions: one good or bad day must not decide. */
export const LEAST_SESSIONS = 4;
/** A drop inside ± this many points is about the same: no shooter would feel it, one shot in 33. */
export const ABOUT_SAME: Points = 3;
/** Level of the interval a verdict is read from; one-sided 5 %. */
export const READING_LEVEL = 0.9;

/** What a record holds that bears on the drop: shots from places seen in both conditions. */
export interface Evidence extends ByCondition<Tally> {
  /** Sessions in which a place was shot in both conditions. */
  readonly sessions: number;
}

/** What is missing for a first verdict; 0 where there is enough. */
export interface Needs {
  readonly pressured: number;
  readonly sessions: number;
}

/** Counted against {@link LEAST_PRESSURED} and {@link LEAST_SESSIONS}. */
export function needsOf({ pressured, sessions }: Evidence): Needs {
  return {
    pressured: Math.max(0, LEAST_PRESSURED - pressured.attempts),
    sessions: Math.max(0, LEAST_SESSIONS - sessions),
  };
}

/** The evidence in one shooter's rounds. */
export function evidenceOf(rounds: Iterable<Round>): Evidence {
  const all = [...rounds];
  const relaxed = { makes: 0, attempts: 0 };
  const pressured = { makes: 0, attempts: 0 };
  for (const cell of cellsOf(all).values()) {
    if (!inBoth(cell)) continue;
    relaxed.makes += cell.relaxed.makes;
    relaxed.attempts += cell.relaxed.attempts;
    pressured.makes += cell.pressured.makes;
    pressured.attempts += cell.pressured.attempts;
  }
  return { relaxed, pressured, sessions: sessionsOf(all).filter(hasBoth).length };
}

/** Relaxed free throws beside pressured threes compare nothing, so they make no session with both. */
const hasBoth = oncePerList((session: readonly Round[]): boolean =>
  [...cellsOf(session).values()].some(inBoth),
);

function inBoth({ relaxed, pressured }: Stratum): boolean {
  return relaxed.attempts > 0 && pressured.attempts > 0;
}
