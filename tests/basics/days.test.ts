import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  addDays,
  daysBetween,
  isoDateAt,
  isoWeek,
  isoWeekName,
  parseIsoDate,
} from '../../renderer/basics/days.ts';

const DAY_MS = 86_400_000;
const day = fc
  .integer({ min: Date.UTC(1970, 0, 1) / DAY_MS, max: Date.UTC(2120, 0, 1) / DAY_MS })
  .map((n) => isoDateAt(n * DAY_MS, 0));

describe('ISO 8601 weeks', () => {
  // The first five as database manuals print them; the rest worked out by the rule (Monday first, week 1 holds 4 January).
  it.each([
    ['2005-01-01', '2004-W53', 6],
    ['2006-01-01', '2005-W52', 7],
    ['2012-12-31', '2013-W01', 1],
    ['2016-01-03', '2015-W53', 7],
    ['2014-12-29', '2015-W01', 1],
    ['1977-01-01', '1976-W53', 6],
    ['2005-01-02', '2004-W53', 7],
    ['2007-12-31', '2008-W01', 1],
    ['2008-12-28', '2008-W52', 7],
    ['2008-12-29', '2009-W01', 1],
    ['2010-01-03', '2009-W53', 7],
    ['2020-12-31', '2020-W53', 4],
    ['2021-01-03', '2020-W53', 7],
    ['2026-01-01', '2026-W01', 4],
    ['2026-12-31', '2026-W53', 4],
    ['2027-01-03', '2026-W53', 7],
  ])('%s is in %s, day %d', (date, week, weekday) => {
    expect(isoWeekName(date)).toBe(week);
    expect(isoWeek(date).day).toBe(weekday);
  });
  it('hold seven days each, the 4th of January in the first', () => {
    fc.assert(
      fc.property(day, (date) => {
        const { day: weekday } = isoWeek(date);
        const monday = addDays(date, 1 - weekday);
        for (let d = 0; d < 7; d += 1) expect(isoWeekName(addDays(monday, d))).toBe(isoWeekName(date));
        expect(isoWeekName(addDays(monday, 7))).not.toBe(isoWeekName(date));
        expect(isoWeek(`${date.slice(0, 4)}-01-04`).week).toBe(1);
      }),
    );
  });
  it('are refused for what is no day', () => {
    expect(() => isoWeek('2026-02-30')).toThrow(RangeError);
    expect(() => addDays('tomorrow', 1)).toThrow(RangeError);
    expect(() => daysBetween('2026-02-30', '2026-03-01')).toThrow(RangeError);
  });
});

describe('calendar days', () => {
  it('lie as many apart as were added', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -1000, max: 1000 }), (date, apart) => {
        expect(daysBetween(date, addDays(date, apart))).toBe(apart);
      }),
    );
    // A leap year.
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
  });
  it.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-1-5',
    '25.11.2026',
    '2026-11-25T10:00',
    ' 2026-11-25',
    '',
  ])('%j is none', (text) => expect(parseIsoDate(text)).toBeNull());
  it('2024 has a 29 February', () => {
    expect(parseIsoDate('2024-02-29')).toBe(Date.UTC(2024, 1, 29));
  });
  it('are read back as they are written', () => {
    fc.assert(
      fc.property(day, (date) => {
        expect(isoDateAt(parseIsoDate(date) ?? NaN, 0)).toBe(date);
      }),
    );
  });
  it('are those of the place, not of Greenwich', () => {
    const at = Date.UTC(2026, 10, 25, 23, 30);
    expect(isoDateAt(at, 0)).toBe('2026-11-25');
    expect(isoDateAt(at, 60)).toBe('2026-11-26');
    expect(isoDateAt(at, -600)).toBe('2026-11-25');
    expect(isoDateAt(Date.UTC(2026, 10, 25, 1), -120)).toBe('2026-11-24');
  });
  it('add up over leap years and the ends of years', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
  });
});
