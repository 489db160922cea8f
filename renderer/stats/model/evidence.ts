import { byText } from '../../basics/order.ts';
import { oncePer, oncePerList } from '../../basics/remembered.ts';
import { finish } from '../../basics/steps.ts';
import type { Probability } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { cellsOf } from '../drop.ts';
import { logChoose } from '../special.ts';
import type { PlayedPair } from './pairs.ts';
import { sessionsOf } from './sessionOrder.ts';

/*
 * Evidence that may be looked at every day. An e-process is a bet against "pressure does nothing" whose worth is expected
 * to stay at 1 if that is true; by Ville's inequality it then ever reaches 20 with a chance of at most 1 in 20, however
 * often one looks. Large = a drop.
 */

/** From here on a drop is called clear, whenever it is reached. */
export const CLEAR_EVIDENCE = 20;

export interface Evidence {
  /** Worth now; 1 before the first pair or day. */
  readonly e: number;
  /** The most it ever was, which is what counts for the threshold. */
  readonly highest: number;
}

/** Before the first pair or day. */
export const NO_EVIDENCE: Evidence = { e: 1, highest: 1 };

/** Stakes of the sign-flip bet, from cautious to bold; a fifth of the money on each. */
const STAKES = [0.05, 0.1, 0.15, 0.2, 0.3] as const;

/**
 * The sign-flip bet over coin-ordered pairs: the mean over λ of Π exp(λ d_j) / cosh(λ d_j). Under the null hypothesis
 * each factor is 1 on average over the coin, given |d_j|; no more is assumed.
 *
 * @param pairs in the order they were shot
 */
export function signFlipEvidence(pairs: readonly Pick<PlayedPair, 'difference'>[]): Evidence {
  return mixture(
    STAKES.map(() => 1 / STAKES.length),
    pairs.map(({ difference }) => STAKES.map((stake) => stake * difference - logCosh(stake * difference))),
  );
}

/** Makes of attempts in both conditions, from one stretch in which nothing else changed. */
export interface Stratum {
  readonly relaxed: { readonly makes: number; readonly attempts: number };
  readonly pressured: { readonly makes: number; readonly attempts: number };
}

/** Half-normal prior of the log-odds lost under pressure, on 60 points from 0.025 to 1.5. */
const SLOPE_SD = 0.35;
const SLOPES = Array.from({ length: 60 }, (_, i) => -0.025 * (i + 1));

/**
 * The conditional bet day by day. Given the makes of a stratum in both conditions together, the pressured ones follow
 * Fisher's non-central hypergeometric distribution f_δ(y) ∝ C(nP, y) C(nR, K − y) e^(δy): skill and form of the day cancel.
 * The bet is the mean of Π f_δ / f_0 over δ < 0, half-normal with scale 0.35. It takes for granted that nothing but
 * pressure differs inside a stratum, so tiring and warming up can fool it; the pairs cannot be fooled.
 *
 * @param days strata day by day, in order; a day's strata are looked at together
 */
export function conditionalEvidence(days: readonly (readonly Stratum[])[]): Evidence {
  return finish(conditionalEvidenceInSteps(days));
}

/**
 * The same in short steps, one for each day.
 *
 * @yields the share of the work that is done, 0 to 1
 */
export function* conditionalEvidenceInSteps(
  days: readonly (readonly Stratum[])[],
): Generator<Probability, Evidence> {
  const raw = SLOPES.map((slope) => Math.exp(-(slope ** 2) / (2 * SLOPE_SD ** 2)));
  const total = raw.reduce((sum, one) => sum + one, 0);
  const ratios: (readonly number[])[] = [];
  for (const strata of days) {
    ratios.push(dayRatios(strata));
    yield ratios.length / days.length;
  }
  return mixture(
    raw.map((one) => one / total),
    ratios,
  );
}

/** ln Π f_δ / f_0 over a day's strata, for every slope. */
const dayRatios = oncePer((strata: readonly Stratum[]): readonly number[] => {
  const sums = SLOPES.map(() => 0);
  for (const stratum of strata) {
    for (const [i, log] of logRatios(stratum, SLOPES).entries()) sums[i] = (sums[i] ?? NaN) + log;
  }
  return sums;
});

/** f_δ(y | K) / f_0(y | K) of one stratum. */
export function likelihoodRatio(stratum: Stratum, slope: number): number {
  return Math.exp(logRatios(stratum, [slope])[0] ?? NaN);
}

/** Strata of the conditional bet: session by session, one for each spot and kind of shot. */
export function strataByDay(rounds: Iterable<Round>): (readonly Stratum[])[] {
  return sessionsOf(rounds).map(strataOf);
}

/** In an order of their own, so that not even rounding depends on the order of the rounds. */
const strataOf = oncePerList((session: readonly Round[]): readonly Stratum[] =>
  [...cellsOf(session)]
    .toSorted(([a], [b]) => byText(a, b))
    .map(([, { relaxed, pressured }]) => ({ relaxed, pressured })),
);

function logRatios({ relaxed, pressured }: Stratum, slopes: readonly number[]): number[] {
  const makes = relaxed.makes + pressured.makes;
  const fewest = Math.max(0, makes - relaxed.attempts);
  const most = Math.min(makes, pressured.attempts);
  // One possible outcome alone says nothing.
  if (fewest === most) return slopes.map(() => 0);
  const logs = Array.from(
    { length: most - fewest + 1 },
    (_, i) => logChoose(pressured.attempts, fewest + i) + logChoose(relaxed.attempts, makes - fewest - i),
  );
  const logSum = (slope: number): number => logSumExp(logs.map((log, i) => log + slope * (fewest + i)));
  const atNone = logSum(0);
  return slopes.map((slope) => slope * pressured.makes - logSum(slope) + atNone);
}

/** Σ weight · Π exp(step), after every step. */
function mixture(weights: readonly number[], steps: readonly (readonly number[])[]): Evidence {
  const logs = weights.map((weight) => Math.log(weight));
  let e = 1;
  let highest = 1;
  for (const step of steps) {
    for (const [i, log] of step.entries()) logs[i] = (logs[i] ?? NaN) + log;
    e = Math.exp(logSumExp(logs));
    highest = Math.max(highest, e);
  }
  return { e, highest };
}

function logSumExp(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

/** ln cosh x without overflow. */
function logCosh(x: number): number {
  const far = Math.abs(x);
  return far + Math.log1p(Math.exp(-2 * far)) - Math.LN2;
}
