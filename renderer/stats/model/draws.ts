import type { Rng } from '../../basics/chance.ts';
import { present } from '../../basics/invariant.ts';
import { at } from '../matrix.ts';
import { backToDays, backToWeeks, solveUpper } from './backwards.ts';
import type { Design } from './design.ts';
import { logJoint } from './logJoint.ts';
import type { Mode } from './newton.ts';
import type { Weighted } from './spreads.ts';
import { moved, type State } from './state.ts';

/** One state out of the posterior; days are only drawn where they are needed. */
export type Draw = Pick<State, 'shared' | 'weeks'>;

/** With so few sessions Laplace's approximation is mended by weighing every draw. */
export const FEW_SESSIONS = 16;
/** Weights worth less than this share of the draws are not trusted. */
const LEAST_EFFECTIVE = 0.1;

export interface Drawn {
  readonly draws: readonly Draw[];
  /** How often each draw counts; the counts sum to the number of draws. */
  readonly counts: Uint32Array;
  /** What the weights are worth, as a share of the draws; null where days were not drawn. */
  readonly effective: number | null;
  /** ln of the mean weight: what Laplace's ln p(makes) missed, up to chance; null where days were not drawn. */
  readonly missed: number | null;
}

/**
 * Draws from the posterior: around each fit normally with covariance H⁻¹, in numbers by the fits' weights. Every draw has
 * a mirror image on the other side of its mode, so that means are hit more closely.
 *
 * With at most {@link FEW_SESSIONS} sessions the days are drawn too, and every draw is weighed by
 * exp(ln joint − value at the mode + ½|z|²), exact density over density drawn from; then draws are taken again in
 * proportion to the weights.
 */
export function drawStates(design: Design, nodes: readonly Weighted[], count: number, rng: Rng): Drawn {
  const few = design.sessions.count <= FEW_SESSIONS;
  const draws: Draw[] = [];
  const logWeights: number[] = [];
  for (const [node, share] of shares(nodes, count).entries()) {
    const { mode } = present(nodes[node], 'a fit for every share');
    for (let k = 0; k < share; k += 2) {
      const normals = normalsFor(design, few, rng);
      const step = stepOf(design, mode, normals, few);
      for (const sign of k + 1 < share ? [1, -1] : [1]) {
        const state = moved(mode.state, step, sign);
        draws.push({ shared: state.shared, weeks: state.weeks });
        if (few) {
          const exact = logJoint(design, mode.spreads, state);
          logWeights.push(exact - mode.objective + normals.square / 2);
        }
      }
    }
  }
  const once = new Uint32Array(draws.length).fill(1);
  if (!few) return { draws, counts: once, effective: null, missed: null };
  const best = Math.max(...logWeights);
  const weights = logWeights.map((log) => Math.exp(log - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const effective = total ** 2 / weights.reduce((sum, weight) => sum + weight ** 2, 0) / draws.length;
  const counts = effective > LEAST_EFFECTIVE ? inProportion(weights, draws.length, rng.next()) : once;
  return { draws, counts, effective, missed: best + Math.log(total / draws.length) };
}

interface Normals {
  readonly shared: Float64Array;
  readonly weeks: Float64Array;
  readonly days: Float64Array;
  /** |z|². */
  readonly square: number;
}

/** Fresh standard normal numbers for every unknown. */
export function normalsFor({ columns, weeks, sessions }: Design, withDays: boolean, rng: Rng): Normals {
  let square = 0;
  const some = (length: number): Float64Array => {
    const z = new Float64Array(length);
    for (let i = 0; i < length; i += 1) {
      z[i] = rng.normal();
      square += at(z, i) ** 2;
    }
    return z;
  };
  const [shared, ofWeeks, days] = [columns.length, 2 * weeks, withDays ? 2 * sessions.count : 0].map(some);
  const none = new Float64Array(0);
  return { shared: shared ?? none, weeks: ofWeeks ?? none, days: days ?? none, square };
}

/** A step away from the mode with covariance H⁻¹. */
export function stepOf(design: Design, { factors }: Mode, normals: Normals, withDays: boolean): State {
  const shared = solveUpper(factors.shared, normals.shared);
  const weeks = backToWeeks(factors.weeks, shared, normals.weeks);
  const days = withDays ? backToDays(design, factors.days, shared, weeks, normals.days) : new Float64Array(0);
  return { shared, weeks, days };
}

/** How many of `count` draws each node gets: its weight times `count`, rounded so that they sum to `count`. */
function shares(nodes: readonly Weighted[], count: number): number[] {
  return [
    ...inProportion(
      nodes.map(({ weight }) => weight),
      count,
      0.5,
    ),
  ];
}

/** Systematic resampling: `count` ticks at equal distances along the weights laid end to end. */
function inProportion(weights: readonly number[], count: number, offset: number): Uint32Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const counts = new Uint32Array(weights.length);
  let reached = 0;
  let tick = 0;
  for (const [i, weight] of weights.entries()) {
    reached += (weight / total) * count;
    while (tick < count && tick + offset < reached) {
      counts[i] = at(counts, i) + 1;
      tick += 1;
    }
  }
  // Ticks lost to rounding at the very end.
  if (weights.length > 0) counts[weights.length - 1] = at(counts, weights.length - 1) + count - tick;
  return counts;
}
