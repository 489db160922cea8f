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
  const room = roomFor(draws);
  room.set(draws);
  return estimateWithin(room);
}

/** The same for draws of a difference of rates, in points. */
export function pointsOf(draws: Float64Array): PointsEstimate {
  const room = roomFor(draws);
  for (let i = 0; i < room.length; i += 1) room[i] = 100 * (draws[i] as number);
  const { value, low, high, sd } = estimateWithin(room);
  return { points: value, low, high, sd, probability: shareOf(draws, (one) => one > 0) };
}

/** Used again and again: hundreds of estimates would leave megabytes behind. */
let usedRoom = new Float64Array(0);

function roomFor({ length }: Float64Array): Float64Array {
  if (usedRoom.length !== length) usedRoom = new Float64Array(length);
  return usedRoom;
}

/** Moves the draws about. */
function estimateWithin(draws: Float64Array): Estimate {
  const count = draws.length;
  let sum = 0;
  for (let i = 0; i < count; i += 1) sum += draws[i] as number;
  const mean = sum / count;
  let square = 0;
  for (let i = 0; i < count; i += 1) square += ((draws[i] as number) - mean) ** 2;
  return {
    value: mean,
    low: quantile(draws, 0.05),
    high: quantile(draws, 0.95),
    sd: Math.sqrt(square / (count - 1)),
  };
}

/** Share of the draws for which something holds. */
export function shareOf(draws: Float64Array, holds: (value: number) => boolean): Probability {
  let count = 0;
  for (const value of draws) if (holds(value)) count += 1;
  return count / draws.length;
}

/**
 * Linear between the order statistics (type 7 of Hyndman & Fan, The American Statistician 50:361-365, 1996). Moves the
 * values about.
 */
function quantile(values: Float64Array, p: Probability): number {
  const last = values.length - 1;
  const place = p * last;
  const below = Math.floor(place);
  const low = select(values, below, 0);
  const high = below < last ? select(values, below + 1, below + 1) : low;
  return low + (place - below) * (high - low);
}

/**
 * The value that stands at `k` once all are sorted; afterwards it stands there, with no larger one before it and no smaller
 * one after it. Takes time in proportion to the values, where sorting takes ten times that (C. A. R. Hoare, Algorithm 65:
 * Find, Communications of the ACM 4:321-322, 1961).
 *
 * @param from what stands before this index is known to be no larger than the rest
 */
function select(values: Float64Array, k: number, from: number): number {
  let left = from;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[k] as number;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i += 1;
      while ((values[j] as number) > pivot) j -= 1;
      if (i > j) break;
      const moved = values[i] as number;
      values[i] = values[j] as number;
      values[j] = moved;
      i += 1;
      j -= 1;
    }
    if (j < k) left = i;
    if (i > k) right = j;
  }
  return at(values, k);
}
