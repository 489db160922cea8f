import { describe, expect, test } from 'vitest';
import { integratedLoudness, truePeak } from './loudness.ts';

const RATE = 48_000;

/** A sine at so many dB under full scale, one after the other. */
function tones(
  hertz: number,
  parts: readonly (readonly [seconds: number, dbfs: number])[],
  phase = 0,
): Float32Array {
  const levels = parts.flatMap(([seconds, dbfs]) => Array<number>(seconds * RATE).fill(10 ** (dbfs / 20)));
  return Float32Array.from(levels, (level, i) => level * Math.sin((2 * Math.PI * hertz * i) / RATE + phase));
}

describe('the loudness meter', () => {
  // ITU-R BS.1770: a 0 dBFS sine of 997 Hz in the left, centre or right channel reads −3.01 LKFS.
  test('reads the standard’s tone as the standard says', () => {
    const tone = tones(997, [[5, 0]]);
    expect(integratedLoudness([tone])).toBeCloseTo(-3.01, 2);
    expect(integratedLoudness([tone, tone])).toBeCloseTo(0, 1);
  });

  // EBU Tech 3341, test cases 1 to 4, here at 997 Hz (from memory).
  test.each([
    [[[20, -23]], -23],
    [[[20, -33]], -33],
    [
      [
        [10, -36],
        [60, -23],
        [10, -36],
      ],
      -23,
    ],
    [
      [
        [10, -72],
        [10, -36],
        [60, -23],
        [10, -36],
        [10, -72],
      ],
      -23,
    ],
  ] as const)('gates quiet parts out: %j reads %d', (parts, lufs) => {
    const tone = tones(997, parts);
    expect(Math.abs(integratedLoudness([tone, tone]) - lufs)).toBeLessThanOrEqual(0.1);
  });

  test('hears nothing in silence', () => {
    expect(integratedLoudness([new Float32Array(RATE)])).toBe(-Infinity);
  });

  // A sine at a quarter of the rate, 45° late, has every sample 3.01 dB under its crest: sin 45° = 1/√2.
  test('finds the crest between the samples', () => {
    const tone = tones(RATE / 4, [[1, -6]], Math.PI / 4).map((value, i) => value * Math.min(1, i / 4800));
    expect(20 * Math.log10(Math.max(...tone.subarray(9600, 9700)))).toBeCloseTo(-9.01, 2);
    expect(truePeak([tone])).toBeGreaterThan(-6.2);
    expect(truePeak([tone])).toBeLessThan(-5.8);
  });
});
