import type { Points } from '../basics/units.ts';
import { LEAST_TO_COMPARE, type PairResult } from '../stats/model/pairs.ts';
import { READING_LEVEL } from '../stats/reading.ts';
import { betaQuantile } from '../stats/special.ts';

/** The mean difference of the coin-ordered pairs with its 90 % interval, in points. */
export interface PairSpan {
  readonly points: Points;
  readonly low: Points;
  readonly high: Points;
}

/**
 * The interval of the pairs' own mean: Student's t on their scatter. Null with too few pairs, whose scatter says next to
 * nothing.
 */
export function pairSpan({ n, mean, se }: PairResult): PairSpan | null {
  if (n < LEAST_TO_COMPARE || mean === null || se === null) return null;
  const reach = studentQuantile(n - 1, READING_LEVEL) * se;
  return { points: mean, low: mean - reach, high: mean + reach };
}

/** The t that |T| exceeds with chance 1 − level: P(|T| > t) = I_x(ν/2, 1/2) with x = ν / (ν + t²). */
function studentQuantile(freedom: number, level: number): number {
  const x = betaQuantile(freedom / 2, 0.5, 1 - level);
  return Math.sqrt(freedom * (1 / x - 1));
}
