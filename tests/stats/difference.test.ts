import { describe, expect, it } from 'vitest';

import { newcombe } from '../../renderer/stats/difference.ts';

/*
 * Newcombe (1998), Statistics in Medicine 17:873-890, Table II, method 10 (95 %). Rows a to g as quoted in public test
 * files; row h computed from the formula.
 */
const NEWCOMBE_TABLE_2 = [
  ['a', 56, 70, 48, 80, 0.2, 0.0524, 0.3339],
  ['b', 9, 10, 3, 10, 0.6, 0.1705, 0.809],
  ['c', 6, 7, 2, 7, 0.5714, 0.0582, 0.8062],
  ['d', 5, 56, 0, 29, 0.0893, -0.0381, 0.1926],
  ['e', 0, 10, 0, 20, 0, -0.1611, 0.2775],
  ['f', 0, 10, 0, 10, 0, -0.2775, 0.2775],
  ['g', 10, 10, 0, 20, 1, 0.6791, 1],
  ['h', 10, 10, 0, 10, 1, 0.6075, 1],
  // From the same public test file, not of the table.
  ['84/101 − 89/105', 84, 101, 89, 105, -0.0159, -0.1177, 0.0851],
] as const;

// Drill-sized cases computed once with R.
const DRILLS = [
  ['18/20 − 15/20', 18, 20, 15, 20, 0.15, -0.0939, 0.3803],
  ['24/30 − 24/30', 24, 30, 24, 30, 0, -0.2024, 0.2024],
  ['40/50 − 34/50', 40, 50, 34, 50, 0.12, -0.0521, 0.2835],
  ['45/50 − 38/50', 45, 50, 38, 50, 0.14, -0.0094, 0.2856],
  ['80/100 − 72/100', 80, 100, 72, 100, 0.08, -0.0386, 0.1959],
  ['160/200 − 144/200', 160, 200, 144, 200, 0.08, -0.0038, 0.1625],
] as const;

describe("Newcombe's interval of a difference, method 10", () => {
  it.each([...NEWCOMBE_TABLE_2, ...DRILLS])('%s', (_, x1, n1, x2, n2, difference, low, high) => {
    const got = newcombe(x1, n1, x2, n2, 0.95);
    expect(got.difference).toBeCloseTo(difference, 4);
    expect(got.low).toBeCloseTo(low, 4);
    expect(got.high).toBeCloseTo(high, 4);
  });
  it('refuses a rate from no attempts', () => {
    expect(() => newcombe(0, 0, 1, 2, 0.95)).toThrow(RangeError);
  });
});
