import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { chanceToShow, type Habit, NOTHING_YET, needOf } from '../../renderer/stats/planning.ts';
import { planOf, type PlanTable } from '../../renderer/stats/planTable.ts';

const HABIT: Habit = { sessionsPerWeek: 4, relaxedPerWeek: 400, pressuredPerWeek: 0, relaxedRate: 0.5 };

function aim(table: PlanTable, points: number): PlanTable['aims'][number] {
  return present(
    table.aims.find((one) => one.points === points),
    `${points} points`,
  );
}

describe('the table', () => {
  const { rows } = planOf(HABIT);
  it('has two drops in three orders over three spans, each as planned by itself', () => {
    expect(rows).toHaveLength(18);
    for (const { points, weeks, order, need } of rows) {
      expect(need).toEqual(needOf({ points, weeks, order, habit: HABIT }));
    }
    const names = rows.map(({ points, order, weeks }) => `${points} ${order} ${weeks}`);
    expect(new Set(names).size).toBe(18);
  });
  it('never gives a figure for an unfair order without its caution', () => {
    for (const { order, caution } of rows) {
      expect(caution).toBe({ pairs: null, last: 'tiring', 'own-day': 'never both' }[order]);
    }
  });
});

describe('the advice', () => {
  it('is the shortest span that asks for no new life', () => {
    const ten = aim(planOf(HABIT), 10);
    expect(ten.advice).toMatchObject({ order: 'pairs', weeks: 4, comfortable: true });
    const five = aim(planOf(HABIT), 5);
    expect(five.advice).toMatchObject({ order: 'pairs', weeks: 12, comfortable: true });
  });
  it('takes its time with a shooter of few shots', () => {
    const habit = { ...HABIT, sessionsPerWeek: 3, relaxedPerWeek: 120 };
    const { advice } = aim(planOf(habit), 10);
    expect(advice).toMatchObject({ weeks: 8, comfortable: true });
    expect(advice?.need.pressuredPerWeek).toBeLessThanOrEqual(120 / 3);
  });
  it('is the lightest there is where all are heavy, and says so', () => {
    const habit = { ...HABIT, sessionsPerWeek: 2, relaxedPerWeek: 20 };
    const table = planOf(habit);
    const { advice } = aim(table, 10);
    expect(advice).toMatchObject({ weeks: 12, comfortable: false });
    const pairs = table.rows.flatMap(({ points, order, need }) =>
      points === 10 && order === 'pairs' && need.kind === 'shots' ? [need.pressuredPerWeek] : [],
    );
    expect(advice?.need.pressuredPerWeek).toBe(Math.min(...pairs));
  });
  it('asks for no less than a shooter takes already before it calls a plan heavy', () => {
    const habit = { ...HABIT, sessionsPerWeek: 2, relaxedPerWeek: 20, pressuredPerWeek: 100 };
    expect(aim(planOf(habit), 10).advice?.comfortable).toBe(true);
  });
  it('is none where the rate is too low', () => {
    const table = planOf({ ...HABIT, relaxedRate: 0.07 });
    expect(aim(table, 10)).toEqual({ points: 10, advice: null, weeksAsNow: null });
  });
});

describe('weeks as now', () => {
  it('are the fewest that are enough', () => {
    const habit = { ...HABIT, pressuredPerWeek: 40 };
    const weeks = present(aim(planOf(habit), 10).weeksAsNow, 'weeks');
    const after = (span: number) => chanceToShow({ points: 10, weeks: span, order: 'pairs', habit });
    expect(after(weeks)).toBeGreaterThanOrEqual(0.8);
    expect(after(weeks - 1)).toBeLessThan(0.8);
  });
  it('are none without pressured shots, and none where a year is too short', () => {
    expect(aim(planOf(HABIT), 10).weeksAsNow).toBeNull();
    expect(aim(planOf({ ...HABIT, pressuredPerWeek: 3 }), 5).weeksAsNow).toBeNull();
  });
  it('are 0, and no shot is asked for, where the record should show it by now', () => {
    const table = planOf(HABIT, undefined, { variance: 0.005, pressured: 900, sessions: 30 });
    expect(aim(table, 10)).toMatchObject({
      weeksAsNow: 0,
      advice: { weeks: 4, need: { pressuredPerWeek: 0 } },
    });
  });
  it('wait for a verdict too: 100 shots and four sessions', () => {
    const habit = { ...HABIT, pressuredPerWeek: 20 };
    const certain = { ...NOTHING_YET, variance: 1e-6 };
    expect(aim(planOf(habit, undefined, certain), 10).weeksAsNow).toBe(5);
    const rare = { ...HABIT, sessionsPerWeek: 0.5, pressuredPerWeek: 100 };
    expect(aim(planOf(rare, undefined, certain), 10).weeksAsNow).toBe(8);
  });
});
