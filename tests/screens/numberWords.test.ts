import { describe, expect, it } from 'vitest';

import { casesWords, chanceWords, oddsWords, twoPlaces } from '../../renderer/screens/numberWords.ts';

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
