import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { addDays } from '../../renderer/basics/days.ts';
import type { Round } from '../../renderer/log/book.ts';
import { ASSUMED, habitOf } from '../../renderer/stats/habit.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

const MONDAY = '2026-01-05';

/** 50 relaxed shots, 30 of them made, and 20 pressured ones. */
function session(date: string): Round[] {
  return [
    roundOf('relaxed', [three('top', 10, 25), freeThrows(20, 25)], { date }),
    roundOf('pressured', [three('top', 8, 20)], { date }),
  ];
}

/** Mondays, Wednesdays and Fridays. */
function weeks(count: number, from = MONDAY): Round[] {
  return Array.from({ length: count }, (_, week) =>
    [0, 2, 4].flatMap((day) => session(addDays(from, 7 * week + day))),
  ).flat();
}

describe('the habit', () => {
  it.each([3, 5, 7])('of a record of %d weeks is three sessions a week, near enough', (count) => {
    const habit = habitOf(weeks(count));
    expect(habit.assumed).toBe(false);
    expect(Math.abs(habit.sessionsPerWeek - 3)).toBeLessThan(0.35);
    expect(habit.relaxedPerWeek).toBeCloseTo(50 * habit.sessionsPerWeek, 9);
    expect(habit.pressuredPerWeek).toBeCloseTo(20 * habit.sessionsPerWeek, 9);
  });
  it('of a long record is that of its latest eight weeks', () => {
    const once = Array.from({ length: 8 }, (_, week) => session(addDays('2026-03-09', 7 * week))).flat();
    expect(habitOf([...weeks(8), ...once])).toEqual({
      sessionsPerWeek: 1,
      relaxedPerWeek: 50,
      pressuredPerWeek: 20,
      relaxedRate: (8 * 30 + 2) / (8 * 50 + 4),
      assumed: false,
    });
  });
  it('of a long record stays thin where the latest weeks are thin', () => {
    const { sessionsPerWeek, assumed } = habitOf([...weeks(8), ...session('2026-07-01')]);
    expect(assumed).toBe(false);
    expect(sessionsPerWeek).toBe(1 / 8);
  });
  it('looks at as many days as it is asked to', () => {
    expect(habitOf(weeks(12), 28).sessionsPerWeek).toBe(12 / 4);
  });
  it.each([
    ['nothing', []],
    ['one session', session(MONDAY)],
    [
      'two sessions of one day',
      [...session(MONDAY), ...session(MONDAY).map((r) => ({ ...r, session: 'b' }))],
    ],
    ['a week', weeks(1)],
    ['three sessions in three weeks', [0, 10, 20].flatMap((day) => session(addDays(MONDAY, day)))],
  ])('is taken for granted with %s', (_, rounds) => {
    expect(habitOf(rounds)).toMatchObject({ ...ASSUMED, assumed: true });
  });
  it('has the make rate of what there is, drawn towards a half', () => {
    expect(habitOf([]).relaxedRate).toBe(0.5);
    expect(habitOf(session(MONDAY)).relaxedRate).toBe(32 / 54);
    expect(habitOf([roundOf('relaxed', [freeThrows(3, 3)])]).relaxedRate).toBe(5 / 7);
  });
  it('tells two sessions of one day apart, and does not count rounds without a shot or a day', () => {
    const rounds = weeks(4);
    const empty = { ...roundOf('relaxed', [], { date: '2026-06-01' }) };
    const nowhen = roundOf('relaxed', [freeThrows(1, 1)], { date: '2026-13-01' });
    expect(habitOf([...rounds, empty, nowhen])).toEqual(habitOf(rounds));
    const twice = [...rounds, ...session('2026-01-14').map((round) => ({ ...round, session: 'later' }))];
    expect(habitOf(twice).sessionsPerWeek).toBeGreaterThan(habitOf(rounds).sessionsPerWeek);
  });
  it('does not depend on the order of the rounds', () => {
    const rounds = weeks(10);
    fc.assert(
      fc.property(fc.shuffledSubarray(rounds, { minLength: rounds.length }), (shuffled) => {
        expect(habitOf(shuffled)).toEqual(habitOf(rounds));
      }),
      { numRuns: 20 },
    );
  });
});
