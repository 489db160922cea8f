import { addDays, daysBetween } from '../basics/days.ts';
import type { IsoDate } from '../basics/units.ts';
import type { Condition } from '../log/events.ts';
import type { DayTally, Place } from './dayTallies.ts';
import { cellKey } from './drop.ts';
import { DAY_PRESSURE_SD, type DayShots, fit, type Fit, type Row, type Shots } from './latelyFit.ts';
import { addAt, at, type Matrix, zeros } from './matrix.ts';
import { GROUP_PRIORS, shotGroup } from './shotGroups.ts';
import { logit } from './special.ts';

/*
 * What a shooter can do lately. For a day d, a place k (spot and kind of shot) and a condition (x = 1 pressured):
 *
 *     makes ~ Binomial(attempts, p),  logit p = θ_k + b_d + x (δ + c_d)
 *
 * θ_k leans on the other places of its group (shotGroups.ts), the good or bad day b_d ~ N(0, τ²), the pressure shift
 * δ ~ N(0, 0.35²), a day's own answer to pressure c_d ~ N(0, 0.15²). A shooter changes, so a day's evidence fades by
 * half every 30 days. Mode by Newton's method with the days eliminated, spread by Laplace's approximation, τ
 * integrated over a grid with a half-normal(0.25) prior. Tiredness and warming up are not in it.
 */

/** Standard deviation of the pressure shift between shooters, log-odds: about 9 points at a 50 % make rate. */
const PRESSURE_SD = 0.35;
/** Values of τ that are weighed against each other. */
const DAY_SDS = Array.from({ length: 9 }, (_, step) => 0.03 + 0.07 * step);
/** Evidence fades by half in this many days, our own choice: a skill that moves 0.08 a week is then tracked. */
export const HALF_LIFE = 30;
/** Older days than this many half-lives are left out: they would count for less than 1 in 60. */
const OLDEST = 6 * HALF_LIFE;

/** The first day whose shots still count on a later day; those before it change nothing at all. */
export function oldestThatCounts(on: IsoDate): IsoDate {
  return addDays(on, -OLDEST);
}

/** What one more day will bring: log-odds of the make rate at each place, normal with these means and covariances. */
export interface NextDay {
  readonly means: readonly number[];
  readonly covariance: Matrix;
}

/**
 * Log-odds of a shooter's make rate at each of some places on one day, in one condition.
 *
 * @param days one shooter's record; may be empty. Days after `on` are left out
 * @param places distinct places
 * @param on the day asked for, from which evidence is aged: a long break fades it too
 */
export function nextDay(
  days: readonly DayTally[],
  condition: Condition,
  places: readonly Place[],
  on: IsoDate,
): NextDay {
  const shots = layOut(days, places, on);
  const { size } = shots.priorPrecision;
  const fits: Fit[] = [];
  for (const daySd of DAY_SDS) fits.push(fit(shots, daySd, fits.at(-1)?.state));
  const best = Math.max(...fits.map((one) => one.logEvidence));
  const raw = fits.map((one) => Math.exp(one.logEvidence - best));
  const total = raw.reduce((sum, weight) => sum + weight, 0);

  // The mixture over τ, as one normal distribution with the same mean and covariance.
  const mean = new Float64Array(size);
  const spread = zeros(size);
  let dayVariance = 0;
  for (const [index, { state, covariance, daySd }] of fits.entries()) {
    const weight = at(raw, index) / total;
    dayVariance += weight * daySd ** 2;
    for (let i = 0; i < size; i += 1) {
      addAt(mean, i, weight * at(state.shared, i));
      for (let j = 0; j < size; j += 1) {
        const square = at(state.shared, i) * at(state.shared, j);
        addAt(spread.values, i * size + j, weight * (at(covariance.values, i * size + j) + square));
      }
    }
  }
  const shift = size - 1;
  const x = condition === 'pressured' ? 1 : 0;
  const between = (i: number, j: number): number =>
    at(spread.values, i * size + j) - at(mean, i) * at(mean, j);
  const every = dayVariance + x * (DAY_PRESSURE_SD ** 2 + between(shift, shift));
  // The asked places come first in the layout.
  const covariance = zeros(places.length);
  for (let i = 0; i < places.length; i += 1) {
    for (let j = 0; j < places.length; j += 1) {
      covariance.values[i * places.length + j] =
        between(i, j) + x * (between(i, shift) + between(j, shift)) + every;
    }
  }
  return { means: places.map((_, i) => at(mean, i) + x * at(mean, shift)), covariance };
}

function layOut(days: readonly DayTally[], asked: readonly Place[], on: IsoDate): Shots {
  const places = [...asked];
  const index = new Map(asked.map(({ spot, shot }, i) => [cellKey(spot, shot), i]));
  const shotDays: (DayShots & { touched: number[] })[] = [];
  for (const { date, cells } of days) {
    const age = daysBetween(date, on);
    if (age < 0 || age > OLDEST) continue;
    const rows = cells.map(({ spot, shot, condition, makes, attempts }): Row => {
      const key = cellKey(spot, shot);
      const place = index.get(key) ?? places.push({ spot, shot }) - 1;
      index.set(key, place);
      return { place, x: condition === 'pressured' ? 1 : 0, makes, attempts };
    });
    shotDays.push({
      weight: 2 ** (-age / HALF_LIFE),
      rows,
      touched: [...new Set(rows.map((row) => row.place))],
    });
  }
  for (const day of shotDays) day.touched.push(places.length);
  return { days: shotDays, ...priorOf(places) };
}

/** Places of a group share a normal centre and differ around it; the centre is integrated out. */
function priorOf(places: readonly Place[]): Pick<Shots, 'priorMean' | 'priorPrecision'> {
  const size = places.length + 1;
  const priorMean = new Float64Array(size);
  const priorPrecision = zeros(size);
  const groups = places.map(({ spot, shot }) => shotGroup(spot, shot));
  for (const [i, group] of groups.entries()) {
    const { centre, sd, spread } = GROUP_PRIORS[group];
    const members = groups.filter((other) => other === group).length;
    priorMean[i] = logit(centre);
    // Inverse of sd² J + spread² I (Sherman-Morrison).
    const pull = sd ** 2 / (spread ** 2 + members * sd ** 2);
    for (const [j, other] of groups.entries()) {
      if (other === group) priorPrecision.values[i * size + j] = ((i === j ? 1 : 0) - pull) / spread ** 2;
    }
  }
  priorPrecision.values[size * size - 1] = 1 / PRESSURE_SD ** 2;
  return { priorMean, priorPrecision };
}
