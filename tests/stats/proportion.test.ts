import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { jeffreys, proportion, wilson, wilsonAt, zFor } from '../../renderer/stats/proportion.ts';

// Newcombe (1998), Statistics in Medicine 17:857-872, Table I, method 3 (95 %), as quoted in public test files.
const NEWCOMBE_TABLE_1 = [
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
] as const;

// Computed once from the formula with R and SciPy, not from a printed table.
const WILSON_COMPUTED = [
  [0, 10, 0, 0.2775],
  [1, 10, 0.0179, 0.4042],
  [3, 10, 0.1078, 0.6032],
  [5, 10, 0.2366, 0.7634],
  [10, 10, 0.7225, 1],
  [5, 20, 0.1119, 0.4687],
  [10, 20, 0.2993, 0.7007],
] as const;

// Plain Jeffreys with the ends of Brown, Cai & DasGupta (2001), Statistical Science 16:101-133; values computed with R.
// (Their printed table is the modified Jeffreys, which differs at 0, 1, n − 1 and n makes.)
const JEFFREYS_COMPUTED = [
  [0, 10, 0, 0.2172],
  [1, 10, 0.011, 0.3813],
  [2, 10, 0.0441, 0.5028],
  [3, 10, 0.0927, 0.6058],
  [4, 10, 0.1531, 0.6963],
  [5, 10, 0.2235, 0.7765],
  [5, 20, 0.1024, 0.4642],
  [10, 20, 0.2934, 0.7066],
  [81, 263, 0.2545, 0.3656],
] as const;

describe("Wilson's interval", () => {
  it.each([...NEWCOMBE_TABLE_1, ...WILSON_COMPUTED])('%i of %i', (makes, attempts, low, high) => {
    const interval = wilson(makes, attempts, 0.95);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });
  it('takes a number of shots that is not whole', () => {
    const [less, between, more] = [20, 20.5, 21].map((n) => wilsonAt(0.4, n, 0.9));
    expect(between?.low).toBeGreaterThan(less?.low ?? NaN);
    expect(between?.low).toBeLessThan(more?.low ?? NaN);
  });
});

describe("Jeffreys' interval", () => {
  it.each(JEFFREYS_COMPUTED)('%i of %i', (makes, attempts, low, high) => {
    const interval = jeffreys(makes, attempts, 0.95);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });
});

describe('a make rate with its interval', () => {
  it('says nothing without an attempt', () => {
    expect(proportion(0, 0, 0.9)).toBeNull();
  });
  it('takes Jeffreys below 40 attempts and Wilson from there', () => {
    expect(proportion(20, 39, 0.9)).toEqual({ p: 20 / 39, ...jeffreys(20, 39, 0.9), method: 'jeffreys' });
    expect(proportion(20, 40, 0.9)).toEqual({ p: 0.5, ...wilson(20, 40, 0.9), method: 'wilson' });
  });
  it.each([
    [5, 4],
    [-1, 4],
    [1.5, 4],
    [1, 0],
    [NaN, 4],
  ])('refuses %d of %d', (makes, attempts) => {
    expect(() => proportion(makes, attempts, 0.9)).toThrow(RangeError);
  });
  it.each([0, 1, 90, NaN])('refuses a level of %d', (level) => {
    expect(() => proportion(1, 2, level)).toThrow(RangeError);
    expect(() => wilson(1, 2, level)).toThrow(RangeError);
  });
  it('uses z = 1.959963985 at 95 %', () => {
    expect(zFor(0.95)).toBeCloseTo(1.959963985, 9);
  });
});

describe('laws', () => {
  const tally = fc
    .integer({ min: 1, max: 3000 })
    .chain((attempts) => fc.tuple(fc.integer({ min: 0, max: attempts }), fc.constant(attempts)));
  const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });

  it('holds the make rate and stays within 0 and 1', () => {
    fc.assert(
      fc.property(tally, level, ([makes, attempts], at) => {
        for (const { low, high } of [wilson(makes, attempts, at), jeffreys(makes, attempts, at)]) {
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low).toBeLessThanOrEqual(makes / attempts);
          expect(high).toBeGreaterThanOrEqual(makes / attempts);
        }
      }),
    );
  });
  it('misses mirror makes', () => {
    fc.assert(
      fc.property(tally, level, ([makes, attempts], at) => {
        for (const method of [wilson, jeffreys]) {
          const one = method(makes, attempts, at);
          const other = method(attempts - makes, attempts, at);
          expect(other.low).toBeCloseTo(1 - one.high, 10);
          expect(other.high).toBeCloseTo(1 - one.low, 10);
        }
      }),
    );
  });
  it('more shots at the same rate narrow it', () => {
    fc.assert(
      fc.property(tally, fc.integer({ min: 2, max: 20 }), ([makes, attempts], times) => {
        for (const method of [wilson, jeffreys]) {
          const few = method(makes, attempts, 0.9);
          const many = method(makes * times, attempts * times, 0.9);
          expect(many.high - many.low).toBeLessThan(few.high - few.low);
        }
      }),
    );
  });
});
