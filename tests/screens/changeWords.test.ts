import { describe, expect, it } from 'vitest';

import { chancesWords, changeWords, shareWords } from '../../renderer/screens/result/changeWords.ts';
import type { Change } from '../../renderer/stats/model/chokeIndex.ts';

const change = (points: number, low: number, high: number, probability: number): Change => ({
  from: '2026-W02',
  to: '2026-W12',
  points,
  low,
  high,
  sd: 3,
  probability,
});

const words = (...numbers: Parameters<typeof change>) =>
  changeWords(change(...numbers), '2026-01-05', '2026-03-16');

describe('the words for a change of the drop', () => {
  it('say which way it went, how far, and how likely', () => {
    expect(words(-6.2, -11.3, -0.8, 0.04)).toEqual({
      headline:
        'From the week of 5 Jan to the week of 16 Mar the drop went down by about 6 points, somewhere between 1 and 11: 96 chances in 100 that it shrank.',
      caution: null,
    });
    expect(words(4.4, 1.2, 7.7, 0.993).headline).toContain(
      'went up by about 4 points, somewhere between 1 and 8: more than 99 chances in 100 that it grew.',
    );
  });

  it('name both sides where the span holds none, and say that it may be luck', () => {
    expect(words(-3.1, -9.4, 2.2, 0.12)).toEqual({
      headline:
        'From the week of 5 Jan to the week of 16 Mar the drop went down by about 3 points, somewhere between 2 points up and 9 points down: nine chances in ten that it shrank.',
      caution: 'That may still be luck.',
    });
    expect(words(1, -0.3, 2.3, 0.9).headline).toContain('by about 1 point, somewhere between 0 and 2: nine');
  });

  it('claim no direction where it hardly moved', () => {
    expect(words(0.3, -4.2, 4.9, 0.55)).toEqual({
      headline:
        'From the week of 5 Jan to the week of 16 Mar the drop stayed about where it was: somewhere between 4 points down and 5 points up.',
      caution: null,
    });
  });

  it('write one decimal where both ends would be the same number', () => {
    expect(words(-8, -8.3, -7.7, 0.01).headline).toContain('somewhere between 7.7 and 8.3:');
    expect(words(0.1, -0.3, 0.4, 0.5).headline).toContain('between 0.3 points down and 0.4 points up.');
  });

  it('give the year where there are two', () => {
    expect(changeWords(change(-6, -11, -1, 0.02), '2025-12-29', '2026-03-16').headline).toContain(
      'From the week of 29 Dec 2025 to the week of 16 Mar 2026',
    );
  });
});

describe('a chance in words', () => {
  it.each([
    [0.5, 'five chances in ten'],
    [0.86, 'nine chances in ten'],
    [0.949, 'nine chances in ten'],
    [0.95, '95 chances in 100'],
    [0.9899, '98 chances in 100'],
    [0.99, '99 chances in 100'],
    [1, 'more than 99 chances in 100'],
  ])('%d is %s', (chance, told) => {
    expect(chancesWords(chance)).toBe(told);
  });
});

it('the share that is left is told of a hundred', () => {
  expect(shareWords({ value: 0.883, low: 0.821, high: 0.949, sd: 0.04 })).toBe(
    'For every 100 makes when you are relaxed there are about 88 under pressure, somewhere between 82 and 95.',
  );
});
