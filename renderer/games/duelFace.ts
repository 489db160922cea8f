import type { Round } from '../log/book.ts';
import { attemptsOn } from '../court/cards.ts';
import type { GamePlan, Opponent } from '../pressure/gamePlan.ts';
import type { DuelState } from './duel.ts';
import type { GameOn } from './gameOn.ts';
import type { TurnResult } from './rule.ts';

/** One side of a duel. */
export interface DuelSide {
  /** Every shot so far. */
  readonly shots: readonly TurnResult[];
  readonly makes: number;
  /** Points it started with. */
  readonly headStart: number;
  /** Makes and head start together: what is compared. */
  readonly score: number;
  /** Shots left before extra pairs. */
  readonly left: number;
}

export interface DuelFace {
  readonly family: 'duel';
  readonly against: Opponent;
  /** The one who shoots first comes first. */
  readonly sides: readonly [DuelSide, DuelSide];
  /** Which side is the shooter of the round. */
  readonly own: 0 | 1;
  /** Which side shoots next; null where it is over. An opponent who is not on court answers at once. */
  readonly turn: 0 | 1 | null;
  /** The shooter's score less the other's. */
  readonly ahead: number;
  /** Shots for each, extra pairs aside. */
  readonly each: number;
  /** The extra pair that is being shot, from 1; null before there is one. */
  readonly extra: number | null;
  readonly extraPairs: number;
}

export function duelFace(
  { results, rule, state, over }: GameOn,
  { against, headStart, extraPairs }: Extract<GamePlan, { family: 'duel' }>,
  { stops, group }: Round,
): DuelFace {
  const each = attemptsOn(stops);
  const { taken, ahead } = state as DuelState;
  // What was shot after it was decided is on the record, but not in the duel.
  const counted = results.slice(0, taken);
  const side = (parity: 0 | 1, start: number): DuelSide => {
    const shots = counted.filter((_, at) => at % 2 === parity);
    const makes = shots.filter((result) => result === 'make').length;
    return { shots, makes, headStart: start, score: makes + start, left: Math.max(0, each - shots.length) };
  };
  const own = against.kind === 'shooter' && group?.place === 2 ? 1 : 0;
  const pair = Math.floor(taken / 2) - each;
  return {
    family: 'duel',
    against,
    sides: [side(0, Math.max(0, headStart)), side(1, Math.max(0, -headStart))],
    own,
    turn: over || rule.finished(state) ? null : taken % 2 === 0 ? 0 : 1,
    ahead: own === 0 ? ahead : 0 - ahead,
    each,
    extra: pair < 0 || (pair === 0 && over) ? null : Math.min(pair + 1, extraPairs),
    extraPairs,
  };
}
