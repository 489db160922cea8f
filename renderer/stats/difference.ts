import type { Probability } from '../basics/units.ts';
import { type Interval, wilson } from './proportion.ts';

/** First rate minus second rate, with its interval. Fractions, −1 to 1. */
export interface Difference {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
}

/** A rate with an interval of its own. */
export interface Estimated extends Interval {
  readonly p: Probability;
}

/**
 * The difference of two independent make rates, `makes1`/`attempts1` minus `makes2`/`attempts2`, with Newcombe's
 * hybrid score interval: method 10 of Newcombe, Statistics in Medicine 17:873-890 (1998).
 *
 * @throws RangeError unless both tallies are whole with at least one attempt, and 0 < level < 1
 */
export function newcombe(
  makes1: number,
  attempts1: number,
  makes2: number,
  attempts2: number,
  level: number,
): Difference {
  return squareAndAdd(
    { p: makes1 / attempts1, ...wilson(makes1, attempts1, level) },
    { p: makes2 / attempts2, ...wilson(makes2, attempts2, level) },
  );
}

/** Newcombe's step from two single intervals to the interval of their difference: distances add as squares. */
export function squareAndAdd(first: Estimated, second: Estimated): Difference {
  const difference = first.p - second.p;
  return {
    difference,
    low: difference - Math.hypot(first.p - first.low, second.high - second.p),
    high: difference + Math.hypot(first.high - first.p, second.p - second.low),
  };
}
