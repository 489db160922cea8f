import type { Probability } from '../../basics/units.ts';

/*
 * The exact test of coin-ordered pairs. Under the null hypothesis that pressure does nothing, the coin alone decided which
 * of a pair's two rounds was the pressured one, so each difference d_j could as well have come with the other sign. The
 * distribution of Σ ±|d_j| follows by convolution; nothing is assumed about skill, days, warming up or tiring.
 */

export interface SignFlip {
  /** Σ d_j. */
  readonly sum: number;
  /** P(T* ≥ T): small = a drop. */
  readonly oneSided: Probability;
  /** P(|T*| ≥ |T|). */
  readonly twoSided: Probability;
}

/**
 * @param differences relaxed minus pressured makes of every pair, whole numbers
 * @throws RangeError where a difference is not whole
 */
export function signFlipTest(differences: readonly number[]): SignFlip {
  for (const d of differences) {
    if (!Number.isInteger(d)) throw new RangeError(`Differences of makes are whole, not ${d}`);
  }
  const reach = differences.reduce((sum, d) => sum + Math.abs(d), 0);
  const sum = differences.reduce((total, d) => total + d, 0);
  // chances[reach + t] = P(Σ of the pairs so far = t)
  let chances = new Float64Array(2 * reach + 1);
  chances[reach] = 1;
  let widest = 0;
  for (const d of differences) {
    const size = Math.abs(d);
    if (size === 0) continue;
    const next = new Float64Array(chances.length);
    for (let t = reach - widest; t <= reach + widest; t += 1) {
      const half = (chances[t] as number) / 2;
      if (half === 0) continue;
      next[t - size] = (next[t - size] as number) + half;
      next[t + size] = (next[t + size] as number) + half;
    }
    widest += size;
    chances = next;
  }
  const tail = (from: number): Probability => {
    let total = 0;
    for (let t = reach + from; t < chances.length; t += 1) total += chances[t] as number;
    return Math.min(1, total);
  };
  const far = Math.abs(sum);
  return { sum, oneSided: tail(sum), twoSided: far === 0 ? 1 : Math.min(1, 2 * tail(far)) };
}
