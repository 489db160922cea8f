import { present } from '../basics/invariant.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import { poissonBinomial } from './ability.ts';
import { at } from './matrix.ts';
import { signFlipTest } from './model/signFlip.ts';

/*
 * Whether forecasts keep their word. A forecaster is calibrated when what came of the forecasts looks as if it had been
 * drawn from them (Dawid, Present position and potential developments: the prequential approach, JRSS A 147:278-292,
 * 1984; Gneiting, Balabdaoui & Raftery, Probabilistic forecasts, calibration and sharpness, JRSS B 69:243-268, 2007;
 * both cited from memory). Then the place of each result in its own forecast, the probability integral transform, is
 * even over 0 to 1; for counts its middle is used (Czado, Gneiting & Held, Predictive model assessment for count data,
 * Biometrics 65:1254-1261, 2009, has the non-random transform), whose mean is ½.
 */

/** One forecast and what came of it. */
export interface Outcome {
  readonly date: IsoDate;
  /** Chance of exactly k makes, k = 0 .. attempts. */
  readonly chances: readonly Probability[];
  /** Makes that were to hold the middle 80 %. */
  readonly low: number;
  readonly high: number;
  readonly makes: number;
}

/**
 * How forecasts read beside what came of them:
 * - `too few` to tell
 * - `fits`: nothing beyond luck speaks against them
 * - `too hopeful`, `too gloomy`: the shooter makes fewer, or more, than forecast
 * - `too sure`, `too careful`: more, or fewer, rounds end outside their span than its 80 % allow
 */
export type CalibrationReading =
  'too few' | 'fits' | 'too sure' | 'too careful' | 'too hopeful' | 'too gloomy';

export interface Calibration {
  /** Rounds that ended within their span; below it; above it. */
  readonly inside: number;
  readonly below: number;
  readonly above: number;
  /** Rounds that were to be expected within, since makes are whole a little more than 80 %. */
  readonly expectedInside: number;
  /** Rounds, and days they fall on, that are missing before anything is read from them; 0 where there are enough. */
  readonly needs: { readonly rounds: number; readonly days: number };
  readonly reading: CalibrationReading;
}

/** Nothing is read from fewer rounds than these, on fewer days: all rounds of a day share its luck. */
export const LEAST_ROUNDS = 20;
export const LEAST_DAYS = 8;
/**
 * Two questions are asked, so each at half of 5 %: true forecasts are called wrong one time in twenty at most. Whoever
 * looks after every round will see that happen now and then, and see it pass.
 */
const LEVEL = 0.025;
/** Places in a forecast are added up in whole hundredths, as the exact test wants them. */
const FINE = 100;

/**
 * Compares forecasts with what came of them.
 *
 * Hopeful or gloomy: the exact sign-flip test, two-sided, over the days; a day counts with the sum of its rounds' places
 * (probability integral transform, middle) less ½. Rounds of one day may go together as they like. Too sure or too
 * careful: the rounds within their spans against the sum of the chances they were given (Poisson-binomial), two-sided.
 * The first is read first, since forecasts that are off to one side also miss their spans.
 */
export function calibrationOf(outcomes: readonly Outcome[]): Calibration {
  let below = 0;
  let above = 0;
  const insides: Probability[] = [];
  const days = new Map<IsoDate, number>();
  for (const { date, chances, low, high, makes } of outcomes) {
    if (makes < low) below += 1;
    if (makes > high) above += 1;
    insides.push(sumOf(chances, low, high));
    days.set(date, (days.get(date) ?? 0) + placeIn(chances, makes) - 0.5);
  }
  const counted = {
    inside: outcomes.length - below - above,
    below,
    above,
    expectedInside: insides.reduce((sum, chance) => sum + chance, 0),
    needs: {
      rounds: Math.max(0, LEAST_ROUNDS - outcomes.length),
      days: Math.max(0, LEAST_DAYS - days.size),
    },
  };
  return { ...counted, reading: readingOf(counted, insides, [...days.values()]) };
}

function readingOf(
  { needs, inside, expectedInside }: Omit<Calibration, 'reading'>,
  insides: readonly Probability[],
  days: readonly number[],
): CalibrationReading {
  if (needs.rounds > 0 || needs.days > 0) return 'too few';
  const { sum, twoSided } = signFlipTest(days.map((day) => Math.round(FINE * day)));
  if (twoSided <= LEVEL) return sum < 0 ? 'too hopeful' : 'too gloomy';
  if (twoSidedChance(poissonBinomial(insides), inside) > LEVEL) return 'fits';
  return inside < expectedInside ? 'too sure' : 'too careful';
}

/** Chance of a count at least as far out as this one, on either side. */
function twoSidedChance(chances: ArrayLike<Probability>, count: number): Probability {
  const low = sumOf(chances, 0, count);
  const high = sumOf(chances, count, chances.length - 1);
  return Math.min(1, 2 * Math.min(low, high));
}

/** Where a count lies in a forecast, 0 to 1: the chance of less, and half the chance of itself. */
export function placeIn(chances: readonly Probability[], makes: number): Probability {
  return sumOf(chances, 0, makes - 1) + present(chances[makes], 'the chance of what was made') / 2;
}

/**
 * The ranked probability score, in makes: Brier's score (Verification of forecasts expressed in terms of probability,
 * Monthly Weather Review 78:1-3, 1950, from memory) summed over every mark that could have been set (Epstein, A scoring
 * system for probability forecasts of ranked categories, J. Appl. Meteorology 8:985-987, 1969). 0 is perfect; a forecast
 * of one single number scores by how far it was off. In the long run nobody gains by saying anything but what they believe.
 */
export function rankedProbabilityScore(chances: readonly Probability[], makes: number): number {
  let score = 0;
  let atMost = 0;
  for (let k = 0; k < chances.length - 1; k += 1) {
    atMost += at(chances, k);
    score += (atMost - (makes <= k ? 1 : 0)) ** 2;
  }
  return score;
}

/** Forecasts beside a rival's for the same rounds, by {@link rankedProbabilityScore}: mean over the rounds, in makes. */
export interface AgainstRival {
  readonly ours: number;
  readonly rival: number;
  /** Whether luck alone would hardly make them differ so: the sign-flip test over the days, two-sided 5 %. */
  readonly reading: 'better' | 'alike' | 'worse';
}

/** Null without a round. */
export function againstRival(outcomes: readonly Outcome[], rivals: readonly Outcome[]): AgainstRival | null {
  if (outcomes.length === 0) return null;
  let ours = 0;
  let rival = 0;
  const days = new Map<IsoDate, number>();
  for (const [round, { date, chances, makes }] of outcomes.entries()) {
    const mine = rankedProbabilityScore(chances, makes);
    const other = rankedProbabilityScore(present(rivals[round], 'the rival').chances, makes);
    ours += mine / outcomes.length;
    rival += other / outcomes.length;
    days.set(date, (days.get(date) ?? 0) + other - mine);
  }
  const { sum, twoSided } = signFlipTest([...days.values()].map((day) => Math.round(FINE * day)));
  return { ours, rival, reading: twoSided > 2 * LEVEL ? 'alike' : sum > 0 ? 'better' : 'worse' };
}

/** Of the chances from one count to another, both included. */
function sumOf(chances: ArrayLike<Probability>, from: number, to: number): Probability {
  let sum = 0;
  for (let k = Math.max(0, from); k <= to; k += 1) sum += at(chances, k);
  return sum;
}
