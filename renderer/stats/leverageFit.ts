import { finish } from '../basics/steps.ts';
import { addAt, at, cholesky, inverseOf, logDeterminant, type Matrix, solveLower, zeros } from './matrix.ts';
import { gaussHermite } from './quadrature.ts';
import { expit } from './special.ts';

/*
 * Logistic regression with a random round effect, log-odds = offset + x·β + u, u ~ N(0, τ²) for every round. u is
 * integrated out round by round with adaptive Gauss-Hermite quadrature: nodes around the round's own mode, as wide as its
 * curvature (Pinheiro & Bates, J Comput Graph Stat 4:12-35, 1995). β by Newton's method; the integral of a log-concave
 * function is log-concave, so there is one mode. Derivatives are means over the nodes (Louis, JRSS B 44:226-233, 1982).
 */

/** One round's shots. */
export interface RoundShots {
  /** Shot × column. */
  readonly columns: readonly Float64Array[];
  /** Log-odds of a make that are known before. */
  readonly offsets: Float64Array;
  /** 1 = make. */
  readonly made: Uint8Array;
}

export interface RandomRounds {
  readonly rounds: readonly RoundShots[];
  /** Normal priors of β around 0. */
  readonly priorSds: readonly number[];
}

/** Mode and spread of β for one τ. */
export interface RoundsFit {
  readonly beta: Float64Array;
  readonly covariance: Matrix;
  /** ln of the likelihood at the mode, rounds integrated out. */
  readonly logLikelihood: number;
  /** ln of the evidence for τ by Laplace's approximation in β, up to a constant. */
  readonly logEvidence: number;
}

/** Newton's method stops at moves this small, log-odds. */
const CLOSE_ENOUGH = 1e-4;

/** @param tau standard deviation of the rounds, log-odds, above 0 */
export function fitRounds(data: RandomRounds, tau: number, nodes: number, from?: Float64Array): RoundsFit {
  return finish(fitRoundsInSteps(data, tau, nodes, from));
}

/** The same, step by step of Newton's method. */
export function* fitRoundsInSteps(
  data: RandomRounds,
  tau: number,
  nodes: number,
  from?: Float64Array,
): Generator<void, RoundsFit> {
  let beta = from ?? new Float64Array(data.priorSds.length);
  const modes = new Float64Array(data.rounds.length);
  let here = evaluate(data, beta, tau, nodes, modes);
  for (let round = 0; round < 50; round += 1) {
    const lower = cholesky(here.precision);
    const step = solveLower(lower, here.gradient);
    let share = 1;
    let next = moved(beta, step, share);
    let there = evaluate(data, next, tau, nodes, modes);
    while (there.objective < here.objective - 1e-9 && share > 1e-6) {
      share /= 2;
      next = moved(beta, step, share);
      there = evaluate(data, next, tau, nodes, modes);
    }
    beta = next;
    here = there;
    yield;
    if (step.every((move) => Math.abs(share * move) < CLOSE_ENOUGH)) break;
  }
  const lower = cholesky(here.precision);
  return {
    beta,
    covariance: inverseOf(lower),
    logLikelihood: here.logLikelihood,
    logEvidence: here.objective - logDeterminant(lower) / 2,
  };
}

function moved(beta: Float64Array, step: Float64Array, share: number): Float64Array {
  return beta.map((value, i) => value + share * at(step, i));
}

interface Evaluated {
  readonly objective: number;
  readonly logLikelihood: number;
  readonly gradient: Float64Array;
  /** Minus the second derivatives. */
  readonly precision: Matrix;
}

