import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { shotsToSee, type Sureness } from '../../renderer/stats/shotsNeeded.ts';

/*
 * Two-sided 5 %, formula of Fleiss, Statistical Methods for Rates and Proportions (2nd ed. 1981), ch. 3, without
 * continuity correction. Computed once with R; not copied from a printed table.
 */
const FLEISS = [
  [0.36, 0.26, 335, 448],
  [0.8, 0.75, 1094, 1464],
  [0.8, 0.7, 294, 392],
  [0.75, 0.7, 1251, 1674],
  [0.75, 0.65, 329, 440],
  [0.7, 0.6, 356, 477],
  [0.9, 0.85, 686, 918],
  [0.6, 0.4, 97, 130],
  [0.75, 0.5, 58, 77],
] as const;

/** True where so many shots of each kind are enough, and one fewer of each is not. */
function isLeast(each: number, points: number, relaxed: number, sureness: Sureness): boolean {
  const more = (have: number) => shotsToSee(points, relaxed, { relaxed: have, pressured: have }, sureness);
  return more(each)?.pressured === 0 && more(each - 1)?.pressured === 10;
}

describe('shots in an even split', () => {
  it.each(FLEISS)('%d against %d', (relaxed, pressured, at80, at90) => {
    const points = 100 * (relaxed - pressured);
    expect(isLeast(at80, points, relaxed, { level: 0.95, power: 0.8 })).toBe(true);
    expect(isLeast(at90, points, relaxed, { level: 0.95, power: 0.9 })).toBe(true);
    expect(isLeast(at90 - 1, points, relaxed, { level: 0.95, power: 0.9 })).toBe(false);
  });
  it.each([
    // n = 50, p1 = .50, p2 = .75: power = 0.7401659. power = .90: n = 76.70693.
    [50, 25, 0.75, 0.7401],
    [51, 25, 0.75, 0.7402],
    [77, 25, 0.75, 0.9],
    // p1 = .5, power = .9, n = 50: p2 = 0.8026, which is rounded: 50 shots lie between its two ends.
    [51, 30.255, 0.80255, 0.9],
    [50, 30.265, 0.80265, 0.9],
  ])("%d each, as in the examples of R's power.prop.test manual page", (each, points, rate, power) => {
    expect(isLeast(each, points, rate, { level: 0.95, power })).toBe(true);
  });
  it('agrees with .60 against .70 at 1 % and power .95, 807.07 before rounding up (computed with R)', () => {
    expect(isLeast(808, 10, 0.7, { level: 0.99, power: 0.95 })).toBe(true);
  });
});

describe('more shots until a drop shows', () => {
  // 10 points from .60 at the usual sureness: 304.99 of each kind by the same formula, worked out by hand; said in tens.
  const EACH = 310;
  it('asks an even split of someone who has none', () => {
    expect(shotsToSee(10, 0.6, { relaxed: 0, pressured: 0 })).toEqual({ relaxed: EACH, pressured: EACH });
  });
  it('uses relaxed shots already there, and asks for no more of them', () => {
    const more = shotsToSee(10, 0.6, { relaxed: 2000, pressured: 50 });
    expect(more?.relaxed).toBe(0);
    expect(more?.pressured).toBeLessThan(EACH - 50);
  });
  it('asks for both where there are too few relaxed shots for any number of pressured ones', () => {
    const more = shotsToSee(5, 0.6, { relaxed: 100, pressured: 100 });
    expect(more?.relaxed).toBeGreaterThan(0);
    expect(more?.relaxed).toBe(more?.pressured);
  });
  it('asks for relaxed shots alone where pressured ones abound', () => {
    const more = shotsToSee(10, 0.6, { relaxed: 50, pressured: 2000 });
    expect(more?.pressured).toBe(0);
    expect(more?.relaxed).toBeGreaterThan(0);
  });
  it('asks for none where there are enough', () => {
    expect(shotsToSee(10, 0.6, { relaxed: 5000, pressured: 5000 })).toEqual({ relaxed: 0, pressured: 0 });
  });
  it('has no plan for a drop below 0 %', () => {
    expect(shotsToSee(10, 0.08, { relaxed: 100, pressured: 100 })).toBeNull();
  });
  it.each([
    [0, 0.5],
    [-5, 0.5],
    [10, 1.2],
    [10, NaN],
  ])('refuses %d points at a rate of %d', (points, rate) => {
    expect(() => shotsToSee(points, rate, { relaxed: 1, pressured: 1 })).toThrow(RangeError);
  });
  it('a smaller drop takes no fewer shots, and shots already there are never asked for again', () => {
    const shots = fc.integer({ min: 0, max: 3000 });
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        shots,
        shots,
        (rate, relaxed, pressured) => {
          const sum = (points: number, have: { relaxed: number; pressured: number }) => {
            const more = shotsToSee(points, rate, have);
            return (more?.relaxed ?? NaN) + (more?.pressured ?? NaN);
          };
          const have = { relaxed, pressured };
          expect(sum(5, have)).toBeGreaterThanOrEqual(sum(10, have));
          expect(sum(10, { relaxed: relaxed + 100, pressured })).toBeLessThanOrEqual(sum(10, have) + 10);
          expect(sum(10, { relaxed, pressured: pressured + 100 })).toBeLessThanOrEqual(sum(10, have) + 10);
        },
      ),
    );
  });
});
