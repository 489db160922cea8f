import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { KNOTS, meanOrder, ORDER_COLUMNS } from '../../../renderer/stats/model/orderCurve.ts';

/** The columns of one shot, from their definition. */
function ofShot(i: number): number[] {
  const slopes = KNOTS.map((knot) => Math.max(i - knot, 0) / 50);
  const tired = Math.max(0, i - 100) / 100;
  const spent = tired <= 1 ? tired ** 2 : 2 * tired - 1;
  return [Math.exp(-i / 15), tired, spent, ...slopes];
}

describe('the order curve', () => {
  it('is the mean of its shots', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 1, max: 200 }), (from, shots) => {
        const out = new Float64Array(ORDER_COLUMNS);
        meanOrder(from, from + shots, out);
        const sums = out.map(() => 0);
        for (let i = from; i < from + shots; i += 1) {
          for (const [column, value] of ofShot(i).entries()) sums[column] = (sums[column] ?? NaN) + value;
        }
        for (const [column, sum] of sums.entries()) expect(out[column]).toBeCloseTo(sum / shots, 10);
      }),
      { numRuns: 50 },
    );
  });

  it('begins cold, and at no slope', () => {
    const out = new Float64Array(ORDER_COLUMNS);
    meanOrder(0, 1, out);
    expect([...out]).toEqual([expect.closeTo(1, 12), 0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('refuses a round without a shot', () => {
    expect(() => meanOrder(5, 5, new Float64Array(ORDER_COLUMNS))).toThrow(RangeError);
    expect(() => meanOrder(-1, 5, new Float64Array(ORDER_COLUMNS))).toThrow(RangeError);
  });
});
