import { describe, expect, it } from 'vitest';

import { addDays } from '../../renderer/basics/days.ts';
import { invariant } from '../../renderer/basics/invariant.ts';
import { type DayCell, dayTallies, type DayTally, type Place } from '../../renderer/stats/dayTallies.ts';
import { nextDay } from '../../renderer/stats/lately.ts';
import sampled from '../fixtures/stats/lately.json' with { type: 'json' };
import { freeThrows, roundOf, three } from './rounds.ts';

const PLACES: readonly Place[] = [
  { spot: 'left-corner', shot: 'catch' },
  { spot: 'top', shot: 'catch' },
  { spot: 'free-throw', shot: 'free-throw' },
];

function cellOf([place = NaN, pressured, makes = NaN, attempts = NaN]: readonly number[]): DayCell {
  const at = PLACES[place];
  invariant(at, 'a place of the fixture');
  return { ...at, condition: pressured === 1 ? 'pressured' : 'relaxed', makes, attempts };
}

/*
 * The same model by importance sampling and product quadrature, in tests/fixtures/stats/lately.py. Laplace's
 * approximation and the grid for the day's spread cost a little: 0.03 log-odds is 0.7 of a point at a 50 % make rate,
 * and the standard deviations agree within 3 in 100.
 */
describe.each(sampled.cases)('against sampling: $name', ({ days, relaxed, pressured }) => {
  const record: DayTally[] = days.map((day) => {
    const [age, rows] = day;
    invariant(typeof age === 'number' && Array.isArray(rows), 'an age and its rows');
    return { date: addDays('2026-06-01', -age), cells: rows.map(cellOf) };
  });
  it.each([
    ['relaxed', relaxed],
    ['pressured', pressured],
  ] as const)('%s', (condition, wanted) => {
    const { means, covariance } = nextDay(record, condition, PLACES, '2026-06-01');
    for (const [i, mean] of means.entries()) {
      expect(Math.abs(mean - (wanted.means[i] ?? NaN))).toBeLessThan(0.03);
      const sd = Math.sqrt(covariance.values[i * 4] ?? NaN);
      expect(sd / Math.sqrt(wanted.covariance[i]?.[i] ?? NaN)).toBeCloseTo(1, 1.2);
      expect(Math.abs(sd / Math.sqrt(wanted.covariance[i]?.[i] ?? NaN) - 1)).toBeLessThan(0.03);
    }
    const together = covariance.values[1] ?? NaN;
    expect(Math.abs(together - (wanted.covariance[0]?.[1] ?? NaN))).toBeLessThan(0.01);
  });
});

describe('the record', () => {
  it('is added up by day, in the order of the days', () => {
    const days = dayTallies([
      roundOf('relaxed', [three('top', 3, 5)], { date: '2026-03-09' }),
      roundOf('relaxed', [three('top', 1, 5), freeThrows(7, 10)], { date: '2026-03-02' }),
      roundOf('relaxed', [three('top', 2, 5)], { date: '2026-03-02' }),
      roundOf('pressured', [three('top', 4, 5)], { date: '2026-03-02' }),
    ]);
    expect(days).toEqual([
      {
        date: '2026-03-02',
        cells: [
          { ...three('top', 3, 10), condition: 'relaxed' },
          { ...freeThrows(7, 10), condition: 'relaxed' },
          { ...three('top', 4, 5), condition: 'pressured' },
        ],
      },
      { date: '2026-03-09', cells: [{ ...three('top', 3, 5), condition: 'relaxed' }] },
    ]);
  });
  it('fades: the same good day counts for less half a year ago', () => {
    const good: DayTally = { date: '2026-03-02', cells: [{ ...three('top', 40, 50), condition: 'relaxed' }] };
    const poor = (date: string): DayTally => ({
      date,
      cells: [{ ...three('top', 15, 50), condition: 'relaxed' }],
    });
    const [soon, late] = ['2026-03-04', '2026-07-04'].map(
      (date) => nextDay([good, poor(date)], 'relaxed', PLACES, date).means[1] ?? NaN,
    );
    expect(late).toBeLessThan((soon ?? NaN) - 0.2);
  });
  it('fades over a break too: what is known of a shooter goes back to the weak belief', () => {
    const days: DayTally[] = [
      { date: '2026-03-02', cells: [{ ...three('top', 80, 100), condition: 'relaxed' }] },
    ];
    const [atOnce, months, years] = ['2026-03-03', '2026-07-03', '2028-03-03'].map((on) => {
      const { means, covariance } = nextDay(days, 'relaxed', PLACES, on);
      return { mean: means[1] ?? NaN, variance: covariance.values[4] ?? NaN };
    });
    const { means, covariance } = nextDay([], 'relaxed', PLACES, '2026-03-03');
    expect(months?.mean).toBeLessThan((atOnce?.mean ?? NaN) - 0.2);
    expect(months?.variance).toBeGreaterThan((atOnce?.variance ?? NaN) + 0.05);
    expect(years).toEqual({ mean: means[1], variance: covariance.values[4] });
  });
  it('of a day to come counts for nothing, and takes nothing from the rest', () => {
    const good: DayTally = { date: '2026-03-02', cells: [{ ...three('top', 40, 50), condition: 'relaxed' }] };
    const slip: DayTally = { date: '2036-03-03', cells: [{ ...three('top', 5, 50), condition: 'relaxed' }] };
    const known = nextDay([good], 'relaxed', PLACES, '2026-03-05');
    expect(nextDay([good, slip], 'relaxed', PLACES, '2026-03-05')).toEqual(known);
  });
  it('of one spot tells of its neighbours, and less of other shots', () => {
    const days: DayTally[] = [
      { date: '2026-03-02', cells: [{ ...three('left-corner', 40, 50), condition: 'relaxed' }] },
    ];
    const before = nextDay([], 'relaxed', PLACES, '2026-03-02').means;
    const after = nextDay(days, 'relaxed', PLACES, '2026-03-02').means;
    const [corner = NaN, top = NaN, free = NaN] = after.map((mean, i) => mean - (before[i] ?? NaN));
    expect(corner).toBeGreaterThan(top);
    expect(top).toBeGreaterThan(0.5);
    expect(Math.abs(free)).toBeLessThan(0.05);
  });
  it('learns the shift from shots in both conditions', () => {
    const days = Array.from({ length: 12 }, (_, day): DayTally => ({
      date: addDays('2026-03-02', 2 * day),
      cells: [
        { ...three('top', 20, 40), condition: 'relaxed' },
        { ...three('top', 14, 40), condition: 'pressured' },
      ],
    }));
    const [relaxed = NaN] = nextDay(days, 'relaxed', PLACES.slice(1, 2), '2026-03-24').means;
    const [pressured = NaN] = nextDay(days, 'pressured', PLACES.slice(1, 2), '2026-03-24').means;
    // logit(14/40) = −0.62; the prior pulls a little toward no shift.
    expect(pressured - relaxed).toBeLessThan(-0.45);
    expect(pressured - relaxed).toBeGreaterThan(-0.62);
  });
});
