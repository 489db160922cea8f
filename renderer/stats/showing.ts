import type { Points, Probability } from '../basics/units.ts';
import type { ByCondition } from './drop.ts';
import { PRESSURE, SPREAD_SCALES, type Spreads } from './model/priors.ts';
import { logit, normalCdf, normalQuantile } from './special.ts';

/*
 * When a drop shows: when the model is more than 95 % sure of one, which the verdict calls a likely drop. In log-odds the
 * shots give an estimate x ~ N(δ, v) of the answer to pressure and the model believes N(0, V) beforehand, so that it is
 * sure where x > 1.645 √v / √k, k = V/(V + v); a true answer δ shows with the chance Φ(δ/√v − 1.645/√k).
 */

/**
 * When pressured rounds are shot: `pairs` = beside relaxed ones, which goes first by coin; `own-day` = one day a week
 * for them alone; `last` = after the relaxed ones of each session.
 */
export type PlanOrder = 'pairs' | 'own-day' | 'last';

/** Shots and days that an estimate of the answer to pressure rests on. */
export interface Ground {
  readonly order: PlanOrder;
  /** Relaxed ones as far as they are worth a shot from the same stretch of a session. */
  readonly shots: ByCondition<number>;
  /** Sessions with a shot in each condition. */
  readonly days: ByCondition<number>;
}

/** Chance with which a planned drop is to show, unless told. */
export const POWER: Probability = 0.8;
/** The model is sure from here on, as in the verdict. */
const SURE = normalQuantile(0.95);
/** Mean of the standard half-normal distribution. */
const HALF_NORMAL_MEAN = Math.sqrt(2 / Math.PI);
/** Means of the priors: what to go by before there is a record. */
export const TYPICAL_SPREADS: Spreads = {
  skill: HALF_NORMAL_MEAN * SPREAD_SCALES.skill,
  day: HALF_NORMAL_MEAN * SPREAD_SCALES.day,
  week: HALF_NORMAL_MEAN * SPREAD_SCALES.week,
  dayPressure: HALF_NORMAL_MEAN * SPREAD_SCALES.dayPressure,
};

/**
 * Variance of the estimate that shots give of the answer to pressure, log-odds squared: binomial, 1/(n p(1 − p)) from
 * each condition, and days. Inside a session a good day lifts both conditions and cancels, and only the day's own answer
 * to pressure stays; on days of their own both stay, and the relaxed days have theirs. Infinity where a condition is
 * missing.
 */
export function varianceOf(
  { order, shots, days }: Ground,
  rates: ByCondition<Probability>,
  spreads: Spreads,
): number {
  const binomial = (condition: keyof typeof shots): number =>
    1 / (shots[condition] * rates[condition] * (1 - rates[condition]));
  const answers = spreads.dayPressure ** 2 / days.pressured;
  const apart = order === 'own-day' ? spreads.day ** 2 * (1 / days.pressured + 1 / days.relaxed) : 0;
  return binomial('relaxed') + binomial('pressured') + answers + apart;
}

/** The chance that the model is sure of a drop, where its estimate has this variance. */
export function chanceAt(rates: ByCondition<Probability>, variance: number, spreads: Spreads): Probability {
  const answer = logit(rates.relaxed) - logit(rates.pressured);
  return normalCdf(answer / Math.sqrt(variance) - SURE * Math.sqrt(1 + variance / priorVariance(spreads)));
}

/**
 * The smallest drop in whole points that an estimate shows with a chance of {@link POWER}.
 *
 * @param variance of the estimate at a pair of make rates, log-odds squared
 * @returns null where even `most` points would not show
 */
export function smallestShown(
  relaxedRate: Probability,
  variance: (rates: ByCondition<Probability>) => number,
  spreads: Spreads,
  most: Points,
): Points | null {
  for (let points = 1; points <= most; points += 1) {
    const rates = ratesOf(points, relaxedRate);
    if (rates && chanceAt(rates, variance(rates), spreads) >= POWER) return points;
  }
  return null;
}

/** What the model believes of the answer to pressure before the first shot, log-odds squared. */
export function priorVariance({ week }: Spreads): number {
  return PRESSURE.sd ** 2 + week ** 2;
}

/**
 * The make rates with a drop.
 *
 * @returns null where the relaxed rate is too low to drop that far
 * @throws RangeError unless points are above 0 and the make rate lies between 0 and 1
 */
export function ratesOf(points: Points, relaxed: Probability): ByCondition<Probability> | null {
  if (!(points > 0)) throw new RangeError(`Plan for a drop above 0 points, not ${points}`);
  if (!(relaxed > 0 && relaxed < 1)) {
    throw new RangeError(`A make rate to plan with lies between 0 and 1, not ${relaxed}`);
  }
  const pressured = relaxed - points / 100;
  return pressured > 0 ? { relaxed, pressured } : null;
}
