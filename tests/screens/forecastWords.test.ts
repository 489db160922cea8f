import { describe, expect, it } from 'vitest';

import {
  forecastOutcomeWords,
  forecastWords,
  pairForecastWords,
} from '../../renderer/screens/forecastWords.ts';
import type { ForecastNow } from '../../renderer/store/forecast.ts';

const known: ForecastNow = { attempts: 25, about: 12, low: 9, high: 15, rests: 'record' };

describe('before a round', () => {
  it.each([
    [known, 'Your record says about 12 of 25; four rounds in five end between 9 and 15.'],
    [
      { ...known, attempts: 10, about: 9, low: 9, high: 10 },
      'Your record says about 9 of 10; four rounds in five end at 9 or 10.',
    ],
    [
      { ...known, attempts: 2, about: 2, low: 2, high: 2 },
      'Your record says about 2 of 2; four rounds in five end at 2.',
    ],
    [
      { ...known, low: 3, high: 22, rests: 'nothing' as const },
      'No record of such shots yet: anything from 3 to 22 of 25 would be no surprise.',
    ],
    [
      { ...known, low: 3, high: 22, rests: 'faded' as const },
      'No record of such shots from the last half year: anything from 3 to 22 of 25 would be no surprise.',
    ],
  ])('%o', (forecast, words) => {
    expect(forecastWords(forecast)).toBe(words);
  });
});

describe('before a pair', () => {
  it('says both', () => {
    expect(pairForecastWords(known, { ...known, about: 10, low: 7, high: 13 })).toBe(
      'Your record says about 12 of 25 relaxed and about 10 pressured; four rounds in five end between 9 and 15, or pressured between 7 and 13.',
    );
  });
  it('says one span for both without a record', () => {
    const blank = { ...known, low: 4, high: 20, rests: 'nothing' } as const;
    expect(pairForecastWords(blank, { ...blank, low: 3, high: 19 })).toBe(
      'No record of such shots yet, relaxed or pressured: anything from 3 to 20 of 25 would be no surprise.',
    );
  });
});

describe('after a round', () => {
  it.each([
    [11, 'Forecast 9 to 15, you made 11: within.'],
    [9, 'Forecast 9 to 15, you made 9: within.'],
    [15, 'Forecast 9 to 15, you made 15: within.'],
    [8, 'Forecast 9 to 15, you made 8: below. At most one round in ten ends there.'],
    [16, 'Forecast 9 to 15, you made 16: above. At most one round in ten ends there.'],
  ])('%d made', (makes, words) => {
    expect(forecastOutcomeWords(known, makes)).toBe(words);
  });
});
