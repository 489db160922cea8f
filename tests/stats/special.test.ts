import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  betaQuantile,
  expit,
  incompleteBeta,
  incompleteGamma,
  logBeta,
  logChoose,
  logGamma,
  logit,
  normalCdf,
  normalQuantile,
} from '../../renderer/stats/special.ts';
import worked from '../fixtures/stats/special.json' with { type: 'json' };

/** Largest error relative to the size of the value, or to 1 where that is asked for. */
function errorOf(got: number, wanted: number, floor = 0): number {
  return Math.abs(got - wanted) / Math.max(floor, Math.abs(wanted));
}

// Values worked at 40 digits by tests/fixtures/stats/special.py.
describe('special functions against mpmath', () => {
  it.each(worked.logGamma)('ln Γ(%f)', (x = NaN, value = NaN) => {
    expect(errorOf(logGamma(x), value, 1)).toBeLessThan(1e-14);
  });
  it.each(worked.logBeta)('ln B(%f, %f)', (a = NaN, b = NaN, value = NaN) => {
    expect(errorOf(logBeta(a, b), value, 1)).toBeLessThan(1e-14);
    expect(logBeta(b, a)).toBe(logBeta(a, b));
  });
  it.each(worked.incompleteBeta)('I(%f, %f; %f)', (a = NaN, b = NaN, x = NaN, value = NaN) => {
    expect(errorOf(incompleteBeta(a, b, x), value)).toBeLessThan(2e-13);
  });
  it.each(worked.betaQuantile)('Beta(%f, %f) quantile at %f', (a = NaN, b = NaN, p = NaN, value = NaN) => {
    expect(errorOf(betaQuantile(a, b, p), value)).toBeLessThan(1e-13);
  });
  it.each(worked.incompleteGamma)('P(%f, %f)', (a = NaN, x = NaN, value = NaN) => {
    expect(errorOf(incompleteGamma(a, x), value)).toBeLessThan(2e-13);
  });
  it.each(worked.normalCdf)('Φ(%f)', (x = NaN, value = NaN) => {
    expect(errorOf(normalCdf(x), value)).toBeLessThan(1e-13);
  });
  it.each(worked.normalQuantile)('normal quantile at %f', (p = NaN, value = NaN) => {
    expect(errorOf(normalQuantile(p), value, 1)).toBeLessThan(1e-14);
  });
});

// Abramowitz & Stegun, table 26.8, percentage points of χ²: quoted from memory. P(ν/2, χ²/2) is its distribution.
describe('the incomplete gamma function against the table of χ²', () => {
  it.each([
    [1, 0.95, 3.84146],
    [2, 0.95, 5.99147],
    [5, 0.99, 15.0863],
    [10, 0.05, 3.9403],
    [10, 0.95, 18.307],
    [30, 0.95, 43.7729],
    [100, 0.95, 124.342],
    [100, 0.005, 67.3276],
  ])('%d degrees of freedom, %f', (freedom, p, chiSquare) => {
    expect(incompleteGamma(freedom / 2, chiSquare / 2)).toBeCloseTo(p, 5);
  });
});

describe('laws', () => {
  const shape = fc.double({ min: 0.5, max: 2000, noNaN: true });
  const inside = fc.double({ min: 0.001, max: 0.999, noNaN: true });

  it('a beta quantile leads back to its chance', () => {
    fc.assert(
      fc.property(shape, shape, inside, (a, b, p) => {
        const x = betaQuantile(a, b, p);
        // Near 0 and 1 a beta with a small shape is steep: one step of x is then more than a step of p.
        fc.pre(x > 1e-6 && x < 1 - 1e-6);
        expect(incompleteBeta(a, b, x)).toBeCloseTo(p, 9);
      }),
    );
  });
  it('I(a, b; x) and I(b, a; 1 − x) make 1', () => {
    fc.assert(
      fc.property(shape, shape, inside, (a, b, x) => {
        expect(incompleteBeta(a, b, x) + incompleteBeta(b, a, 1 - x)).toBeCloseTo(1, 10);
      }),
    );
  });
  it('normal quantile and Φ undo each other, logit and expit too', () => {
    fc.assert(
      fc.property(inside, (p) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 14);
        expect(expit(logit(p))).toBeCloseTo(p, 14);
      }),
    );
  });
  it('with a whole shape the gamma distribution is what is left of the Poisson', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 0.01, max: 120, noNaN: true }),
        (a, x) => {
          let term = Math.exp(-x);
          let fewer = 0;
          for (let k = 0; k < a; k += 1) {
            fewer += term;
            term *= x / (k + 1);
          }
          expect(incompleteGamma(a, x)).toBeCloseTo(1 - fewer, 11);
        },
      ),
    );
  });
  it('choosing counts ways', () => {
    expect(Math.exp(logChoose(25, 5))).toBeCloseTo(53_130, 6);
    expect(Math.exp(logChoose(10, 0))).toBeCloseTo(1, 12);
  });
});

it.each([
  () => logGamma(0),
  () => logGamma(Infinity),
  () => logBeta(1, -1),
  () => incompleteBeta(1, 1, 1.1),
  () => incompleteBeta(Infinity, 1, 0.5),
  () => betaQuantile(1, 1, -0.1),
  () => incompleteGamma(0, 1),
  () => incompleteGamma(1, -1),
  () => incompleteGamma(1, NaN),
  () => normalQuantile(0),
  () => normalCdf(NaN),
  () => logit(1),
  () => logChoose(3, 4),
])('asks for what it needs: %s', (call) => {
  expect(call).toThrow(RangeError);
});
