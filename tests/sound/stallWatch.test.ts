import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { stallWatch } from '../../renderer/sound/stallWatch.ts';

const LOOK = 0.5;

describe('the watch over the audio clock', () => {
  test('is calm for hours while the clocks drift as quartz does, and lumps and jams come', () => {
    const lag = fc.array(fc.double({ min: 0, max: 0.4, noNaN: true }), { minLength: 50, maxLength: 50 });
    fc.assert(
      fc.property(fc.double({ min: -2e-4, max: 2e-4, noNaN: true }), lag, (drift, lags) => {
        const stalled = stallWatch();
        const calm = Array.from({ length: 20_000 }, (_, look) => {
          const elapsed = look * LOOK;
          return !stalled(elapsed, elapsed * (1 + drift) - (lags[look % 50] ?? 0));
        });
        expect(calm.every(Boolean)).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  test('says so within three seconds where the audio clock stands, and again while it does', () => {
    const stalled = stallWatch();
    for (let look = 0; look < 10; look += 1) stalled(look * LOOK, look * LOOK);
    const said = Array.from({ length: 14 }, (_, more) => stalled(4.5 + (more + 1) * LOOK, 4.5));
    expect(said.indexOf(true)).toBeLessThan(6);
    expect(said.filter(Boolean).length).toBeGreaterThan(1);
  });

  test('says so once where the device slept, and then is calm', () => {
    const stalled = stallWatch();
    stalled(0, 0);
    expect(stalled(LOOK, LOOK)).toBe(false);
    expect(stalled(600, 2 * LOOK)).toBe(true);
    expect(stalled(600 + LOOK, 3 * LOOK)).toBe(false);
  });

  test('does not mind a calendar that is set back', () => {
    const stalled = stallWatch();
    stalled(1000, 10);
    expect(stalled(400, 11)).toBe(false);
    expect(stalled(401, 12)).toBe(false);
  });
});
