import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

export interface StreakState {
  readonly taken: number;
  /** Makes in a row, the latest shot included. */
  readonly row: number;
}

/**
 * Make `row` shots in a row, within at most `most` shots: without an end, ten in a row can become two hundred. The card
 * is shot round and round.
 *
 * @throws InvariantError unless 1 ≤ row ≤ most and the card has a shot
 */
export function streak(row: number, most: number, cardShots: number): Rule<StreakState> {
  invariant(row >= 1 && row <= most, `a run of 1 to ${most} shots`);
  invariant(cardShots >= 1, 'a card with a shot');
  return {
    start: { taken: 0, row: 0 },
    step: ({ taken, row: now }, made) => ({ taken: taken + 1, row: made ? now + 1 : 0 }),
    finished: (state) => state.row === row || state.taken === most,
    won: (state) => state.row >= row,
    shot: ({ taken }) => taken % cardShots,
    key: (state) => state.row,
    longest: most,
  };
}
