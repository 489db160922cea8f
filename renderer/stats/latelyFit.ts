import { addAt, at, cholesky, inverseOf, logDeterminant, type Matrix, solveLower } from './matrix.ts';
import { expit } from './special.ts';

/* Newton's method and Laplace's approximation for the model that lately.ts states. */

/** Standard deviation of a day's own answer to pressure, log-odds. */
export const DAY_PRESSURE_SD = 0.15;
/** Scale of the half-normal prior of τ, log-odds: make rates vary by 0.2 to 0.3 from day to day. */
const DAY_SD_SCALE = 0.25;

/** A day's shots as numbers. */
export interface DayShots {
  /** What the day counts for, 0 to 1. */
  readonly weight: number;
  readonly rows: readonly Row[];
}

export interface Row {
  readonly place: number;
  readonly x: 0 | 1;
  readonly makes: number;
  readonly attempts: number;
}

export interface Shots {
  readonly days: readonly DayShots[];
  /** Prior of the shared unknowns: the θ of every place, then δ. */
  readonly priorMean: Float64Array;
  readonly priorPrecision: Matrix;
}

/** Where Newton's method stands. */
export interface State {
  readonly shared: Float64Array;
  /** b and c of every day. */
  readonly days: Float64Array;
}

export interface Fit {
  readonly daySd: number;
  readonly state: State;
  /** Of the shared unknowns. */
  readonly covariance: Matrix;
  /** ln of the evidence for this τ, prior of τ included, up to a constant. */
  readonly logEvidence: number;
}

/** Mode and spread for one τ. */
export function fit(shots: Shots, daySd: number, from?: State): Fit {
  let state = from ?? { shared: shots.priorMean, days: new Float64Array(2 * shots.days.length) };
  let here = newton(shots, daySd, state);
  for (let round = 0; round < 50 && here.largest > 1e-5; round += 1) {
    let share = 1;
    let next = moved(state, here.step, share);
    let there = newton(shots, daySd, next);
    // The objective is concave, so some part of the step always rises.
    while (there.objective < here.objective - 1e-9 && share > 1e-6) {
      share /= 2;
      next = moved(state, here.step, share);
      there = newton(shots, daySd, next);
    }
    state = next;
    here = there;
  }
  const prior = -(daySd ** 2) / (2 * DAY_SD_SCALE ** 2);
  return {
    daySd,
    state,
    covariance: inverseOf(here.lower),
    logEvidence: here.objective - logDeterminant(here.lower) / 2 - here.dayDeterminants / 2 + prior,
  };
}

function moved(state: State, step: State, share: number): State {
  return {
    shared: state.shared.map((value, i) => value + share * at(step.shared, i)),
    days: state.days.map((value, i) => value + share * at(step.days, i)),
  };
}

interface NewtonStep {
  readonly objective: number;
  readonly step: State;
  /** Largest move in the step. */
  readonly largest: number;
  /** Cholesky factor of the shared unknowns' precision with the days eliminated. */
  readonly lower: Matrix;
  /** Σ weight · ln |D τ² 0.15²| over the days. */
  readonly dayDeterminants: number;
}

/** One Newton step; each day is a 2 × 2 block that is eliminated first. */
function newton(shots: Shots, daySd: number, state: State): NewtonStep {
  const { size } = shots.priorPrecision;
  const shift = size - 1;
  const precision: Matrix = { size, values: shots.priorPrecision.values.slice() };
  const gradient = new Float64Array(size);
  let objective = 0;
  for (let i = 0; i < size; i += 1) {
    let pull = 0;
    for (let j = 0; j < size; j += 1) {
      pull += at(precision.values, i * size + j) * (at(state.shared, j) - at(shots.priorMean, j));
    }
    gradient[i] = -pull;
    objective -= (pull * (at(state.shared, i) - at(shots.priorMean, i))) / 2;
  }
  const pB = 1 / daySd ** 2;
  const pC = 1 / DAY_PRESSURE_SD ** 2;
  const blocks: Block[] = [];
  let dayDeterminants = 0;
  for (const [d, day] of shots.days.entries()) {
    const b = at(state.days, 2 * d);
    const c = at(state.days, 2 * d + 1);
    let dayObjective = -(pB * b * b + pC * c * c) / 2;
    let [gB, gC] = [-pB * b, -pC * c];
    let [bb, bc, cc] = [pB, 0, pC];
    const touched = [...new Set(day.rows.map((row) => row.place)), shift];
    const crossB = new Float64Array(size);
    const crossC = new Float64Array(size);
    for (const { place, x, makes, attempts } of day.rows) {
      const eta = at(state.shared, place) + b + x * (at(state.shared, shift) + c);
      const p = expit(eta);
      dayObjective += makes * eta - attempts * softplus(eta);
      const slope = makes - attempts * p;
      const w = attempts * p * (1 - p);
      gB += slope;
      bb += w;
      addAt(crossB, place, w);
      addAt(gradient, place, day.weight * slope);
      addAt(precision.values, place * size + place, day.weight * w);
      if (x === 0) continue;
      gC += slope;
      bc += w;
      cc += w;
      addAt(crossC, place, w);
      addAt(crossB, shift, w);
      addAt(crossC, shift, w);
      addAt(gradient, shift, day.weight * slope);
      addAt(precision.values, shift * size + shift, day.weight * w);
      addAt(precision.values, place * size + shift, day.weight * w);
      addAt(precision.values, shift * size + place, day.weight * w);
    }
    const determinant = bb * cc - bc * bc;
    dayDeterminants += day.weight * Math.log(determinant / (pB * pC));
    objective += day.weight * dayObjective;
    const block = { touched, gB, gC, bb, bc, cc, determinant, crossB, crossC };
    blocks.push(block);
    const [toB, toC] = solveBlock(block, gB, gC);
    for (const i of touched) {
      addAt(gradient, i, -day.weight * (at(crossB, i) * toB + at(crossC, i) * toC));
      const [iB, iC] = solveBlock(block, at(crossB, i), at(crossC, i));
      for (const j of touched) {
        addAt(precision.values, i * size + j, -day.weight * (iB * at(crossB, j) + iC * at(crossC, j)));
      }
    }
  }
  const lower = cholesky(precision);
  const shared = solveLower(lower, gradient);
  const days = new Float64Array(2 * blocks.length);
  for (const [d, block] of blocks.entries()) {
    let { gB, gC } = block;
    for (const i of block.touched) {
      gB -= at(block.crossB, i) * at(shared, i);
      gC -= at(block.crossC, i) * at(shared, i);
    }
    days.set(solveBlock(block, gB, gC), 2 * d);
  }
  const largest = Math.max(...shared.map(Math.abs), ...days.map(Math.abs));
  return { objective, step: { shared, days }, largest, lower, dayDeterminants };
}

interface Block {
  /** Shared unknowns that the day's shots touch. */
  readonly touched: readonly number[];
  readonly gB: number;
  readonly gC: number;
  readonly bb: number;
  readonly bc: number;
  readonly cc: number;
  readonly determinant: number;
  readonly crossB: Float64Array;
  readonly crossC: Float64Array;
}

/** The block's inverse times (b, c). */
function solveBlock({ bb, bc, cc, determinant }: Block, b: number, c: number): [number, number] {
  return [(cc * b - bc * c) / determinant, (bb * c - bc * b) / determinant];
}

/** ln(1 + e^x) without overflow. */
function softplus(x: number): number {
  return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
}
