import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

export interface RaceState {
  readonly taken: number;
  readonly score: number;
}

export interface Race {
  /** Points to be reached. */
  readonly to: number;
  /** Points for a make. */
  readonly up: number;
  /** Points off for a miss. */
  readonly down: number;
  /** The score never falls below; null for no floor. */
  readonly floor: number | null;
  /** The game is lost once the score falls this low; null where it never is. */
  readonly lost: number | null;
  /** Most shots. */
  readonly most: number;
}

/**
 * A race to a score: a make brings points, a miss takes some away.
 *
 * @throws InvariantError where no play can win, or the floor keeps the score from where it is lost
 */
export function race({ to, up, down, floor, lost, most }: Race, cardShots: number): Rule<RaceState> {
  invariant(up >= 1 && down >= 0 && to >= 1, 'points to be won');
  invariant(to <= up * most, `at most ${up * most} points can be made`);
  invariant(floor === null || floor <= 0, 'a floor at 0 or below');
  invariant(
    lost === null || (lost < 0 && (floor === null || lost > floor)),
    'a score below 0 at which it is lost',
  );
  invariant(cardShots >= 1, 'a card with a shot');
  const lowest = floor ?? -Infinity;
  return {
    start: { taken: 0, score: 0 },
    step: ({ taken, score }, made) => ({
      taken: taken + 1,
      score: made ? score + up : Math.max(lowest, score - down),
    }),
    finished: ({ taken, score }) => score >= to || taken === most || (lost !== null && score <= lost),
    won: ({ score }) => score >= to,
    shot: ({ taken }) => taken % cardShots,
    key: ({ score }) => score,
    longest: most,
  };
}
