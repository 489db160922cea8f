import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { WeeksChart } from '../../renderer/charts/WeeksChart.tsx';
import { shortDayWords } from '../../renderer/screens/dayWords.ts';
import type { IndexWeek } from '../../renderer/stats/model/chokeIndex.ts';
import { count, seasonOf, textOf, weeklyRounds, without } from '../screens/seasons.ts';

const drawn = (weeks: readonly IndexWeek[]): string =>
  renderToStaticMarkup(<WeeksChart label="Weeks" weeks={weeks} dayWords={shortDayWords} />);

const marks = (markup: string): Record<string, number> => ({
  relaxed: count(markup, 'class="mark relaxed"'),
  pressured: count(markup, 'class="mark pressured"'),
  drop: count(markup, 'class="mark drop"'),
});

describe('the weeks drawn', () => {
  const weekly = weeklyRounds(9);
  // Of nine weeks the third has no shots and the fifth and sixth no pressured ones.
  const gaps = seasonOf(without(weekly, ['2021-W03'], ['2021-W05', '2021-W06'])).index.weeks;

  it('have a point only where there were such shots', () => {
    expect(marks(drawn(seasonOf(weekly).index.weeks))).toEqual({ relaxed: 9, pressured: 9, drop: 9 });
    expect(marks(drawn(gaps))).toEqual({ relaxed: 8, pressured: 6, drop: 6 });
  });

  it('carry line and band over the rest, paler', () => {
    const markup = drawn(gaps);
    expect(count(markup, '<g class="carried"><path class="band relaxed"')).toBe(1);
    expect(count(markup, '<g class="carried"><path class="band pressured"')).toBe(2);
    expect(count(markup, '<g class="carried"><path class="band drop"')).toBe(2);
    // Around two gaps lie three stretches with shots.
    expect(count(markup, 'class="band drop"')).toBe(5);
  });

  it('draw the band from the lower to the upper end of each week’s span', () => {
    const [week] = gaps;
    const markup = drawn([{ ...(week as IndexWeek), low: -10, points: 5, high: 20 }]);
    const [, band = ''] = /class="band drop" d="([^"]+)"/.exec(markup) ?? [];
    const heights = [...new Set([...band.matchAll(/[\d.]+ ([\d.]+)/g)].map(([, y]) => Number(y)))];
    // From 20 at the top of the lower plot to −10 at its bottom.
    expect(heights).toEqual([308, 500]);
    expect(marks(markup)).toEqual({ relaxed: 1, pressured: 1, drop: 1 });
  });

  it('always hold the line of no drop, and name both plots', () => {
    const [week] = gaps;
    const markup = drawn([{ ...(week as IndexWeek), low: 31, points: 35, high: 38 }]);
    expect(count(markup, 'class="grid zero"')).toBe(1);
    expect(textOf(markup)).toContain('Makes in 100 shots');
    expect(textOf(markup)).toContain('Points lost under pressure');
  });

  it('grow wider than the screen over five years, with the year under the first day of each', () => {
    const { weeks } = seasonOf(weeklyRounds(260)).index;
    const markup = drawn(weeks);
    expect(weeks).toHaveLength(260);
    expect(markup).toContain(`viewBox="0 0 ${260 * 30 + 16} `);
    expect(marks(markup)).toEqual({ relaxed: 260, pressured: 260, drop: 260 });
    for (const year of [2021, 2022, 2023, 2024, 2025]) {
      expect(count(markup, `>${year}<`), String(year)).toBe(1);
    }
    expect(markup).toContain('role="region" aria-label="Drawing week by week" tabindex="0"');
    expect(textOf(markup)).toContain('Whole season Slide the drawing sideways');
    // What fits needs neither.
    expect(textOf(drawn(weeks.slice(-12)))).not.toContain('Whole season');
  });
});
