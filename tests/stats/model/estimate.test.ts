import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { estimateOf } from '../../../renderer/stats/model/estimate.ts';

/** Type 7 of Hyndman & Fan, from values in order. */
function quantile(sorted: readonly number[], p: number): number {
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? NaN;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}

describe('an estimate from draws', () => {
  it('has the quantiles that sorting gives, to the last digit, and leaves the draws as they were', () => {
    const some = fc.oneof(
      fc.array(fc.double({ noNaN: true, min: -1, max: 1 }), { minLength: 1, maxLength: 300 }),
      // Many alike.
      fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 1, maxLength: 300 }),
    );
    fc.assert(
      fc.property(some, (values) => {
        const draws = Float64Array.from(values, (value) => value + 0);
        const { low, high } = estimateOf(draws);
        const sorted = [...draws].toSorted((a, b) => a - b);
        expect([low + 0, high + 0]).toEqual([quantile(sorted, 0.05) + 0, quantile(sorted, 0.95) + 0]);
        expect([...draws]).toEqual(values.map((value) => value + 0));
      }),
    );
  });

  it('has mean and standard deviation', () => {
    // By hand: mean 2, squares 4 + 1 + 1 + 4, of three.
    expect(estimateOf(Float64Array.of(0, 1, 3, 4))).toMatchObject({ value: 2, sd: Math.sqrt(10 / 3) });
  });
});
