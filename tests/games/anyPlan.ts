import * as fc from 'fast-check';

import type { Stop } from '../../renderer/court/cards.ts';
import { DOUBLE_BALLS, TRIP_KINDS, type GamePlan } from '../../renderer/pressure/gamePlan.ts';

/* Games as anybody may make them: of every family, sound or not, but none that the log would refuse. */

const int = (min: number, max: number) => fc.integer({ min, max });

export const anyCard: fc.Arbitrary<readonly Stop[]> = fc.array(
  fc.record({
    spot: fc.constantFrom('top', 'left-wing', 'free-throw', 'My spot'),
    shot: fc.constantFrom('catch', 'free-throw', 'form'),
    attempts: int(1, 6),
  }),
  { minLength: 1, maxLength: 4 },
);

export const anyPlan: fc.Arbitrary<GamePlan> = fc.oneof(
  fc.record({ family: fc.constant('reach' as const), needed: int(1, 30) }),
  fc.record({ family: fc.constant('streak' as const), row: int(1, 12), most: int(1, 40) }),
  fc.record({
    family: fc.constant('race' as const),
    to: int(1, 20),
    up: int(1, 3),
    down: int(0, 3),
    floor: fc.option(int(-4, 2)),
    lost: fc.option(int(-8, 2)),
    most: int(1, 30),
  }),
  fc.record({ family: fc.constant('lives' as const), needed: int(1, 12), lives: int(1, 12) }),
  fc.record({
    family: fc.constant('trips' as const),
    kind: fc.constantFrom(...TRIP_KINDS),
    trips: int(1, 6),
    needed: int(1, 16),
    scene: fc.option(fc.record({ down: int(-5, 9), left: fc.constantFrom(0, 0.3, 3, 61) })),
  }),
  fc.record({
    family: fc.constant('racks' as const),
    double: fc.constantFrom(...DOUBLE_BALLS),
    needed: int(1, 40),
  }),
  fc.record({
    family: fc.constant('last shot' as const),
    needed: int(1, 12),
    from: int(0, 9),
    to: int(0, 9),
  }),
  fc.record({
    family: fc.constant('climb' as const),
    makes: fc.array(int(1, 7), { minLength: 1, maxLength: 5 }),
    back: int(0, 4),
    most: int(1, 60),
  }),
  fc.record({
    family: fc.constant('duel' as const),
    against: fc.oneof(
      fc.constant({ kind: 'shooter' as const }),
      fc.record({ kind: fc.constant('drawn' as const), rate: fc.constantFrom(0, 0.3, 0.8, 1) }),
      fc.record({
        kind: fc.constant('own round' as const),
        round: fc.constant('round 1'),
        made: fc.array(fc.boolean(), { minLength: 1, maxLength: 12 }),
      }),
    ),
    headStart: int(-14, 14),
    extraPairs: int(0, 4),
  }),
);
