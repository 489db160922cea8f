import type { Points, Probability } from '../../basics/units.ts';
import { at } from '../matrix.ts';

/** A number with its 90 % interval: one chance in twenty to lie below it, one in twenty above. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly sd: number;
}

/** Percentage points with their 90 % interval; as a drop, positive = worse under pressure. */
export interface PointsEstimate {
  readonly points: Points;
  readonly low: Points;
  readonly high: Points;
  readonly sd: Points;
  /** Chance that it is above 0. */
  readonly probability: Probability;
}

/** Mean, standard deviation and the 5 % and 95 % quantiles of some draws. */
export function estimateOf(draws: Float64Array): Estimate {
  const mean = draws.reduce((sum, value) => sum + value, 0) / draws.length;
  const square = draws.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sorted = draws.toSorted();
  return {
    value: mean,
    low: quantile(sorted, 0.05),
    high: quantile(sorted, 0.95),
    sd: Math.sqrt(square / (draws.length - 1)),
  };
}

/** The same for draws of a difference of rates, in points. */
export function pointsOf(draws: Float64Array): PointsEstimate {
  const points = draws.map((value) => 100 * value);
  const { value, low, high, sd } = estimateOf(points);
  return { points: value, low, high, sd, probability: shareOf(draws, (one) => one > 0) };
}

/** Share of the draws for which something holds. */
export function shareOf(draws: Float64Array, holds: (value: number) => boolean): Probability {
  let count = 0;
  for (const value of draws) if (holds(value)) count += 1;
  return count / draws.length;
}

/** Linear between the order statistics (type 7 of Hyndman & Fan, The American Statistician 50:361-365, 1996). */
function quantile(sorted: Float64Array, p: Probability): number {
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const low = at(sorted, below);
  const high = at(sorted, Math.min(below + 1, sorted.length - 1));
  return low + (place - below) * (high - low);
}
