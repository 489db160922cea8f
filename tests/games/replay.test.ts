import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { fallenBy, secondsIn, shotTimes } from '../../renderer/games/replay.ts';
import type { Entry } from '../../renderer/log/book.ts';

const shotAt = (seconds: number): Entry => ({
  kind: 'shot',
  id: `at ${seconds}`,
  at: seconds * 1000,
  stop: 0,
  made: true,
  side: null,
});
const played = (seconds: readonly number[], breaks: readonly number[] = []) => ({
  entries: seconds.map(shotAt),
  breaks: breaks.map((at) => at * 1000),
  imported: false,
});

describe('the times of a round', () => {
  it('are counted from its first shot', () => {
    expect(shotTimes(played([100, 107, 112]))).toEqual([0, 7, 12]);
    expect(shotTimes(played([]))).toEqual([]);
  });
  it('have the usual gap where play stood still', () => {
    // 6 and 8 are told; between 114 and 400 lies a pause, between 408 and 900 a sleep.
    expect(shotTimes(played([100, 106, 114, 400, 408, 900], [120, 395]))).toEqual([0, 6, 14, 22, 30, 38]);
  });
  it('have seven seconds a shot where nothing else is known', () => {
    expect(shotTimes(played([100, 5000, 9000]))).toEqual([0, 7, 14]);
  });
  it('go on where the clock of the device was set back', () => {
    expect(shotTimes(played([100, 105, 60, 66]))).toEqual([0, 5, 11, 17]);
  });
  it('are not there where shots were not noted one by one', () => {
    const count: Entry = { kind: 'count', id: 'c', at: 0, stop: 0, makes: 3, attempts: 5 };
    expect(shotTimes({ entries: [count], imported: false })).toBeNull();
    expect(shotTimes({ ...played([1, 2]), imported: true })).toBeNull();
  });
  it('never go back', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1000)), fc.array(fc.nat(1000), { maxLength: 3 }), (at, breaks) => {
        const times = shotTimes(played(at, breaks)) ?? [];
        expect(times).toHaveLength(at.length);
        expect(times.every((time, n) => n === 0 || time >= (times[n - 1] ?? 0))).toBe(true);
      }),
    );
  });
});

describe('the time a round has been played for', () => {
  it('begins with its first shot and runs on', () => {
    expect(secondsIn(played([]), 50_000)).toBeNull();
    expect(secondsIn(played([100]), 103_500)).toBe(3.5);
    expect(secondsIn(played([100, 107]), 109_000)).toBe(9);
  });
  it('stands at the last shot while nobody plays', () => {
    expect(secondsIn(played([100, 107]), null)).toBe(7);
    expect(secondsIn(played([100, 107], [108, 300]), 302_000)).toBe(7);
    expect(secondsIn(played([100, 107]), 900_000)).toBe(7);
  });
});

describe('shots that have fallen', () => {
  it('are those up to that moment', () => {
    const times = [0, 6, 14];
    expect([-1, 0, 5.9, 6, 13, 14, 99].map((at) => fallenBy(times, at))).toEqual([0, 1, 1, 2, 2, 3, 3]);
  });
});
