import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { CourseChart, type CoursePoint } from '../../renderer/charts/CourseChart.tsx';
import { count } from '../screens/seasons.ts';

const drawn = (points: readonly CoursePoint[], start = 0.5): string =>
  renderToStaticMarkup(<CourseChart label="A game" start={start} points={points} />);
const shots = (made: readonly boolean[]): CoursePoint[] =>
  made.map((one, at) => ({ made: one, after: (at + 1) / (made.length + 1), leverage: 0.2 }));
const numbers = (markup: string): string[] =>
  [...markup.matchAll(/text-anchor="middle">(\d+)</g)].map(([, shot = '']) => shot);

describe('a game drawn shot by shot', () => {
  it('tells a make from a miss by its shape, and has a bar for each', () => {
    const markup = drawn(shots([true, false, false]));
    expect(count(markup, 'shot-mark make')).toBe(1);
    expect(count(markup, 'shot-mark miss')).toBe(2);
    expect(count(markup, 'class="hung"')).toBe(3);
  });

  it('has a line from the chance before the first shot to the end', () => {
    const markup = drawn([{ made: true, after: 1, leverage: 1 }], 0);
    // 0 lies at the bottom of the upper plot, 100 at its top.
    expect(markup).toContain('class="course drop" d="M40.0 150.0L710.0 34.0"');
  });

  it('draws a bar as high as what hung on the shot', () => {
    const heights = [0, 0.5, 1].map((leverage) => {
      const markup = drawn([{ made: true, after: 1, leverage }]);
      return Number(/class="hung"[^>]* height="([\d.]+)"/.exec(markup)?.[1]);
    });
    expect(heights).toEqual([0, 30, 60]);
  });

  it.each([
    [1, ['1']],
    [9, ['1', '2', '3', '4', '5', '6', '7', '8', '9']],
    [30, ['2', '4', '6']],
    [97, ['10', '20', '30']],
  ])('numbers %d shots so that there is room for the numbers, and the last always', (length, first) => {
    const along = numbers(drawn(shots(Array.from({ length }, () => true))));
    expect(along.slice(0, first.length)).toEqual(first);
    expect(along.at(-1)).toBe(String(length));
  });
});
