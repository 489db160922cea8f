import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  betaBinomialAtLeast,
  betaBinomialAtMost,
  betaBinomialMean,
  betaBinomialPmf,
  betaBinomialVariance,
} from './betaBinomial.ts';

// Beta-binomial values computed from the formula with SciPy; the first is also 30/91 in fractions.
describe('worked values', () => {
  it.each([
    [{ a: 8, b: 4, attempts: 3 }, 0, [0.05495, 0.21978, 0.3956, 0.32967]],
    [
      { a: 8, b: 4, attempts: 10 },
      0,
      [0.00081, 0.00499, 0.01684, 0.04083, 0.07859, 0.12574, 0.17028, 0.1946, 0.18244, 0.12974, 0.05514],
    ],
    [{ a: 1, b: 1, attempts: 4 }, 0, [0.2, 0.2, 0.2, 0.2, 0.2]],
    [{ a: 35, b: 17, attempts: 10 }, 5, [0.12992, 0.20623, 0.24158, 0.20026, 0.10631, 0.02752]],
  ] as const)('%o', (of, from, chances) => {
    for (const [at, chance] of chances.entries())
      expect(betaBinomialPmf(of, from + at)).toBeCloseTo(chance, 5);
  });
  it('P(3 of 3 | Beta(8, 4)) = 30/91', () => {
    expect(betaBinomialPmf({ a: 8, b: 4, attempts: 3 }, 3)).toBeCloseTo(30 / 91, 13);
  });
  it('mean and variance', () => {
    expect(betaBinomialMean({ a: 8, b: 4, attempts: 10 })).toBeCloseTo(6.6667, 4);
    expect(betaBinomialVariance({ a: 8, b: 4, attempts: 10 })).toBeCloseTo(3.76068, 5);
    expect(betaBinomialVariance({ a: 35, b: 17, attempts: 10 })).toBeCloseTo(2.5741, 5);
  });
  // Verified once by enumerating all 2^n rounds or by an urn.
  it.each([
    [52, 48, 25, 15, 0.2972309113],
    [78, 22, 25, 19, 0.68439875],
    [78, 22, 25, 20, 0.5246454411],
    [78, 22, 25, 21, 0.35246688],
    [7, 5, 10, 6, 0.5750178614],
  ])('Beta(%d, %d): of %d at least %d', (a, b, attempts, makes, chance) => {
    expect(betaBinomialAtLeast({ a, b, attempts }, makes)).toBeCloseTo(chance, 8);
  });
});

it('chances sum to 1, tails meet, mean and variance are those of the chances', () => {
  const shape = fc.double({ min: 0.5, max: 500, noNaN: true });
  fc.assert(
    fc.property(shape, shape, fc.integer({ min: 1, max: 60 }), (a, b, attempts) => {
      const of = { a, b, attempts };
      const chances = Array.from({ length: attempts + 1 }, (_, k) => betaBinomialPmf(of, k));
      const mean = chances.reduce((sum, chance, k) => sum + k * chance, 0);
      const variance = chances.reduce((sum, chance, k) => sum + (k - mean) ** 2 * chance, 0);
      expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 10);
      expect(mean).toBeCloseTo(betaBinomialMean(of), 8);
      expect(variance).toBeCloseTo(betaBinomialVariance(of), 6);
      const cut = Math.floor(attempts / 2);
      expect(betaBinomialAtMost(of, cut) + betaBinomialAtLeast(of, cut + 1)).toBeCloseTo(1, 10);
    }),
  );
});

it('is 0 or 1 outside the possible makes', () => {
  const of = { a: 2, b: 3, attempts: 5 };
  expect(betaBinomialPmf(of, 6)).toBe(0);
  expect(betaBinomialPmf(of, 1.5)).toBe(0);
  expect(betaBinomialAtLeast(of, 0)).toBe(1);
  expect(betaBinomialAtLeast(of, 6)).toBe(0);
  expect(betaBinomialAtMost(of, 5)).toBe(1);
  expect(betaBinomialAtMost(of, -1)).toBe(0);
});
