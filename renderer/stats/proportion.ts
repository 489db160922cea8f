import type { Probability } from '../basics/units.ts';
import { betaQuantile, normalQuantile } from './special.ts';

/** Two ends, as fractions 0 to 1. */
export interface Interval {
  readonly low: Probability;
  readonly high: Probability;
}

/** A make rate with its interval, and how the interval was worked. */
export interface Proportion extends Interval {
  readonly p: Probability;
  readonly method: 'wilson' | 'jeffreys';
}

/**
 * From this many attempts {@link proportion} takes Wilson's interval, below it Jeffreys'. Brown, Cai & DasGupta
 * (2001) split small from large samples at 40; the cut is quoted from memory.
 */
export const WILSON_FROM = 40;

/**
 * Makes of attempts as a fraction with its interval: Jeffreys below {@link WILSON_FROM} attempts, Wilson from there.
 *
 * @param level share of such intervals that hold the truth, between 0 and 1, e.g. 0.9
 * @returns null without an attempt: nothing can be said
 * @throws RangeError unless makes and attempts are whole and 0 ≤ makes ≤ attempts
 */
export function proportion(makes: number, attempts: number, level: number): Proportion | null {
  if (attempts === 0 && makes === 0) return null;
  const p = makes / attempts;
  return attempts < WILSON_FROM
    ? { p, ...jeffreys(makes, attempts, level), method: 'jeffreys' }
    : { p, ...wilson(makes, attempts, level), method: 'wilson' };
}

/**
 * Wilson's score interval (Wilson 1927; method 3 of Newcombe, Statistics in Medicine 17:857-872, 1998).
 *
 * @throws RangeError unless makes and attempts are whole, attempts ≥ 1, 0 ≤ makes ≤ attempts and 0 < level < 1
 */
export function wilson(makes: number, attempts: number, level: number): Interval {
  wantTally(makes, attempts);
  return wilsonAt(makes / attempts, attempts, level);
}

/**
 * Wilson's interval around a rate `p` that is worth `n` shots; n need not be whole.
 *
 * @throws RangeError unless 0 ≤ p ≤ 1, n is finite and above 0, and 0 < level < 1
 */
export function wilsonAt(p: Probability, n: number, level: number): Interval {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`A make rate lies between 0 and 1, not ${p}`);
  if (!(n > 0 && Number.isFinite(n))) throw new RangeError(`An interval wants some shots, not ${n}`);
  const z = zFor(level);
  const zz = z * z;
  const middle = p + zz / (2 * n);
  const reach = z * Math.sqrt((p * (1 - p)) / n + zz / (4 * n * n));
  const scale = 1 + zz / n;
  return {
    low: p === 0 ? 0 : Math.max(0, (middle - reach) / scale),
    high: p === 1 ? 1 : Math.min(1, (middle + reach) / scale),
  };
}

/**
 * Jeffreys' equal-tailed interval: quantiles of Beta(makes + ½, misses + ½), with 0 as the lower end where nothing
 * went in and 1 as the upper where all did (Brown, Cai & DasGupta, Statistical Science 16:101-133, 2001).
 *
 * @throws RangeError unless makes and attempts are whole, attempts ≥ 1, 0 ≤ makes ≤ attempts and 0 < level < 1
 */
export function jeffreys(makes: number, attempts: number, level: number): Interval {
  wantTally(makes, attempts);
  wantLevel(level);
  const tail = (1 - level) / 2;
  const misses = attempts - makes;
  return {
    low: makes === 0 ? 0 : betaQuantile(makes + 0.5, misses + 0.5, tail),
    high: misses === 0 ? 1 : betaQuantile(makes + 0.5, misses + 0.5, 1 - tail),
  };
}

/** How many standard deviations to each side hold a share `level` of a normal distribution. */
export function zFor(level: number): number {
  wantLevel(level);
  return normalQuantile((1 + level) / 2);
}

function wantLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`A level lies between 0 and 1, not ${level}`);
}

function wantTally(makes: number, attempts: number): void {
  const whole = Number.isInteger(makes) && Number.isInteger(attempts);
  if (!(whole && attempts >= 1 && makes >= 0 && makes <= attempts)) {
    throw new RangeError(`Makes are a whole number from 0 to the attempts, not ${makes} of ${attempts}`);
  }
}
