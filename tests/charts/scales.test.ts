import { describe, expect, it } from 'vitest';

import { linear, reachOf, signedTick, tensAround, ticks } from '../../renderer/charts/scale.ts';
import { mondayOf, weekFrame } from '../../renderer/charts/weekFrame.ts';

describe('a straight scale', () => {
  it('maps ends to ends, turned round too, and holds what lies beyond', () => {
    const y = linear([0, 1], [200, 40]);
    expect([y(0), y(0.5), y(1), y(-3), y(7)]).toEqual([200, 120, 40, 200, 40]);
  });

  it('has ticks at both ends', () => {
    expect(ticks(0, 1, 0.25)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(ticks(-20, 20, 10)).toEqual([-20, -10, 0, 10, 20]);
  });

  it.each([
    [[], 20],
    [[-7, 20], 20],
    [[20.1], 40],
    [[-61], 100],
    [[130], 100],
  ])('reaches far enough for %j: %i points', (values, reach) => {
    expect(reachOf(values)).toBe(reach);
  });
});

describe('an axis of whole tens', () => {
  it.each([
    [[42, 58], 40, [30, 70]],
    [[42, 58], 20, [40, 60]],
    [[3, 8], 40, [0, 40]],
    [[97, 99], 40, [60, 100]],
    [[40, 90], 40, [40, 90]],
    [[0, 100], 40, [0, 100]],
  ])('around %j, at least %i long, goes over %j', (values, least, ends) => {
    expect(tensAround(values, least, [0, 100])).toEqual(ends);
  });

  it('is written with a real minus sign', () => {
    expect([-10, 0, 20].map(signedTick)).toEqual(['−10', '0', '20']);
  });
});

describe('the time axis', () => {
  const room = { width: 1000, edge: 10, leastWeek: 30, labelWidth: 70 };

  it('starts weeks on Monday, as ISO 8601 does', () => {
    expect(mondayOf('2027-01-03')).toBe('2026-12-28');
    expect(mondayOf('2027-01-04')).toBe('2027-01-04');
  });

  it('leaves room for weeks without shots, over a change of year and of clocks', () => {
    const frame = weekFrame(['2026-12-30', '2027-04-01'], room);
    expect(frame.mondays).toHaveLength(14);
    expect(frame.mondays[0]).toBe('2026-12-28');
    expect(frame.mondays.at(-1)).toBe('2027-03-29');
    expect(frame.width).toBe(1000);
    expect(frame.weekX(14)).toBeCloseTo(990);
  });

  it('puts a day in its place within its week', () => {
    const frame = weekFrame(['2026-10-05', '2026-10-18'], room);
    expect(frame.weekWidth).toBe(490);
    expect(frame.dayX('2026-10-05')).toBeCloseTo(10 + 490 / 14);
    expect(frame.dayX('2026-10-18')).toBeCloseTo(990 - 490 / 14);
    expect(frame.weekMiddleX('2026-10-15')).toBeCloseTo(10 + 490 * 1.5);
  });

  it('grows wider than its room rather than squeeze a long season, and thins its labels', () => {
    const frame = weekFrame(['2026-01-05', '2027-01-04'], room);
    expect(frame.mondays).toHaveLength(53);
    expect(frame.width).toBe(53 * 30 + 20);
    expect(frame.labelEvery).toBe(3);
  });
});
