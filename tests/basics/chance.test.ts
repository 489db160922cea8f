import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed, seedFromBytes, seedFromText } from '../../renderer/basics/chance.ts';

const seed = fc.integer({ min: 0, max: 0xffffffff });

/** A share this far from what was meant would come up once in some 500,000 runs, and the seeds are fixed. */
const fiveSd = (p: number, n: number) => 5 * Math.sqrt((p * (1 - p)) / n);

describe('a seeded stream', () => {
  it('is the same for the same seed, and another for its neighbour', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const draws = (from: number) => {
          const rng = rngFromSeed(from);
          return [rng.next(), rng.below(1000), rng.normal(), ...rng.bytes()];
        };
        expect(draws(one)).toEqual(draws(one));
        expect(draws(one)).not.toEqual(draws((one + 1) % 2 ** 32));
      }),
    );
  });
  it('stays in its bounds', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 1, max: 1_000_000 }), (from, n) => {
        const rng = rngFromSeed(from);
        const unit = rng.next();
        expect(unit).toBeGreaterThanOrEqual(0);
        expect(unit).toBeLessThan(1);
        const below = rng.below(n);
        expect(Number.isInteger(below) && below >= 0 && below < n).toBe(true);
        expect(rng.bytes()).toHaveLength(16);
        expect(rng.chance(0)).toBe(false);
        expect(rng.chance(1)).toBe(true);
      }),
    );
  });
  it('has a first draw that is fair over seeds next to each other', () => {
    const n = 20_000;
    const tenths = Array.from({ length: 10 }, () => 0);
    for (let from = 0; from < n; from += 1) {
      const tenth = Math.floor(rngFromSeed(from).next() * 10);
      tenths[tenth] = (tenths[tenth] ?? 0) + 1;
    }
    for (const count of tenths) expect(Math.abs(count / n - 0.1)).toBeLessThan(fiveSd(0.1, n));
  });
  it('gives normal draws with mean 0 and standard deviation 1', () => {
    const rng = rngFromSeed(7);
    const n = 40_000;
    const draws = Array.from({ length: n }, () => rng.normal());
    const mean = draws.reduce((sum, x) => sum + x, 0) / n;
    const variance = draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / n;
    expect(Math.abs(mean)).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(variance - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    // The share inside one and two standard deviations, as every table of the normal has it.
    for (const [within, share] of [
      [1, 0.6827],
      [2, 0.9545],
    ] as const) {
      const inside = draws.filter((x) => Math.abs(x) < within).length / n;
      expect(Math.abs(inside - share)).toBeLessThan(fiveSd(share, n));
    }
  });
});

describe('seeds', () => {
  it('come out of four bytes, highest first', () => {
    expect(seedFromBytes(Uint8Array.of(0xff, 0xff, 0xff, 0xff))).toBe(0xffffffff);
    expect(seedFromBytes(Uint8Array.of(1, 2, 3, 4))).toBe(0x01020304);
  });
  // Test values of FNV-1a, 32 bits, as its authors list them; from memory.
  it.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('of %j is FNV-1a', (text, hash) => expect(seedFromText(text)).toBe(hash));
});
