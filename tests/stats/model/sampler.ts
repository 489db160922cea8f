import type { Rng } from '../../../renderer/basics/chance.ts';
import { at, cholesky, type Matrix, zeros } from '../../../renderer/stats/matrix.ts';
import type { Design } from '../../../renderer/stats/model/design.ts';
import { SPREAD_SCALES, type Spreads } from '../../../renderer/stats/model/priors.ts';
import type { State } from '../../../renderer/stats/model/state.ts';
import { denseRows, unflat, unknowns } from './dense.ts';

/*
 * A second way to the posterior that shares no algebra with the first: Hamiltonian Monte Carlo over all unknowns and the
 * four ln τ at once. Every unknown is written as its spread times a standard normal number, so that small spreads do not
 * trap the sampler: x = mean + A (τ ∘ z).
 */

const GROUPS = ['skill', 'week', 'day', 'dayPressure'] as const satisfies readonly (keyof Spreads)[];
const LEAPS = 6;

/** @param visit called with every state after the first tenth of the steps */
export function sample(
  design: Design,
  steps: number,
  rng: Rng,
  visit: (state: State, spreads: Spreads) => void,
): void {
  const size = unknowns(design);
  const all = size + GROUPS.length;
  const shape = shapeOf(design);
  const groups = groupsOf(design);
  const rows = denseRows(design);
  const means = Float64Array.from({ length: size }, (_, i) => design.columns[i]?.prior.mean ?? 0);
  const offsets = rows.map((row) => row.reduce((sum, value, i) => sum + value * at(means, i), 0));
  const shaped = rows.map((row) => timesShape(row, shape));
  // Most of a row is 0.
  const touched = shaped.map((row) => [...row.keys()].filter((i) => at(row, i) !== 0));

  const scaleOf = (point: Float64Array, i: number): number => {
    const group = at(groups, i);
    return group < 0 ? 1 : Math.exp(at(point, size + group));
  };
  /** ln density of (z, ln τ), and its slope. */
  const density = (point: Float64Array, slope: Float64Array): number => {
    let log = 0;
    const scales = Float64Array.from({ length: size }, (_, i) => scaleOf(point, i));
    slope.fill(0);
    const scaled = scales.map((scale, i) => scale * at(point, i));
    for (const [cell, row] of shaped.entries()) {
      const own = touched[cell] ?? [];
      let eta = at(offsets, cell);
      for (const i of own) eta += at(row, i) * at(scaled, i);
      const n = at(design.attempts, cell);
      const y = at(design.makes, cell);
      log += y * eta - n * Math.log1p(Math.exp(eta));
      const residual = y - n / (1 + Math.exp(-eta));
      for (const i of own) slope[i] = at(slope, i) + residual * at(row, i);
    }
    for (let i = 0; i < size; i += 1) {
      slope[i] = at(slope, i) * at(scales, i);
      const z = at(point, i);
      const group = at(groups, i);
      if (group >= 0) slope[size + group] = at(slope, size + group) + z * at(slope, i);
      slope[i] = at(slope, i) - z;
      log -= (z * z) / 2;
    }
    for (const [group, name] of GROUPS.entries()) {
      const square = (Math.exp(at(point, size + group)) / SPREAD_SCALES[name]) ** 2;
      log += at(point, size + group) - square / 2;
      slope[size + group] = at(slope, size + group) + 1 - square;
    }
    return log;
  };

  let point = new Float64Array(all);
  for (const [group, name] of GROUPS.entries()) point[size + group] = Math.log(SPREAD_SCALES[name]);
  const lower = cholesky(bend(design, shaped, (i) => scaleOf(point, i), all));
  const slope = new Float64Array(all);
  for (let step = 0; step < steps; step += 1) {
    const speed = Float64Array.from({ length: all }, () => rng.normal());
    const before = density(point, slope) - squared(speed) / 2;
    const stride = 0.15 + 0.25 * rng.next();
    let next = point;
    let push = solveForward(lower, slope);
    let log = 0;
    for (let leap = 0; leap < LEAPS; leap += 1) {
      for (let i = 0; i < all; i += 1) speed[i] = at(speed, i) + (stride / 2) * at(push, i);
      const move = solveBackward(lower, speed);
      next = next.map((value, i) => value + stride * at(move, i));
      log = density(next, slope);
      push = solveForward(lower, slope);
      for (let i = 0; i < all; i += 1) speed[i] = at(speed, i) + (stride / 2) * at(push, i);
    }
    if (Math.log(1 - rng.next()) < log - squared(speed) / 2 - before) point = next;
    if (step < steps / 10) continue;
    const scaled = Float64Array.from({ length: size }, (_, i) => at(point, i) * scaleOf(point, i));
    const x = shape.map(
      (row, i) => at(means, i) + row.reduce((sum, value, j) => sum + value * at(scaled, j), 0),
    );
    const [skill = NaN, week = NaN, day = NaN, dayPressure = NaN] = point.slice(size).map(Math.exp);
    visit(unflat(design, Float64Array.from(x)), { skill, week, day, dayPressure });
  }
}

