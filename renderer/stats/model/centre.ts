import type { Rng } from '../../basics/chance.ts';
import type { Design } from './design.ts';
import { normalsFor, stepOf } from './draws.ts';
import { type Fitter, type Mode, newtonStep } from './newton.ts';
import type { SpreadFit, Weighted } from './spreads.ts';
import { moved, type State, weekShifts } from './state.ts';

/*
 * From the most likely state to the middle of the posterior. Make rates bend as they near 0 or 1, so the posterior leans
 * and its mean is not its top: a drop of 10 points read 0.07 points too small. The normal density nearest to the posterior
 * has its centre where the slope of ln p, averaged over that density, is 0 (Opper and Archambeau, "The variational Gaussian
 * approximation revisited", 2009, from memory; van Niekerk and Rue mend Laplace's means in this way). One Newton step with make
 * rates averaged over draws leads there.
 */

/** Draws that rates are averaged over, each with its mirror image. They leave to chance a quarter of the shift at most. */
const PAIRS = 2;

/** The fits, each moved by the shift at the mean spreads. */
export function centred(
  design: Design,
  fitter: Fitter,
  { nodes, mean }: Pick<SpreadFit, 'nodes' | 'mean'>,
  rng: Rng,
): Weighted[] {
  const likeliest = nodes.reduce((best, node) => (node.weight > best.weight ? node : best));
  // A single fit is its fitter's last, and is at the mean already.
  const mode = nodes.length === 1 ? likeliest.mode : fitter.fit(mean, likeliest.mode.state);
  const shift = centreShift(design, mode, PAIRS, rng);
  return nodes.map((node) => ({
    weight: node.weight,
    mode: { ...node.mode, state: moved(node.mode.state, shift, 1) },
  }));
}

/**
 * The way from the mode to the mean of the posterior at the mode's spreads.
 *
 * @param mode the last fit of its fitter, whose room is used
 */
export function centreShift(design: Design, mode: Mode, pairs: number, rng: Rng): State {
  const rates = new Float64Array(design.attempts.length);
  for (let pair = 0; pair < pairs; pair += 1) {
    const step = stepOf(design, mode, normalsFor(design, true, rng), true);
    for (const sign of [1, -1]) addRates(design, moved(mode.state, step, sign), 0.5 / pairs, rates);
  }
  return newtonStep(design, mode.spreads, mode.state, mode.factors.days, rates).step;
}

/** Adds a share of every cell's make rate to `rates`. */
function addRates(design: Design, { shared, weeks, days }: State, share: number, rates: Float64Array): void {
  const { rows, pressured, sessions } = design;
  const { start, column, value } = rows;
  const shifts = weekShifts(design, shared, weeks);
  for (let day = 0; day < sessions.count; day += 1) {
    const week = sessions.week[day] as number;
    const calm = (shifts[2 * week] as number) + (days[2 * day] as number);
    const tense = calm + (shifts[2 * week + 1] as number) + (days[2 * day + 1] as number);
    const end = sessions.start[day + 1] as number;
    for (let cell = sessions.start[day] as number; cell < end; cell += 1) {
      let eta = pressured[cell] === 1 ? tense : calm;
      const to = start[cell + 1] as number;
      for (let k = start[cell] as number; k < to; k += 1) {
        eta += (value[k] as number) * (shared[column[k] as number] as number);
      }
      rates[cell] = (rates[cell] as number) + share / (1 + Math.exp(-eta));
    }
  }
}
