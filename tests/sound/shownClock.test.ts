import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { shownClock, type ClockReading } from '../../renderer/sound/shownClock.ts';

const FRAME = 1 / 60;
const LATENCY = 0.04;
const LUMP = 0.02;

/** A look at a healthy clock at a moment of true audio time, its time stamps off by `jitter` seconds. */
function reading(time: number, jitter: number): ClockReading {
  const systemTime = 5000 + time * 1000;
  const behind = 0.005;
  return {
    currentTime: Math.floor(time / LUMP) * LUMP,
    contextTime: time - LATENCY - behind + jitter,
    performanceTime: systemTime - behind * 1000,
    systemTime,
  };
}

const jitters = fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 2, maxLength: 200 });

describe('the clock that is drawn', () => {
  test('is what reaches the ear', () => {
    const shown = shownClock();
    for (let time = 1; time < 3; time += FRAME)
      expect(shown(reading(time, 0))).toBeCloseTo(time - LATENCY, 6);
  });

  test('never goes back, and stays near the truth, however its time stamps jitter', () => {
    fc.assert(
      fc.property(jitters, (jitter) => {
        const shown = shownClock();
        let last = Number.NEGATIVE_INFINITY;
        for (const [frame, off] of jitter.entries()) {
          const time = 1 + frame * FRAME;
          const drawn = shown(reading(time, off));
          expect(drawn).toBeGreaterThanOrEqual(last);
          expect(Math.abs(drawn - (time - LATENCY))).toBeLessThan(0.0401);
          last = drawn;
        }
      }),
    );
  });

  test('is smoother than its time stamps', () => {
    const shown = shownClock();
    const alternating = Array.from({ length: 240 }, (_, frame) => {
      const time = 1 + frame * FRAME;
      return shown(reading(time, frame % 2 === 0 ? 0.01 : -0.01));
    }).slice(120);
    const steps = alternating.slice(1).map((drawn, index) => drawn - (alternating[index] ?? 0));
    for (const step of steps) expect(Math.abs(step - FRAME)).toBeLessThan(0.002);
  });

  test('never goes back even where the readings do', () => {
    const looks = fc.array(
      fc.record({
        currentTime: fc.double({ min: 0, max: 100, noNaN: true }),
        contextTime: fc.double({ min: 0, max: 100, noNaN: true }),
        performanceTime: fc.double({ min: 0, max: 1e5, noNaN: true }),
        systemTime: fc.double({ min: 0, max: 1e5, noNaN: true }),
      }),
    );
    fc.assert(
      fc.property(looks, (readings) => {
        const shown = shownClock();
        const drawn = readings.map(shown);
        expect(drawn).toEqual(drawn.toSorted((one, other) => one - other));
      }),
    );
  });

  test('stands while the audio clock stands', () => {
    const shown = shownClock();
    for (let time = 1; time < 2; time += FRAME) shown(reading(time, 0));
    const stood = reading(2, 0);
    const later = Array.from({ length: 300 }, (_, frame) =>
      shown({ ...stood, systemTime: stood.systemTime + frame * FRAME * 1000 }),
    );
    expect(later.at(-1)).toBeLessThan(2.06);
  });

  test('follows at once where the audio clock is far from where it was thought', () => {
    const shown = shownClock();
    shown(reading(1, 0));
    const jumped = { ...reading(1.1, 0), currentTime: 31.1, contextTime: 31.1 - LATENCY - 0.005 };
    expect(shown(jumped)).toBeCloseTo(31.1 - LATENCY, 6);
  });

  test('goes by the audio clock itself where the browser gives no time stamps yet', () => {
    const shown = shownClock();
    expect(shown({ currentTime: 3, contextTime: 0, performanceTime: 0, systemTime: 9000 })).toBe(3);
  });
});
