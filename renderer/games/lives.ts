import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

export interface LivesState {
  readonly makes: number;
  readonly misses: number;
}

/**
 * Make `needed` shots before `lives` misses.
 *
 * @throws InvariantError unless both are at least 1 and the card has a shot
 */
export function lives(needed: number, lives_: number, cardShots: number): Rule<LivesState> {
  invariant(needed >= 1 && lives_ >= 1, 'a make to be made and a life to be lost');
  invariant(cardShots >= 1, 'a card with a shot');
  return {
    start: { makes: 0, misses: 0 },
    step: ({ makes, misses }, made) => (made ? { makes: makes + 1, misses } : { makes, misses: misses + 1 }),
    finished: ({ makes, misses }) => makes === needed || misses === lives_,
    won: ({ makes }) => makes >= needed,
    shot: ({ makes, misses }) => (makes + misses) % cardShots,
    key: ({ makes }) => makes,
    longest: needed + lives_ - 1,
  };
}
