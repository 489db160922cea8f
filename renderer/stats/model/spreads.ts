import { at } from '../matrix.ts';
import { normalQuantile } from '../special.ts';
import type { Fitter, Mode } from './newton.ts';
import { SPREAD_SCALES, SPREADS, type Spreads } from './priors.ts';
import { NODES } from './settings.ts';
import type { State } from './state.ts';

/*
 * The four spreads τ are not known either. Their posterior, on the scale of ln τ, is Laplace's evidence times the
 * half-normal priors times τ (for the change of scale). It is climbed one coordinate after the other and then averaged
 * over with points spread evenly around its top.
 */

/** A fit that counts for a share of the whole. */
export interface Weighted {
  readonly mode: Mode;
  /** Sum to 1. */
  readonly weight: number;
}

export interface SpreadFit {
  readonly nodes: readonly Weighted[];
  /** Posterior mean of each τ. */
  readonly mean: Spreads;
  /** Posterior standard deviation of each τ. */
  readonly sd: Spreads;
  /** What the points are worth, in points of equal weight. */
  readonly effective: number;
}

/** First guess, between the middle of the priors and what shooters show. */
const START = [0.06, 0.22, 0.1, 0.1];
/** Distance on ln τ at which curvature is felt for. */
const REACH = 0.35;
const SWEEPS = 3;
/** The points are spread a little wider than the posterior, so that its tails are seen. */
const WIDER = 1.15;
const LEAST_CURVATURE = 0.3;
const LOWEST = Math.log(1e-3);
const HIGHEST = Math.log(2);

/** Fits that {@link integrate} makes at most, for a progress bar. */
export const MOST_FITS = 1 + SWEEPS * SPREADS.length * 3 + NODES;

/** ln of the posterior density of ln τ, up to a constant. */
export function logPosterior({ spreads, logEvidence }: Pick<Mode, 'spreads' | 'logEvidence'>): number {
  let sum = logEvidence;
  for (const name of SPREADS) {
    sum += Math.log(spreads[name]) - spreads[name] ** 2 / (2 * SPREAD_SCALES[name] ** 2);
  }
  return sum;
}

/**
 * Climbs to the most likely spreads, then weighs {@link NODES} points around them by posterior over proposal.
 *
 * @param keep called with every point's fit before the next one is made; what it returns is kept as the fit
 * @yields after every fit, so that whoever runs it can do something else in between, or stop
 */
export function* integrate(fitter: Fitter, keep: (mode: Mode) => Mode): Generator<void, SpreadFit> {
  const top = yield* climb(fitter);
  const nodes: { mode: Mode; log: number }[] = [];
  for (const normals of evenNormals(NODES)) {
    const point = top.point.map(
      (centre, i) =>
        centre + (WIDER * at(normals, i)) / Math.sqrt(Math.max(at(top.curvature, i), LEAST_CURVATURE)),
    );
    const spreads = spreadsAt(point);
    const mode = keep(fitter.fit(spreads, top.state));
    yield;
    const square = normals.reduce((sum, z) => sum + z * z, 0);
    nodes.push({ mode, log: logPosterior(mode) + square / 2 });
  }
  const best = Math.max(...nodes.map(({ log }) => log));
  const raw = nodes.map(({ log }) => Math.exp(log - best));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return summed(nodes.map(({ mode }, i) => ({ mode, weight: at(raw, i) / total })));
}

/** One fit at given spreads, as after a round. */
export function fixed(mode: Mode): SpreadFit {
  return summed([{ mode, weight: 1 }]);
}

function summed(nodes: readonly Weighted[]): SpreadFit {
  const moment = (power: number) => (name: keyof Spreads) =>
    nodes.reduce((sum, { mode, weight }) => sum + weight * mode.spreads[name] ** power, 0);
  const mean = eachSpread(moment(1));
  const square = eachSpread(moment(2));
  return {
    nodes,
    mean,
    sd: eachSpread((name) => Math.sqrt(Math.max(0, square[name] - mean[name] ** 2))),
    effective: 1 / nodes.reduce((sum, { weight }) => sum + weight * weight, 0),
  };
}

interface Top {
  /** ln τ, in the order of SPREADS. */
  readonly point: number[];
  readonly curvature: number[];
  readonly state: State;
}

/** Parabola steps on one ln τ after the other, at most {@link SWEEPS} times round. */
function* climb(fitter: Fitter): Generator<void, Top> {
  let state: State | undefined;
  function* value(at_: readonly number[]): Generator<void, { log: number; state: State }> {
    const mode = fitter.fit(spreadsAt(at_), state);
    yield;
    return { log: logPosterior(mode), state: mode.state };
  }
  let point = START.map((tau) => Math.log(tau));
  let here = yield* value(point);
  ({ state } = here);
  const curvature = point.map(() => 1);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let farthest = 0;
    for (let i = 0; i < point.length; i += 1) {
      const beside = (by: number): number[] => point.map((old, j) => (j === i ? clamp(old + by) : old));
      const down = yield* value(beside(-REACH));
      const up = yield* value(beside(REACH));
      const bend = (2 * here.log - down.log - up.log) / REACH ** 2;
      curvature[i] = bend;
      const slope = (up.log - down.log) / (2 * REACH);
      const leap = bend > 1e-3 ? slope / bend : Math.sign(slope) * 2 * REACH;
      const by = Math.min(Math.max(leap, -2 * REACH), 2 * REACH);
      // So small a move would change nothing that is shown.
      if (Math.abs(by) < 0.02) continue;
      const tried = beside(by);
      const there = yield* value(tried);
      const best = [there, down, up].reduce((a, b) => (b.log > a.log ? b : a));
      if (best.log <= here.log) continue;
      const from = at(point, i);
      point = best === there ? tried : beside(best === down ? -REACH : REACH);
      farthest = Math.max(farthest, Math.abs(at(point, i) - from));
      here = best;
      ({ state } = here);
    }
    if (farthest < 0.1) break;
  }
  return { point, curvature, state };
}

function clamp(log: number): number {
  return Math.min(Math.max(log, LOWEST), HIGHEST);
}

function spreadsAt(point: readonly number[]): Spreads {
  const [skill, day, week, dayPressure] = point.map((log) => Math.exp(clamp(log)));
  return { skill: skill ?? NaN, day: day ?? NaN, week: week ?? NaN, dayPressure: dayPressure ?? NaN };
}

function eachSpread(of: (name: keyof Spreads) => number): Spreads {
  return { skill: of('skill'), day: of('day'), week: of('week'), dayPressure: of('dayPressure') };
}

/**
 * Standard normal points in four dimensions that fill the space evenly: the additive recurrence with steps g⁻¹ .. g⁻⁴,
 * where g is the root of g⁵ = g + 1 (the golden ratio's relative in four dimensions).
 */
export function evenNormals(count: number): number[][] {
  const dimensions = SPREADS.length;
  let g = 1.2;
  for (let round = 0; round < 60; round += 1) g = (1 + g) ** (1 / (dimensions + 1));
  return Array.from({ length: count }, (_, k) =>
    Array.from({ length: dimensions }, (__, j) => normalQuantile((0.5 + (k + 1) * g ** -(j + 1)) % 1)),
  );
}
