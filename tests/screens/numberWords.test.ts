import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  casesWords,
  chanceWords,
  dropSpan,
  endWords,
  oddsWords,
  partPercent,
  percentSpan,
  twoPlaces,
  wholePercents,
  withPoints,
} from '../../renderer/screens/numberWords.ts';

describe('chances in words', () => {
  it.each([
    [0.934, '93 in 100'],
    [0.994, '99 in 100'],
    [0.998, 'over 99 in 100'],
    [1, 'over 99 in 100'],
    [0.01, '1 in 100'],
    [0, 'under 1 in 100'],
  ])('%d is %s: never certain', (chance, words) => {
    expect(chanceWords(chance)).toBe(words);
  });

  it.each([
    [0.5, '50 cases in 100'],
    [0.0625, '6 cases in 100'],
    [0.0101, '1 case in 100'],
    [0.012, '12 cases in 1000'],
    [0.001, '1 case in 1000'],
    [1.9e-11, 'fewer than 1 case in 1000'],
  ])('a p of %d is %s', (p, words) => {
    expect(casesWords(p)).toBe(words);
  });

  it.each([
    [1.60178544, '1.6 to 1'],
    [9.97, '10 to 1'],
    [12.4, '12 to 1'],
    [1.6e9, 'more than 1000 to 1'],
  ])('evidence of %d is %s', (e, words) => {
    expect(oddsWords(e)).toBe(words);
  });

  it('write log-odds with a real minus, and no minus before 0', () => {
    expect([-0.5753, 0.067, -0.001].map(twoPlaces)).toEqual(['−0.58', '0.07', '0.00']);
  });
});

describe('shares of a whole', () => {
  it('add up to 100, and the largest remainder is rounded up', () => {
    expect(wholePercents([0.4545, 0.1818, 0.3636])).toEqual([46, 18, 36]);
    expect(wholePercents([1, 1, 1])).toEqual([34, 33, 33]);
    expect(wholePercents([])).toEqual([]);
    expect(wholePercents([0, 0])).toEqual([0, 0]);
  });

  it('are each less than one off', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 9 }), (shares) => {
        const total = shares.reduce((sum, one) => sum + one, 0);
        fc.pre(total > 0.001);
        const whole = wholePercents(shares);
        expect(whole.reduce((sum, one) => sum + one, 0)).toBe(100);
        for (const [at, one] of whole.entries()) {
          expect(Math.abs(one - (100 * (shares[at] ?? NaN)) / total)).toBeLessThan(1 + 1e-6);
        }
      }),
    );
  });
});

describe('the ends of a span', () => {
  it.each([
    [3.4, 12.2, ['3', '12']],
    [-2.2, 7.9, ['−2', '8']],
    [7.6, 8.4, ['7.6', '8.4']],
    [-8.4, -7.6, ['−8.4', '−7.6']],
    [-0.3, 0.4, ['−0.3', '0.4']],
    [-0.04, 0.4, ['0.0', '0.4']],
  ])('%d and %d are %j: never twice the same number', (low, high, words) => {
    expect(endWords(low, high)).toEqual(words);
  });

  it('are written so in every span', () => {
    expect(dropSpan({ points: 8, low: 7.6, high: 8.4 })).toBe('7.6 to 8.4');
    expect(percentSpan({ low: 57.6, high: 58.4 })).toBe('57.6 to 58.4 %');
    expect(withPoints('7.6')).toBe('7.6 points');
    expect(withPoints('−1')).toBe('−1 point');
  });

  it('a part is never said to be all of it', () => {
    expect([0.42, 0.9949, 0.996].map(partPercent)).toEqual(['42 %', '99 %', 'over 99 %']);
  });
});
