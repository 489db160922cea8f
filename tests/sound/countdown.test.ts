import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { endCountdown, LONGEST_COUNT, startCountdown } from '../../renderer/sound/countdown.ts';

const called = (cues: readonly { clip: string; at: number }[]) => cues.map(({ clip, at }) => `${at} ${clip}`);

describe('a countdown', () => {
  test('to a start calls five to one, a second apart, and then go', () => {
    expect(called(startCountdown(105, 5, 'voice', 100))).toEqual([
      '100 count-5',
      '101 count-4',
      '102 count-3',
      '103 count-2',
      '104 count-1',
      '105 go',
    ]);
  });

  test('in beeps ends on the high one', () => {
    expect(called(startCountdown(103, 3, 'beeps', 0))).toEqual([
      '100 beep-low',
      '101 beep-low',
      '102 beep-low',
      '103 beep-high',
    ]);
  });

  test.each(['voice', 'beeps'] as const)('in %s to an end closes with the buzzer', (kind) => {
    expect(endCountdown(50, 5, kind, 0).at(-1)).toEqual({ clip: 'buzzer', at: 50, gain: 1 });
  });

  test('that begins late calls what still lies ahead', () => {
    expect(called(endCountdown(103, 5, 'voice', 100))).toEqual([
      '100 count-3',
      '101 count-2',
      '102 count-1',
      '103 buzzer',
    ]);
    expect(called(endCountdown(103, 5, 'voice', 100.1))).toEqual([
      '101 count-2',
      '102 count-1',
      '103 buzzer',
    ]);
  });

  test('is as long as asked, and never longer than there are numbers', () => {
    expect(called(endCountdown(10, 1, 'voice', 0))).toEqual(['9 count-1', '10 buzzer']);
    expect(called(endCountdown(10, 0, 'voice', 0))).toEqual(['10 buzzer']);
    expect(called(endCountdown(10, -2, 'voice', 0))).toEqual(['10 buzzer']);
    expect(called(endCountdown(10, 1.9, 'voice', 0))).toEqual(['9 count-1', '10 buzzer']);
    expect(endCountdown(100, 60, 'voice', 0)).toHaveLength(LONGEST_COUNT + 1);
  });

  const anything = fc.record({
    end: fc.double({ min: 0, max: 1e5, noNaN: true }),
    count: fc.double({ min: -1, max: 9, noNaN: true }),
    early: fc.double({ min: -2, max: 12, noNaN: true }),
    kind: fc.constantFrom('voice' as const, 'beeps' as const),
    build: fc.constantFrom(startCountdown, endCountdown),
  });

  test('never has a cue in the past, and runs in order', () => {
    fc.assert(
      fc.property(anything, ({ end, count, early, kind, build }) => {
        const from = end - early;
        const moments = build(end, count, kind, from).map(({ at }) => at);
        expect(moments.every((at) => at >= from && at <= end)).toBe(true);
        expect(moments).toEqual(moments.toSorted((one, other) => one - other));
      }),
    );
  });

  test('that begins late is the rest of the same countdown begun in time', () => {
    fc.assert(
      fc.property(anything, ({ end, count, early, kind, build }) => {
        const whole = build(end, count, kind, Number.NEGATIVE_INFINITY);
        const from = end - early;
        expect(build(end, count, kind, from)).toEqual(whole.filter(({ at }) => at >= from));
      }),
    );
  });
});
