import type { Probability } from '../../renderer/basics/units.ts';
import { logBeta, logChoose } from '../../renderer/stats/special.ts';

/* What the solver of games must agree with where one make rate is known as a beta distribution. */

/**
 * Makes in `attempts` shots when the make rate itself is only known as a Beta(a, b): for one kind of shot, after
 * a − 1 makes and b − 1 misses from an even start.
 */
export interface BetaBinomial {
  readonly attempts: number;
  readonly a: number;
  readonly b: number;
}

/** Chance of exactly `makes`: C(n, k) B(a + k, n − k + b) / B(a, b), in logs. 0 outside 0 .. n. */
export function betaBinomialPmf({ attempts, a, b }: BetaBinomial, makes: number): Probability {
  if (!Number.isInteger(makes) || makes < 0 || makes > attempts) return 0;
  return Math.exp(logChoose(attempts, makes) + logBeta(a + makes, attempts - makes + b) - logBeta(a, b));
}

/** Chance of `makes` or fewer. */
export function betaBinomialAtMost(of: BetaBinomial, makes: number): Probability {
  return makes >= of.attempts ? 1 : sumOf(of, 0, Math.floor(makes));
}

/** Chance of `makes` or more. */
export function betaBinomialAtLeast(of: BetaBinomial, makes: number): Probability {
  return makes <= 0 ? 1 : sumOf(of, Math.ceil(makes), of.attempts);
}

/** Expected makes, n a / (a + b). */
export function betaBinomialMean({ attempts, a, b }: BetaBinomial): number {
  return (attempts * a) / (a + b);
}

/** Variance of the makes, n a b (a + b + n) / ((a + b)² (a + b + 1)). */
export function betaBinomialVariance({ attempts, a, b }: BetaBinomial): number {
  return (attempts * a * b * (a + b + attempts)) / ((a + b) ** 2 * (a + b + 1));
}

function sumOf(of: BetaBinomial, from: number, to: number): Probability {
  let sum = 0;
  for (let makes = from; makes <= to; makes += 1) sum += betaBinomialPmf(of, makes);
  return Math.min(1, sum);
}
