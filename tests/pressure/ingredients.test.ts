import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  INGREDIENTS,
  ingredientsOf,
  pressureLevel,
  type PressureSetup,
} from '../../renderer/pressure/ingredients.ts';

const NOTHING = { stake: null, mark: null, clock: null, crowd: false };
const ALONE = { watchers: false, coldStart: false };
const setupWith = (ingredients: PressureSetup['ingredients']): PressureSetup => ({
  ...NOTHING,
  ingredients,
  showChance: true,
  seed: 1,
});

describe('ingredients', () => {
  it.each([
    ['nothing', NOTHING, ALONE, []],
    ['a clock', { ...NOTHING, clock: { kind: 'shot', seconds: 8 } }, ALONE, ['clock']],
    ['a crowd', { ...NOTHING, crowd: true }, ALONE, ['crowd']],
    ['a stake', { ...NOTHING, stake: 'Loser buys lunch' }, ALONE, ['stake']],
    ['a mark', { ...NOTHING, mark: { makes: 12, chance: 0.5 } }, ALONE, ['must-make']],
    ['watchers', NOTHING, { ...ALONE, watchers: true }, ['watchers']],
    ['a cold start', NOTHING, { ...ALONE, coldStart: true }, ['cold-start']],
  ] as const)('%s', (_name, setup, told, expected) => {
    expect(ingredientsOf(setup, told)).toEqual(expected);
  });
});

describe('the pressure level', () => {
  it('is 0 relaxed, and how many are on, at most 5', () => {
    expect(pressureLevel(null)).toBe(0);
    expect(pressureLevel(setupWith([]))).toBe(0);
    expect(pressureLevel(setupWith(['clock', 'crowd']))).toBe(2);
    expect(pressureLevel(setupWith(INGREDIENTS))).toBe(5);
  });
  it('never falls when one more is turned on', () => {
    fc.assert(
      fc.property(fc.subarray([...INGREDIENTS]), fc.constantFrom(...INGREDIENTS), (some, more) => {
        const with1 = some.includes(more) ? some : [...some, more];
        expect(pressureLevel(setupWith(with1))).toBeGreaterThanOrEqual(pressureLevel(setupWith(some)));
      }),
    );
  });
});
