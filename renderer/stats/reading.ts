import type { Points } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { Tally } from '../log/roundCells.ts';
import { cellsOf, type ByCondition, type DropEstimate, type Stratum } from './drop.ts';
import { shotsToSee } from './shotsNeeded.ts';

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

/** More shots of each kind; null where the relaxed rate is too low to drop that far. */
type More = ByCondition<number> | null;

interface Outlook {
  /** About how many more shots until a drop of 10 or of 5 points would show. */
  readonly more: { readonly ten: More; readonly five: More };
}

/** What the plain sentence is made of. Points are whole and positive = worse under pressure. */
export type Reading =
  | (Outlook & {
      /** Too early for any verdict. */
      readonly kind: 'none';
      /** What is missing; 0 where there is enough. */
      readonly needs: { readonly pressured: number; readonly sessions: number };
    })
  | (Outlook & DropEstimate & { readonly kind: 'drop' | 'gain' | 'unclear' | 'same' });

/**
 * Reads an estimate at the 90 % level: `same` where the whole interval lies within {@link ABOUT_SAME} points of 0,
 * else `drop` above 0, `gain` below 0, `unclear` where it holds 0; `none` before {@link LEAST_PRESSURED} shots
 * and {@link LEAST_SESSIONS} sessions.
 *
 * @param estimate a drop with its interval at {@link READING_LEVEL}; null where there is none
 * @param have the shots it rests on, see {@link evidenceOf}
 */
export function reading(estimate: DropEstimate | null, have: Evidence): Reading {
  const shots = { relaxed: have.relaxed.attempts, pressured: have.pressured.attempts };
  // With nothing to go by, plan for the rate that needs the most shots.
  const rate = shots.relaxed > 0 ? have.relaxed.makes / shots.relaxed : 0.5;
  const more = { ten: shotsToSee(10, rate, shots), five: shotsToSee(5, rate, shots) };
  const needs = {
    pressured: Math.max(0, LEAST_PRESSURED - shots.pressured),
    sessions: Math.max(0, LEAST_SESSIONS - have.sessions),
  };
  if (!estimate || needs.pressured > 0 || needs.sessions > 0) return { kind: 'none', needs, more };
  const { points, low, high } = estimate;
  return { kind: kindOf(estimate), points: whole(points), low: whole(low), high: whole(high), more };
}

function kindOf({ low, high }: DropEstimate): 'drop' | 'gain' | 'unclear' | 'same' {
  if (Math.abs(low) <= ABOUT_SAME && Math.abs(high) <= ABOUT_SAME) return 'same';
  if (low > 0) return 'drop';
  if (high < 0) return 'gain';
  return 'unclear';
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
  return { relaxed, pressured, sessions: sessionsWithBoth(all) };
}

/** Relaxed free throws beside pressured threes compare nothing, so they make no session with both. */
function sessionsWithBoth(rounds: readonly Round[]): number {
  const sessions = new Map<string, Round[]>();
  for (const round of rounds) sessions.set(round.session, [...(sessions.get(round.session) ?? []), round]);
  return [...sessions.values()].filter((session) => [...cellsOf(session).values()].some(inBoth)).length;
}

function inBoth({ relaxed, pressured }: Stratum): boolean {
  return relaxed.attempts > 0 && pressured.attempts > 0;
}

/** Whole points; never −0. */
function whole(points: Points): Points {
  return Math.round(points) + 0;
}
