import { describe, expect, it } from 'vitest';

import {
  chanceAt,
  type PlanOrder,
  ratesOf,
  smallestShown,
  TYPICAL_SPREADS,
  varianceOf,
} from '../../renderer/stats/showing.ts';
import { present } from '../../renderer/basics/invariant.ts';

/*
 * Chances that a drop shows, in percent, as simulated in our own design study (no published source): 300 simulated
 * shooters each, 150 where marked by a wider error; 400 relaxed shots and 4 sessions a week, make rate about one half. The model
 * of the study took the true rise and fall of a session as given, so every relaxed shot is worth a shot.
 */
const STUDY: readonly (readonly [
  PlanOrder,
  points: number,
  weeks: number,
  pressured: number,
  percent: number,
])[] = [
  ['pairs', 10, 1, 40, 11],
  ['pairs', 10, 1, 120, 42],
  ['pairs', 10, 4, 40, 68],
  ['pairs', 10, 4, 50, 78],
  ['pairs', 10, 4, 52, 80],
  ['pairs', 10, 4, 60, 88],
  ['pairs', 10, 8, 20, 74],
  ['pairs', 10, 8, 25, 81],
  ['pairs', 10, 8, 30, 87],
  ['pairs', 10, 12, 12, 70],
  ['pairs', 10, 12, 16, 80],
  ['pairs', 10, 12, 20, 85],
  ['last', 10, 4, 50, 77],
  ['last', 10, 4, 60, 83],
  ['last', 10, 4, 80, 91],
  ['last', 10, 8, 25, 81],
  ['own-day', 10, 1, 40, 3],
  ['own-day', 10, 1, 400, 10],
  ['own-day', 10, 4, 60, 51],
  ['own-day', 10, 4, 120, 67],
  ['own-day', 10, 4, 240, 73],
  ['own-day', 10, 8, 25, 64],
  ['own-day', 10, 8, 35, 80],
  ['own-day', 10, 8, 45, 80],
  ['own-day', 10, 12, 24, 79],
  ['own-day', 10, 12, 32, 88],
  ['pairs', 5, 8, 80, 73],
  ['pairs', 5, 8, 120, 79],
  ['pairs', 5, 12, 50, 69],
  ['pairs', 5, 12, 80, 83],
];

/** The spreads that the study simulated days with; the rest as the model believes. */
const SPREADS = { ...TYPICAL_SPREADS, day: 0.25 };

function planned([order, points, weeks, pressured]: (typeof STUDY)[number]): number {
  const rates = present(ratesOf(points, 0.5), 'rates');
  const days = { relaxed: 4 * weeks, pressured: 4 * weeks };
  const apart = { relaxed: 3 * weeks, pressured: weeks };
  const shots = { relaxed: 400 * weeks, pressured: pressured * weeks };
  const ground = { order, shots, days: order === 'own-day' ? apart : days };
  return 100 * chanceAt(rates, varianceOf(ground, rates, SPREADS), SPREADS);
}

describe('the chance that a drop shows', () => {
  // Two standard errors of a simulated share of 300, and half as much again for a formula.
  it.each(STUDY)('%s, %d points, %d weeks, %d a week: %d % within 7.5', (...row) => {
    expect(Math.abs(planned(row) - row[4])).toBeLessThan(7.5);
  });
  it('is neither too high nor too low over the whole of the study', () => {
    const errors = STUDY.map((row) => planned(row) - row[4]);
    expect(Math.abs(errors.reduce((sum, error) => sum + error, 0) / errors.length)).toBeLessThan(2);
    expect(Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length)).toBeLessThan(4);
  });
  it('grows no further with shots on days of their own than good and bad days let it', () => {
    const few = planned(['own-day', 10, 4, 1000, 0]);
    const many = planned(['own-day', 10, 4, 100_000, 0]);
    expect(many - few).toBeLessThan(2);
    expect(many).toBeLessThan(80);
  });
});

describe('the variance', () => {
  const rates = { relaxed: 0.5, pressured: 0.2 };
  const days = { relaxed: 8, pressured: 2 };
  const spreads = { skill: 0, day: 0.2, week: 0, dayPressure: 0.1 };
  it('is binomial, with the day’s answer to pressure', () => {
    const shots = { relaxed: 100, pressured: 50 };
    const binomial = 1 / (100 * 0.25) + 1 / (50 * 0.16);
    expect(varianceOf({ order: 'pairs', shots, days }, rates, spreads)).toBeCloseTo(binomial + 0.005, 12);
    expect(varianceOf({ order: 'last', shots, days }, rates, spreads)).toBeCloseTo(binomial + 0.005, 12);
    expect(varianceOf({ order: 'own-day', shots, days }, rates, spreads)).toBeCloseTo(
      binomial + 0.005 + 0.04 / 2 + 0.04 / 8,
      12,
    );
  });
  it('is without end where a condition is missing', () => {
    const shots = { relaxed: 100, pressured: 0 };
    expect(varianceOf({ order: 'pairs', shots, days }, rates, spreads)).toBe(Infinity);
  });
});

describe('the smallest drop that shows', () => {
  const spreads = TYPICAL_SPREADS;
  it('is enough, and a point less is not', () => {
    const points = present(
      smallestShown(0.5, () => 0.02, spreads, 40),
      'points',
    );
    expect(chanceAt(present(ratesOf(points, 0.5), 'rates'), 0.02, spreads)).toBeGreaterThanOrEqual(0.8);
    expect(chanceAt(present(ratesOf(points - 1, 0.5), 'rates'), 0.02, spreads)).toBeLessThan(0.8);
  });
  it('is the smaller the more is known', () => {
    const shown = [0.001, 0.01, 0.05].map((variance) => smallestShown(0.5, () => variance, spreads, 40));
    expect(shown).toEqual(shown.toSorted((a, b) => (a ?? NaN) - (b ?? NaN)));
    expect(new Set(shown).size).toBe(3);
  });
  it('is none where nothing is known, or the rate too low', () => {
    expect(smallestShown(0.5, () => Infinity, spreads, 40)).toBeNull();
    expect(smallestShown(0.02, () => 0.1, spreads, 40)).toBeNull();
  });
});
