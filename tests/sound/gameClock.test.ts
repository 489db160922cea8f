import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  endsAt,
  leftAt,
  pauseClock,
  readyClock,
  runClock,
  writeClock,
} from '../../renderer/sound/gameClock.ts';

const seconds = fc.double({ min: 0, max: 600, noNaN: true });

describe('a game clock', () => {
  test('stands until it is run', () => {
    const clock = readyClock(24);
    expect(leftAt(clock, 1000)).toBe(24);
    expect(endsAt(clock)).toBe(Number.POSITIVE_INFINITY);
  });

  test('runs down from its start, which may lie ahead, and stops at nothing', () => {
    const clock = runClock(readyClock(24), 105);
    expect(leftAt(clock, 100)).toBe(24);
    expect(leftAt(clock, 106.5)).toBe(22.5);
    expect(leftAt(clock, 129)).toBe(0);
    expect(leftAt(clock, 500)).toBe(0);
    expect(endsAt(clock)).toBe(129);
  });

  test('can be taken up with part of its time left, never with more than it has', () => {
    expect(leftAt(readyClock(60, 41.2), 0)).toBe(41.2);
    expect(leftAt(readyClock(60, 90), 0)).toBe(60);
    expect(leftAt(readyClock(60, -1), 0)).toBe(0);
  });

  test('is never negative and never above full, whatever was done to it', () => {
    const deed = fc.constantFrom(runClock, pauseClock);
    fc.assert(
      fc.property(seconds, fc.array(fc.tuple(deed, seconds)), seconds, (full, deeds, at) => {
        let clock = readyClock(full);
        for (const [done, when] of deeds) clock = done(clock, when);
        expect(leftAt(clock, at)).toBeGreaterThanOrEqual(0);
        expect(leftAt(clock, at)).toBeLessThanOrEqual(full);
      }),
    );
  });

  test('loses nothing by a pause', () => {
    fc.assert(
      fc.property(seconds, seconds, seconds, seconds, (full, played, rested, later) => {
        const running = runClock(readyClock(full), 0);
        const resumed = runClock(pauseClock(running, played), played + rested);
        expect(leftAt(resumed, played + rested + later)).toBeCloseTo(leftAt(running, played + later), 6);
        expect(leftAt(pauseClock(running, played), played + rested)).toBe(leftAt(running, played));
      }),
    );
  });

  test('has nothing left exactly from its end on', () => {
    fc.assert(
      fc.property(seconds, seconds, (full, start) => {
        const clock = runClock(readyClock(full), start);
        expect(leftAt(clock, endsAt(clock) + 1e-9)).toBe(0);
        expect(leftAt(clock, endsAt(clock) - 0.001)).toBeCloseTo(Math.min(full, 0.001), 9);
      }),
    );
  });
});

describe('time left is written', () => {
  test.each([
    [34, 34, '34'],
    [24, 24, '24'],
    [23.01, 24, '24'],
    [10.01, 24, '11'],
    [10, 24, '10'],
    [9.95, 24, '10'],
    [9.9, 24, '9.9'],
    [9.4, 24, '9.4'],
    [9.31, 24, '9.4'],
    [0.04, 24, '0.1'],
    [0.3, 24, '0.3'],
    [0, 24, '0.0'],
    [-1, 24, '0.0'],
    [70, 70, '1:10'],
    [59.2, 70, '1:00'],
    [34, 70, '0:34'],
    [8.25, 70, '8.3'],
    [600, 600, '10:00'],
    [60, 60, '1:00'],
  ])('%d of %d as %s', (left, full, written) => {
    expect(writeClock(left, full)).toBe(written);
  });

  test('without dust from sums of tenths', () => {
    expect(writeClock(24 - 23.7, 24)).toBe('0.3');
    expect(writeClock(0.1 + 0.2, 24)).toBe('0.3');
    expect(writeClock(1e-12, 24)).toBe('0.1');
  });

  test('as over only when it is over', () => {
    fc.assert(
      fc.property(seconds, seconds, (left, full) => {
        expect(writeClock(left, full) === '0.0').toBe(left === 0);
      }),
    );
  });

  test('never as less than is left, and never as more by a full step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 600, noNaN: true }), (left) => {
        const written = writeClock(left);
        const [secs = 0, minutes = 0] = written.split(':').map(Number).toReversed();
        const step = written.includes('.') ? 0.1 : 1;
        const read = minutes * 60 + secs;
        expect(read).toBeGreaterThan(left - 1e-6);
        expect(read).toBeLessThan(left + step + 1e-6);
      }),
    );
  });
});
