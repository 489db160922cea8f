import { addAt, at, cholesky, inverseOf, logDeterminant, type Matrix, solveLower } from './matrix.ts';
import { expit } from './special.ts';

/* Newton's method and Laplace's approximation for the model that lately.ts states. */

/** Standard deviation of a day's own answer to pressure, log-odds. */
export const DAY_PRESSURE_SD = 0.15;
/** Scale of the half-normal prior of τ, log-odds: make rates vary by 0.2 to 0.3 from day to day. */
const DAY_SD_SCALE = 0.25;

/** Newton's method stops at moves this small, log-odds; they would change a make rate by 0.002 points. */
const CLOSE_ENOUGH = 1e-4;

/** A day's shots as numbers. */
export interface DayShots {
  /** What the day counts for, 0 to 1. */
  readonly weight: number;
  readonly rows: readonly Row[];
  /** Shared unknowns that the day's shots touch. */
  readonly touched: readonly number[];
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
  for (let round = 0; round < 50 && here.largest > CLOSE_ENOUGH; round += 1) {
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
  // Filled below the diagonal alone, which is all that its factor is made from.
  const precision: Matrix = { size, values: shots.priorPrecision.values.slice() };
  const h = precision.values;
  const gradient = new Float64Array(size);
  let objective = fromPrior(shots, state, gradient);
  const pB = 1 / daySd ** 2;
  const pC = 1 / DAY_PRESSURE_SD ** 2;
  const onShift = at(state.shared, shift);
  // Cross terms of b and of c with the shared unknowns, day by day.
  const crossB = new Float64Array(size * shots.days.length);
  const crossC = new Float64Array(size * shots.days.length);
  const blocks: Block[] = [];
  let dayDeterminants = 0;
  for (const [d, { weight, rows, touched }] of shots.days.entries()) {
    const b = at(state.days, 2 * d);
    const c = at(state.days, 2 * d + 1);
    let dayObjective = -(pB * b * b + pC * c * c) / 2;
    let gB = -pB * b;
    let gC = -pC * c;
    let bb = pB;
    let bc = 0;
    const from = d * size;
    for (const { place, x, makes, attempts } of rows) {
      const eta = at(state.shared, place) + b + x * (onShift + c);
      const p = expit(eta);
      dayObjective += makes * eta - attempts * softplus(eta);
      const slope = makes - attempts * p;
      const w = attempts * p * (1 - p);
      gB += slope;
      bb += w;
      addAt(crossB, from + place, w);
      addAt(gradient, place, weight * slope);
      addAt(h, place * size + place, weight * w);
      if (x === 0) continue;
      gC += slope;
      bc += w;
      addAt(crossC, from + place, w);
      addAt(gradient, shift, weight * slope);
      addAt(h, shift * size + shift, weight * w);
      addAt(h, shift * size + place, weight * w);
    }
    // b meets the shift, and c meets c and the shift, in the pressured shots alone.
    crossB[from + shift] = bc;
    crossC[from + shift] = bc;
    const cc = pC + bc;
    const determinant = bb * cc - bc * bc;
    dayDeterminants += weight * Math.log(determinant / (pB * pC));
    objective += weight * dayObjective;
    blocks.push({ gB, gC, bb, bc, cc, determinant });
    for (const i of touched) {
      const iB = (cc * at(crossB, from + i) - bc * at(crossC, from + i)) / determinant;
      const iC = (bb * at(crossC, from + i) - bc * at(crossB, from + i)) / determinant;
      addAt(gradient, i, -weight * (iB * gB + iC * gC));
      for (const j of touched) {
        if (j > i) continue;
        addAt(h, i * size + j, -weight * (iB * at(crossB, from + j) + iC * at(crossC, from + j)));
      }
    }
  }
  const lower = cholesky(precision);
  const shared = solveLower(lower, gradient);
  const days = new Float64Array(2 * blocks.length);
  let largest = shared.reduce((most, move) => Math.max(most, Math.abs(move)), 0);
  for (const [d, { gB, gC, bb, bc, cc, determinant }] of blocks.entries()) {
    let restB = gB;
    let restC = gC;
    for (const i of shots.days[d]?.touched ?? []) {
      restB -= at(crossB, d * size + i) * at(shared, i);
      restC -= at(crossC, d * size + i) * at(shared, i);
    }
    const moveB = (cc * restB - bc * restC) / determinant;
    const moveC = (bb * restC - bc * restB) / determinant;
    days[2 * d] = moveB;
    days[2 * d + 1] = moveC;
    largest = Math.max(largest, Math.abs(moveB), Math.abs(moveC));
  }
  return { objective, step: { shared, days }, largest, lower, dayDeterminants };
}

/** A day's own part: gradient and precision of its b and c. */
interface Block {
  readonly gB: number;
  readonly gC: number;
  readonly bb: number;
  readonly bc: number;
  readonly cc: number;
  readonly determinant: number;
}

/** Sets the gradient of the shared unknowns' log prior. @returns the log prior, up to a constant */
function fromPrior({ priorMean, priorPrecision }: Shots, { shared }: State, gradient: Float64Array): number {
  const { size, values } = priorPrecision;
  let logPrior = 0;
  for (let i = 0; i < size; i += 1) {
    let pull = 0;
    for (let j = 0; j < size; j += 1) pull += at(values, i * size + j) * (at(shared, j) - at(priorMean, j));
    gradient[i] = -pull;
    logPrior -= (pull * (at(shared, i) - at(priorMean, i))) / 2;
  }
  return logPrior;
}

/** ln(1 + e^x) without overflow. */
function softplus(x: number): number {
  return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
}
