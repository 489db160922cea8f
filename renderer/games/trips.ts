import { invariant } from '../basics/invariant.ts';
import type { TripKind } from '../pressure/gamePlan.ts';
import type { Rule } from './rule.ts';

export interface TripsState {
  readonly trip: number;
  /** Shots taken in this trip. */
  readonly taken: number;
  readonly points: number;
}

/** Shots of one trip, if all are taken. */
export const SHOTS_A_TRIP: Readonly<Record<TripKind, number>> = {
  'one-and-one': 2,
  'two shots': 2,
  'three shots': 3,
};

/**
 * Score `needed` points, one for each free throw, in a number of trips to the line. Every trip is shot out.
 *
 * @throws InvariantError unless there is a trip, and the points can be made
 */
export function trips(kind: TripKind, count: number, needed: number): Rule<TripsState> {
  const shots = SHOTS_A_TRIP[kind];
  invariant(count >= 1, 'a trip to the line');
  invariant(needed >= 1 && needed <= count * shots, `1 to ${count * shots} points`);
  return {
    start: { trip: 0, taken: 0, points: 0 },
    step: ({ trip, taken, points }, made) => {
      const over = taken + 1 === shots || (kind === 'one-and-one' && !made);
      return {
        trip: over ? trip + 1 : trip,
        taken: over ? 0 : taken + 1,
        points: points + (made ? 1 : 0),
      };
    },
    finished: ({ trip }) => trip === count,
    won: ({ points }) => points >= needed,
    // Every shot of the game is the same one.
    shot: () => 0,
    // More than is needed is as good as just enough.
    key: ({ trip, taken, points }) => (trip * shots + taken) * (needed + 1) + Math.min(points, needed),
    longest: count * shots,
  };
}
