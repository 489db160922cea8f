import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  answerMove,
  enterMove,
  leaveMove,
  swellMove,
  type CrowdMove,
  type Layer,
} from '../../renderer/sound/crowdPlan.ts';

const weight = fc.double({ min: 0, max: 1, noNaN: true });
const gap = fc.double({ min: 0, max: 30, noNaN: true });

/** Where a layer is heading at a moment; null before the move touches it. */
function heading(move: CrowdMove, layer: Layer, at: number): number | null {
  const ramps = move.ramps.filter((ramp) => ramp.layer === layer && ramp.at <= at);
  return ramps.at(-1)?.level ?? null;
}

describe('the crowd', () => {
  test('comes in murmuring and leaves to silence', () => {
    expect(heading(enterMove(10), 'bed', 11)).toBeGreaterThan(0);
    expect(heading(enterMove(10), 'swell', 11)).toBe(0);
    expect(heading(leaveMove(10), 'bed', 10)).toBe(0);
    expect(heading(leaveMove(10), 'swell', 10)).toBe(0);
  });

  test('swells louder and longer the more a shot matters', () => {
    const [idle, tense] = [swellMove(0, 6, 0), swellMove(0, 6, 1)];
    expect(heading(tense, 'swell', 6)).toBeGreaterThan(3 * (heading(idle, 'swell', 6) ?? 1));
    expect(tense.ramps[0]?.at).toBeLessThan(idle.ramps[0]?.at ?? 0);
  });

  test('is there by the time the shot is due, and tires of waiting', () => {
    fc.assert(
      fc.property(gap, weight, (seconds, matters) => {
        const [rise, tire] = swellMove(100, seconds, matters).ramps;
        if (!rise || !tire) throw new Error('a swell rises and tires');
        expect(rise.at).toBeGreaterThanOrEqual(100);
        expect(rise.at + 3 * rise.settle).toBeLessThanOrEqual(100 + Math.max(0.6, seconds) + 1e-9);
        expect(tire.at).toBeGreaterThan(100 + seconds);
        expect(tire.level).toBeLessThan(rise.level);
      }),
    );
  });

  test.each([
    [true, 0.2, 'cheer-small'],
    [true, 0.8, 'cheer-big'],
    [false, 0.2, 'groan-small'],
    [false, 0.8, 'groan-big'],
  ])('answers made=%s of weight %d with %s', (made, matters, clip) => {
    expect(answerMove(0, made, matters).shouts.map((shout) => shout.clip)).toEqual([clip]);
  });

  test('breaks its swell off with the answer, and murmurs again after it', () => {
    fc.assert(
      fc.property(fc.boolean(), weight, (made, matters) => {
        const move = answerMove(50, made, matters);
        expect(heading(move, 'swell', 50)).toBe(0);
        expect(heading(move, 'bed', 60)).toBe(heading(enterMove(0), 'bed', 1));
      }),
    );
  });

  test('is hushed by a miss, and lively after a make that mattered', () => {
    const murmur = heading(enterMove(0), 'bed', 1) ?? 0;
    expect(heading(answerMove(0, false, 1), 'bed', 1)).toBeLessThan(murmur);
    expect(heading(answerMove(0, true, 1), 'bed', 1)).toBeGreaterThan(murmur);
  });

  test('never moves in the past and never beyond full level, whatever weight it is given', () => {
    const anyWeight = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(gap, anyWeight, fc.boolean(), (seconds, matters, made) => {
        const moves = [
          enterMove(7),
          swellMove(7, seconds, matters),
          answerMove(7, made, matters),
          leaveMove(7),
        ];
        for (const { ramps, shouts } of moves) {
          for (const { at, level, settle } of ramps) {
            expect(at).toBeGreaterThanOrEqual(7);
            expect(level).toBeGreaterThanOrEqual(0);
            expect(level).toBeLessThanOrEqual(1);
            expect(settle).toBeGreaterThan(0);
          }
          for (const { at, gain } of shouts) {
            expect(at).toBeGreaterThan(7);
            expect(gain).toBeGreaterThan(0);
            expect(gain).toBeLessThanOrEqual(1);
          }
        }
      }),
    );
  });

  test('is louder after heavier shots, in every way', () => {
    fc.assert(
      fc.property(weight, weight, fc.boolean(), (one, other, made) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        const loud = (matters: number) => answerMove(0, made, matters).shouts[0]?.gain ?? 0;
        expect(loud(more)).toBeGreaterThanOrEqual(loud(less));
        const swell = (matters: number) => heading(swellMove(0, 6, matters), 'swell', 6) ?? 0;
        expect(swell(more)).toBeGreaterThanOrEqual(swell(less));
      }),
    );
  });
});
