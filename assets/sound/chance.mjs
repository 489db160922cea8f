/** Chance for the sound makers: seeded, so that every run draws the same crowd. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * @typedef {object} Chance
 * @property {() => number} next uniform on [0, 1)
 * @property {(low: number, high: number) => number} between uniform on [low, high)
 * @property {() => number} normal standard normal
 * @property {<T>(items: readonly T[]) => T} pick one of them, each as likely as the next
 */

/**
 * @param {number} seed
 * @returns {Chance}
 */
export function chanceFrom(seed) {
  const generator = xoroshiro128plus(seed);
  const next = () => uniformFloat64(generator);
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    // Box–Muller, one of the pair.
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: (items) => items[Math.floor(next() * items.length)],
  };
}
