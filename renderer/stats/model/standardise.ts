import { expit } from '../special.ts';
import type { Design } from './design.ts';
import type { Drawn } from './draws.ts';
import type { ModelData } from './modelData.ts';
import type { Reference } from './reference.ts';
import { UNKNOWN_DOSE } from './priors.ts';
import { weekShifts } from './state.ts';
import { stepsOfDose } from './usualPressure.ts';

/*
 * From draws of the unknowns to make rates (g-computation): what the same mix of shots would have given relaxed and
 * pressured, in every week, on a typical day (b = c = 0):
 *
 *     relaxed(w) = Σ ω expit(η + s_w)        pressured(w) = Σ ω expit(η + s_w + press + u_w + trend(w))
 *
 * Rates are averaged, never log-odds: the same log-odds cost more points to a shooter at 50 % than to one at 80 %.
 */

/** Make rates, 0 to 1; one column for each draw, so that a week's draws lie side by side. */
export interface Posterior {
  readonly draws: number;
  readonly weeks: number;
  readonly places: number;
  /** A row for each week. */
  readonly relaxed: Float64Array;
  readonly pressured: Float64Array;
  /** A row for each place, averaged over the weeks with a shot. */
  readonly placeRelaxed: Float64Array;
  readonly placePressured: Float64Array;
  /** A row for each ingredient: rate lost by turning it on, in a typical week. */
  readonly ingredientCost: Float64Array;
  /** Log-odds added by pressure, averaged over mix and weeks with a shot. */
  readonly logit: Float64Array;
}

export function standardise(data: ModelData, design: Design, drawn: Drawn, reference: Reference): Posterior {
  const { weeks, plan } = design;
  const { weights } = reference;
  const places = weights.length;
  const asked = Array.from(weights.keys()).filter((place) => (weights[place] as number) > 0);
  const shot = weeksWithShots(data);
  const shotWeeks = shot.reduce((sum, one) => sum + one, 0);
  const usual = data.ingredients.map((one) => reference.pressure.ingredients[one] ?? 0);
  const steps = stepsOfDose(data);
  const draws = drawn.counts.reduce((sum, count) => sum + count, 0);
  const rows = (length: number): Float64Array => new Float64Array(draws * length);
  const out = {
    draws,
    weeks,
    places,
    relaxed: rows(weeks),
    pressured: rows(weeks),
    placeRelaxed: rows(places),
    placePressured: rows(places),
    ingredientCost: rows(plan.ingredients.length),
    logit: rows(1),
  };
  const eta = new Float64Array(places);
  const press = new Float64Array(places);
  // Odds against a make are e^-η e^-s: a handful of powers for a draw instead of two for every place and week.
  const against = { relaxed: new Float64Array(places), pressured: new Float64Array(places) };
  const typical = { relaxed: new Float64Array(places), pressured: new Float64Array(places) };
  const shifts = new Float64Array(2 * weeks);
  let row = 0;
  for (const [index, { shared, weeks: ofWeeks }] of drawn.draws.entries()) {
    const times = drawn.counts[index] as number;
    if (times === 0) continue;
    weekShifts(design, shared, ofWeeks, shifts);
    let order = 0;
    for (const { at: place, column } of plan.order)
      order += (reference.order[place] as number) * (shared[column] as number);
    const dose = shared[plan.dose] as number;
    let logit = 0;
    for (const place of asked) {
      const kind = plan.kind[place];
      const ofKind = kind === undefined ? 0 : (shared[kind] as number);
      const base = (shared[plan.spot[place] ?? NaN] as number) + ofKind + order;
      const answer =
        dose * (reference.pressure.dose - UNKNOWN_DOSE) + (shared[plan.spotPressure[place] ?? NaN] as number);
      eta[place] = base;
      press[place] = answer;
      against.relaxed[place] = Math.exp(-base);
      against.pressured[place] = Math.exp(-base - answer);
      typical.relaxed[place] = 0;
      typical.pressured[place] = 0;
      logit += (weights[place] as number) * answer;
    }
    let typicalLevel = 0;
    let typicalPress = 0;
    for (let week = 0; week < weeks; week += 1) {
      const level = shifts[2 * week] as number;
      const pressure = shifts[2 * week + 1] as number;
      const share = (shot[week] as number) / shotWeeks;
      typicalLevel += share * level;
      typicalPress += share * pressure;
      const worse = Math.exp(-level);
      const tenser = Math.exp(-level - pressure);
      let relaxed = 0;
      let pressured = 0;
      for (const place of asked) {
        const weight = weights[place] as number;
        const calm = 1 / (1 + (against.relaxed[place] as number) * worse);
        const tense = 1 / (1 + (against.pressured[place] as number) * tenser);
        relaxed += weight * calm;
        pressured += weight * tense;
        typical.relaxed[place] = (typical.relaxed[place] as number) + share * calm;
        typical.pressured[place] = (typical.pressured[place] as number) + share * tense;
      }
      out.relaxed[week * draws + row] = relaxed;
      out.pressured[week * draws + row] = pressured;
    }
    for (const place of asked) {
      out.placeRelaxed[place * draws + row] = typical.relaxed[place] as number;
      out.placePressured[place * draws + row] = typical.pressured[place] as number;
    }
    out.logit[row] = logit + typicalPress;
    for (const [bit, column] of plan.ingredients.entries()) {
      const on = (shared[column] as number) + (steps[bit] as number) * dose;
      const share = usual[bit] as number;
      let cost = 0;
      for (const place of asked) {
        const here = (eta[place] as number) + (press[place] as number) + typicalLevel + typicalPress;
        cost += (weights[place] as number) * (expit(here - share * on) - expit(here + (1 - share) * on));
      }
      out.ingredientCost[bit * draws + row] = cost;
    }
    if (times > 1) repeatDraw(out, row, times);
    row += times;
  }
  return out;
}

/** 1 for every week with a shot. */
export function weeksWithShots({ sessions, weeks }: ModelData): Uint8Array {
  const shot = new Uint8Array(weeks.count);
  for (const week of sessions.week) shot[week] = 1;
  return shot;
}

/** A draw that counts several times stands in several columns. */
function repeatDraw(out: Posterior, draw: number, times: number): void {
  for (const rows of [
    out.relaxed,
    out.pressured,
    out.placeRelaxed,
    out.placePressured,
    out.ingredientCost,
    out.logit,
  ]) {
    for (let at = draw; at < rows.length; at += out.draws) {
      rows.fill(rows[at] as number, at + 1, at + times);
    }
  }
}
