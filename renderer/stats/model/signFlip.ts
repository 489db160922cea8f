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

/** So many pairs of one size at most are added at once: of more, the chance of all heads is no number any more. */
const AT_ONCE = 512;
/** What is less likely than this is left out: it is not seen in any p that anyone tells. */
const NEVER = 1e-300;

/**
 * Pairs of one size are added together: how many of them fall on the one side is binomial.
 *
 * @param differences relaxed minus pressured makes of every pair, whole numbers
 * @throws RangeError where a difference is not whole
 */
export function signFlipTest(differences: readonly number[]): SignFlip {
  const sizes = new Map<number, number>();
  let reach = 0;
  let sum = 0;
  for (const d of differences) {
    if (!Number.isInteger(d)) throw new RangeError(`Differences of makes are whole, not ${d}`);
    const size = Math.abs(d);
    reach += size;
    sum += d;
    if (size > 0) sizes.set(size, (sizes.get(size) ?? 0) + 1);
  }
  // chances[s] = P(Σ |d| over the pairs that fell on the one side = s); then Σ ±|d| = 2s − reach.
  let chances = Float64Array.of(1);
  // Small ones first: the sums stay short for longer.
  for (const [size, count] of [...sizes].toSorted(([a], [b]) => a - b)) {
    for (let left = count; left > 0; left -= AT_ONCE) {
      chances = withPairs(chances, size, coins(Math.min(left, AT_ONCE)));
    }
  }
  const tail = (from: number): Probability => {
    let total = 0;
    for (let s = (from + reach) / 2; s < chances.length; s += 1) total += chances[s] as number;
    return Math.min(1, total);
  };
  const far = Math.abs(sum);
  return { sum, oneSided: tail(sum), twoSided: far === 0 ? 1 : Math.min(1, 2 * tail(far)) };
}

/** P(k heads of n) for k = 0 .. n. */
function coins(n: number): Float64Array {
  const chances = new Float64Array(n + 1);
  let ways = 1;
  for (let heads = 0; heads <= n; heads += 1) {
    chances[heads] = ways * 2 ** -n;
    ways = (ways * (n - heads)) / (heads + 1);
  }
  return chances;
}

/** The chances of all sums, with some more pairs of one size. They mirror, so half of them is worked out. */
function withPairs(chances: Float64Array, size: number, heads: Float64Array): Float64Array<ArrayBuffer> {
  const sums = new Float64Array(chances.length + size * (heads.length - 1));
  const last = sums.length - 1;
  const middle = Math.floor(last / 2);
  const from = chances.findIndex((chance) => chance > NEVER);
  const to = chances.length - 1 - from;
  for (const [k, weight] of heads.entries()) {
    if (weight <= NEVER) continue;
    const moved = size * k;
    const until = Math.min(to, middle - moved);
    for (let s = from; s <= until; s += 1) {
      sums[s + moved] = (sums[s + moved] as number) + weight * (chances[s] as number);
    }
  }
  for (let s = middle + 1; s <= last; s += 1) sums[s] = sums[last - s] as number;
  return sums;
}