/** @param modes of the rounds' effects: where to start, and where they were found */
function evaluate(
  { rounds, priorSds }: RandomRounds,
  beta: Float64Array,
  tau: number,
  nodes: number,
  modes: Float64Array,
): Evaluated {
  const size = beta.length;
  const gradient = new Float64Array(size);
  const precision = zeros(size);
  let prior = 0;
  for (const [i, sd] of priorSds.entries()) {
    const pull = at(beta, i) / sd ** 2;
    prior -= (pull * at(beta, i)) / 2;
    gradient[i] = -pull;
    precision.values[i * (size + 1)] = 1 / sd ** 2;
  }
  let logLikelihood = 0;
  for (const [r, round] of rounds.entries()) {
    const eta = round.offsets.map((offset, j) => offset + dot(round.columns[j] ?? beta, beta));
    const { mode, sd } = modeOf(round.made, eta, tau, at(modes, r));
    modes[r] = mode;
    logLikelihood += addRound(round, eta, { mode, sd, tau, nodes }, gradient, precision);
  }
  return { objective: logLikelihood + prior, logLikelihood, gradient, precision };
}

/** The most likely effect of a round and the width of its peak. */
function modeOf(
  made: Uint8Array,
  eta: Float64Array,
  tau: number,
  from: number,
): { mode: number; sd: number } {
  let mode = from;
  let bend = 1;
  for (let round = 0; round < 30; round += 1) {
    let slope = -mode / tau ** 2;
    bend = 1 / tau ** 2;
    for (let j = 0; j < eta.length; j += 1) {
      const p = expit(at(eta, j) + mode);
      slope += at(made, j) - p;
      bend += p * (1 - p);
    }
    // A long step can overshoot where the curve is flat.
    const step = Math.max(-1, Math.min(1, slope / bend));
    mode += step;
    if (Math.abs(step) < 1e-4) break;
  }
  return { mode, sd: 1 / Math.sqrt(bend) };
}

/** Adds one round to gradient and precision. @returns its log-likelihood */
function addRound(
  { columns, made }: RoundShots,
  eta: Float64Array,
  { mode, sd, tau, nodes }: { mode: number; sd: number; tau: number; nodes: number },
  gradient: Float64Array,
  precision: Matrix,
): number {
  const { size, values } = precision;
  const shots = eta.length;
  const rule = gaussHermite(nodes);
  const rates = rule.nodes.map(() => new Float64Array(shots));
  const logs = rule.nodes.map((z, k) => {
    const u = mode + sd * z;
    const p = rates[k] ?? eta;
    let log = Math.log((at(rule.weights, k) * sd) / tau) + (z * z - (u / tau) ** 2) / 2;
    for (let j = 0; j < shots; j += 1) {
      p[j] = expit(at(eta, j) + u);
      log += Math.log(made[j] === 1 ? at(p, j) : 1 - at(p, j));
    }
    return log;
  });
  const most = Math.max(...logs);
  const total = logs.reduce((sum, log) => sum + Math.exp(log - most), 0);
  const spread = new Float64Array(shots);
  const mean = new Float64Array(size);
  const second = new Float64Array(size * size);
  for (const [k, p] of rates.entries()) {
    const share = Math.exp(at(logs, k) - most) / total;
    const score = new Float64Array(size);
    for (let j = 0; j < shots; j += 1) {
      const rest = at(made, j) - at(p, j);
      const x = columns[j] ?? score;
      for (let i = 0; i < size; i += 1) addAt(score, i, rest * at(x, i));
      addAt(spread, j, share * at(p, j) * (1 - at(p, j)));
    }
    for (let i = 0; i < size; i += 1) {
      addAt(mean, i, share * at(score, i));
      for (let h = 0; h <= i; h += 1) addAt(second, i * size + h, share * at(score, i) * at(score, h));
    }
  }
  for (let i = 0; i < size; i += 1) {
    addAt(gradient, i, at(mean, i));
    for (let h = 0; h <= i; h += 1) {
      let bend = at(mean, i) * at(mean, h) - at(second, i * size + h);
      for (let j = 0; j < shots; j += 1) {
        const x = columns[j] ?? mean;
        bend += at(spread, j) * at(x, i) * at(x, h);
      }
      addAt(values, i * size + h, bend);
    }
  }
  return most + Math.log(total);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < b.length; i += 1) sum += at(a, i) * at(b, i);
  return sum;
}
