import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { alongRun, runsOf } from '../../renderer/charts/weekRuns.ts';

describe('runs of weeks', () => {
  it('are as long as they can be', () => {
    expect(runsOf([false, false, true, false, true, true])).toEqual([
      { carried: false, from: 0, to: 1 },
      { carried: true, from: 2, to: 2 },
      { carried: false, from: 3, to: 3 },
      { carried: true, from: 4, to: 5 },
    ]);
    expect(runsOf([])).toEqual([]);
  });

  it('join without a gap, and go through every week once', () => {
    const season = fc.array(
      fc.record({ carried: fc.boolean(), value: fc.double({ min: -40, max: 40, noNaN: true }) }),
      {
        minLength: 1,
        maxLength: 40,
      },
    );
    fc.assert(
      fc.property(season, (weeks) => {
        const values = weeks.map(({ value }) => value);
        const courses = runsOf(weeks.map(({ carried }) => carried)).map((run) => alongRun(run, values));
        const middles = courses.flatMap((course) => course.slice(1, -1));
        expect(middles).toEqual(values.map((value, week) => [week + 0.5, value]));
        for (const [at, course] of courses.slice(1).entries()) {
          expect(course[0]).toEqual(courses[at]?.at(-1));
        }
      }),
    );
  });
});

describe('a value along a run', () => {
  const values = [10, 20, 40];

  it('is half-way to its neighbour at a border, and level at the ends of the season', () => {
    expect(alongRun({ carried: false, from: 0, to: 1 }, values)).toEqual([
      [0, 10],
      [0.5, 10],
      [1.5, 20],
      [2, 30],
    ]);
    expect(alongRun({ carried: true, from: 2, to: 2 }, values)).toEqual([
      [2, 30],
      [2.5, 40],
      [3, 40],
    ]);
  });

  it('is as wide as its week where there is one alone', () => {
    expect(alongRun({ carried: false, from: 0, to: 0 }, [7])).toEqual([
      [0, 7],
      [0.5, 7],
      [1, 7],
    ]);
  });
});
