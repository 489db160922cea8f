import { describe, expect, it } from 'vitest';

import { pairSpan } from '../../renderer/store/pairSpan.ts';

const pairs = (n: number) => ({ n, mean: 5, se: 2, p: 0.1, leftOut: 0, stopped: 0 });

describe('the span of the pairs’ own mean', () => {
  // Student's t at 95 % one-sided: R's qt(0.95, c(7, 29, 89)).
  it.each([
    [8, 1.894579],
    [30, 1.699127],
    [90, 1.662155],
  ])('of %d pairs reaches %d errors to each side', (n, t) => {
    const span = pairSpan(pairs(n));
    expect(span?.points).toBe(5);
    expect(span?.low).toBeCloseTo(5 - 2 * t, 5);
    expect(span?.high).toBeCloseTo(5 + 2 * t, 5);
  });

  it('is not told of a handful of pairs', () => {
    expect(pairSpan(pairs(7))).toBeNull();
    expect(pairSpan({ n: 0, mean: null, se: null, p: null, leftOut: 0, stopped: 0 })).toBeNull();
  });
});
