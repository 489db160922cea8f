import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { mersenne } from 'pure-rand/generator/mersenne';

/** Chance as an argument: the same seed gives the same stream on every machine. */
export interface Rng {
  /** Uniform on [0, 1). */
  next(): number;
  /** Whole number, uniform on 0 .. n − 1. */
  below(n: number): number;
  /** True with probability `p`. */
  chance(p: number): boolean;
  /** Standard normal (Box–Muller, one of the pair). */
  normal(): number;
  /** Sixteen bytes, for an id. */
  bytes(): Uint8Array;
}

/**
 * A seeded stream (Mersenne Twister). Its first draw already depends on the whole seed, so a coin tossed with one draw is
 * fair over any run of seeds, next to each other or not.
 *
 * @param seed any 32-bit whole number; stored with what it decided
 */
export function rngFromSeed(seed: number): Rng {
  const generator = mersenne(seed);
  const next = (): number => uniformFloat64(generator);
  return {
    next,
    below: (n) => uniformInt(generator, 0, n - 1),
    chance: (p) => next() < p,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    bytes: () => Uint8Array.from({ length: 16 }, () => uniformInt(generator, 0, 255)),
  };
}

/** A 32-bit seed out of four random bytes. */
export function seedFromBytes(bytes: Uint8Array): number {
  const [a = 0, b = 0, c = 0, d = 0] = bytes;
  return ((a << 24) | (b << 16) | (c << 8) | d) >>> 0;
}

/** A 32-bit seed out of text (FNV-1a), so that the same records always get the same draws. */
export function seedFromText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}
