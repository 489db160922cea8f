import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import { gameFault } from '../../renderer/games/gameFault.ts';
import { fitted, freshPlan } from '../../renderer/games/newPlan.ts';
import { anyCard, anyPlan } from './anyPlan.ts';

const FAMILIES = [
  'reach',
  'streak',
  'race',
  'lives',
  'trips',
  'racks',
  'last shot',
  'climb',
  'duel',
] as const;
/** Trips are shot from the line. */
const cardFor = (family: string, card: readonly Stop[]): readonly Stop[] =>
  family === 'trips' ? card.map((stop) => ({ ...stop, shot: 'free-throw' as const })) : card;

describe.each(FAMILIES)('a first plan: %s', (family) => {
  it('can be played on any small card, and on every standard one', () => {
    for (const { stops } of STANDARD_CARDS) {
      const card = cardFor(family, stops);
      expect(gameFault(freshPlan(family, card), card)).toBeNull();
    }
    fc.assert(
      fc.property(anyCard, (any) => {
        const card = cardFor(family, any);
        const plan = freshPlan(family, card);
        expect(plan.family).toBe(family);
        expect(gameFault(plan, card)).toBeNull();
      }),
    );
  });
});

describe('a plan on another card', () => {
  it('is as it was where there is room for it', () => {
    fc.assert(
      fc.property(anyPlan, anyCard, (plan, card) => {
        if (gameFault(plan, card) !== null || plan.family === 'climb') return;
        expect(fitted(plan, card)).toEqual(plan);
      }),
    );
  });
  it('can be played there too', () => {
    fc.assert(
      fc.property(anyPlan, anyCard, anyCard, (plan, card, other) => {
        if (plan.family === 'trips' || plan.family === 'duel' || gameFault(plan, card) !== null) return;
        expect(gameFault(fitted(plan, other), other)).toBeNull();
      }),
      { numRuns: 300 },
    );
  });
  it('has a step for each stop of its card, with makes that can be made', () => {
    const plan = { family: 'climb', makes: [3, 3], back: 1, most: 4 } as const;
    const card: Stop[] = [2, 5, 4].map((attempts) => ({ spot: 'top', shot: 'catch', attempts }));
    expect(fitted(plan, card)).toEqual({ family: 'climb', makes: [2, 3, 2], back: 1, most: 7 });
  });
});
