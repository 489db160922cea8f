import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Stop } from '../../renderer/court/cards.ts';
import { fairest, ladderOf } from '../../renderer/games/fair.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { solve } from '../../renderer/games/solver.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { steady } from './enumerate.ts';

const CARD: readonly Stop[] = [
  { spot: 'left-wing', shot: 'catch', attempts: 3 },
  { spot: 'top', shot: 'catch', attempts: 4 },
];
const PLANS: readonly GamePlan[] = [
  { family: 'reach', needed: 1 },
  { family: 'last shot', needed: 1, from: 2, to: 5 },
  { family: 'streak', row: 1, most: 30 },
  { family: 'race', to: 1, up: 1, down: 1, floor: 0, lost: null, most: 40 },
  { family: 'lives', needed: 6, lives: 1 },
  { family: 'trips', kind: 'one-and-one', trips: 4, needed: 1, scene: null },
  { family: 'racks', double: 'last', needed: 1 },
  { family: 'climb', makes: [2, 2], back: 1, most: 30 },
  { family: 'duel', against: { kind: 'drawn', rate: 0.5 }, headStart: 0, extraPairs: 6 },
];

const chanceAt = (p: number) => (plan: GamePlan) =>
  solve(ruleOf(plan, CARD, 5).rule, steady(p, 14)).standing([]).chance;

describe.each(PLANS.map((plan) => [plan.family, plan] as const))('%s', (_, plan) => {
  const ladder = ladderOf(plan, CARD);

  it('gets harder step by step, for every shooter', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (p) => {
        const chances = ladder.map(chanceAt(p));
        for (const [step, chance] of chances.entries()) {
          expect(chance).toBeLessThanOrEqual((chances[step - 1] ?? 1) + 1e-12);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('finds the step nearest to what is wanted, as looking at all of them does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (p, wanted) => {
          const found = fairest(ladder, chanceAt(p), wanted);
          const nearest = Math.min(...ladder.map((one) => Math.abs(chanceAt(p)(one) - wanted)));
          expect(Math.abs(found.chance - wanted)).toBeCloseTo(nearest, 12);
          expect(found.chance).toBe(chanceAt(p)(found.plan));
        },
      ),
      { numRuns: 20 },
    );
  });
});