/** A, row by row: how each unknown is made of the standard normal numbers. */
function shapeOf({ columns, weeks, sessions }: Design): Float64Array[] {
  const size = columns.length + 2 * weeks + 2 * sessions.count;
  return Array.from({ length: size }, (_, i) => {
    const row = new Float64Array(size);
    const inWeeks = i - columns.length;
    if (inWeeks < 0) {
      row[i] = columns[i]?.prior.sd ?? NaN;
    } else if (inWeeks >= 2 * weeks) {
      row[i] = 1;
    } else {
      const week = Math.floor(inWeeks / 2);
      for (let past = 0; past <= week; past += 1) {
        const from = columns.length + 2 * past + (inWeeks % 2);
        // A walk keeps every step; the other chain forgets a tenth each week, from its steady spread.
        const kept = 0.9 ** (week - past) * (past === 0 ? 1 : Math.sqrt(1 - 0.9 ** 2));
        row[from] = inWeeks % 2 === 0 ? 1 : kept;
      }
    }
    return row;
  });
}

/** Which spread each standard normal number is multiplied by; −1 for none. */
function groupsOf({ columns, weeks, sessions }: Design): Int8Array {
  const size = columns.length + 2 * weeks + 2 * sessions.count;
  return Int8Array.from({ length: size }, (_, i) => {
    const after = i - columns.length;
    if (after < 0) return -1;
    return (after < 2 * weeks ? 0 : 2) + (after % 2);
  });
}

function timesShape(row: Float64Array, shape: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(row.length);
  for (const [i, value] of row.entries()) {
    if (value === 0) continue;
    for (const [j, part] of (shape[i] ?? []).entries()) out[j] = at(out, j) + value * part;
  }
  return out;
}

/** About how the density bends, for the shape of the jumps: makes at one half, ln τ known to ±0.6. */
function bend(
  { attempts }: Design,
  shaped: readonly Float64Array[],
  scale: (i: number) => number,
  all: number,
): Matrix {
  const matrix = zeros(all);
  for (let i = 0; i < all; i += 1) {
    matrix.values[i * all + i] = i < (shaped[0]?.length ?? 0) ? 1 : 0.6 ** -2;
  }
  for (const [cell, row] of shaped.entries()) {
    for (const [i, left] of row.entries()) {
      for (const [j, right] of row.entries()) {
        const spot = i * all + j;
        const amount = (at(attempts, cell) / 4) * left * right * scale(i) * scale(j);
        matrix.values[spot] = at(matrix.values, spot) + amount;
      }
    }
  }
  return matrix;
}

/** L y = right. */
function solveForward({ size, values }: Matrix, right: Float64Array): Float64Array {
  const y = right.slice();
  for (let i = 0; i < size; i += 1) {
    let rest = at(y, i);
    for (let k = 0; k < i; k += 1) rest -= at(values, i * size + k) * at(y, k);
    y[i] = rest / at(values, i * size + i);
  }
  return y;
}

/** Lᵀ x = right. */
function solveBackward({ size, values }: Matrix, right: Float64Array): Float64Array {
  const x = right.slice();
  for (let i = size - 1; i >= 0; i -= 1) {
    const here = at(x, i) / at(values, i * size + i);
    x[i] = here;
    for (let k = 0; k < i; k += 1) x[k] = at(x, k) - at(values, i * size + k) * here;
  }
  return x;
}

function squared(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
