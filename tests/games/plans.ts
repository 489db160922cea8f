import * as fc from 'fast-check';

import type { Stop } from '../../renderer/court/cards.ts';
import {
  DOUBLE_BALLS,
  TRIP_KINDS,
  type GameFamily,
  type GamePlan,
} from '../../renderer/pressure/gamePlan.ts';

/* Small games of every family on one small card, as they may be set up. */

/** Two stops, two shots and three. */
export const SMALL_CARD: readonly Stop[] = [
  { spot: 'left-wing', shot: 'catch', attempts: 2 },
  { spot: 'top', shot: 'catch', attempts: 3 },
];
const SHOTS = 5;

const int = (min: number, max: number) => fc.integer({ min, max });

export const SMALL_PLANS: { readonly [F in GameFamily]: fc.Arbitrary<Extract<GamePlan, { family: F }>> } = {
  reach: fc.record({ family: fc.constant('reach'), needed: int(1, SHOTS) }),
  'last shot': fc.record({
    family: fc.constant('last shot'),
    needed: int(1, SHOTS),
    from: fc.constant(1),
    to: fc.constant(4),
  }),
  streak: fc
    .tuple(int(1, 4), int(0, 8))
    .map(([row, more]) => ({ family: 'streak', row, most: row + more }) as const),
  race: fc.record({
    family: fc.constant('race'),
    to: int(1, 5),
    up: int(1, 2),
    down: int(0, 2),
    floor: fc.constantFrom(null, 0),
    lost: fc.constant(null),
    most: int(5, 12),
  }),
  lives: fc.record({ family: fc.constant('lives'), needed: int(1, 7), lives: int(1, 4) }),
  trips: fc.tuple(fc.constantFrom(...TRIP_KINDS), int(1, 4), int(1, 8), fc.boolean()).map(
    ([kind, trips, needed, scene]) =>
      ({
        family: 'trips',
        kind,
        trips,
        needed: Math.min(needed, 2 * trips),
        scene: scene ? { down: 1, left: 3 } : null,
      }) as const,
  ),
  racks: fc.record({
    family: fc.constant('racks'),
    double: fc.constantFrom(...DOUBLE_BALLS),
    needed: int(1, SHOTS),
  }),
  climb: fc
    .tuple(int(1, 2), int(1, 3), int(0, 2), int(5, 14))
    .map(([first, second, back, most]) => ({ family: 'climb', makes: [first, second], back, most }) as const),
  duel: fc.record({
    family: fc.constant('duel'),
    against: fc.constant({ kind: 'drawn', rate: 0.5 } as const),
    headStart: int(-2, 2),
    extraPairs: int(0, 3),
  }),
};

export const anyPlan: fc.Arbitrary<GamePlan> = fc.oneof(...Object.values(SMALL_PLANS));
