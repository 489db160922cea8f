import { finish } from '../basics/steps.ts';
import type { Points, Probability } from '../basics/units.ts';
import type { DropEstimate } from './drop.ts';
import { fitRoundsInSteps, type RandomRounds, type RoundShots, type RoundsFit } from './leverageFit.ts';
import { at } from './matrix.ts';
import { zFor } from './proportion.ts';
import { READING_LEVEL } from './reading.ts';
import { expit, logit, normalCdf } from './special.ts';

/*
 * Does the shot suffer when more hangs on it? Over the pressured shots of games,
 *
 *     logit p = logit(rate before the round) + a + place + γ (leverage − mean)/sd + ω · shot of the round + u_round
 *
 * with u_round ~ N(0, τ²) integrated out, γ ~ N(0, 0.15²), and half-normal(0.25) for τ, integrated over a grid.
 *
 * Leverage follows from the makes before in the same round. Given those it is fixed before the ball leaves the hand, so
 * the likelihood holds, whatever rule ends the game. An average inside the round does not: after good shots more hangs on
 * the next, and a mean that holds these shots too makes the next look poor. Effects fixed for each round, and differences
 * within it, read 3 and 2 points of loss in a streak game where nothing is lost (tests/bench/leverageBias.ts; the like in
 * Nickell, Econometrica 49:1417-1426, 1981). Hence the random effect, and never those.
 *
 * Simulated there, 120 rounds each: a true loss of 0 reads 0.2 or less, one of 5.7 points reads 5.3 (the prior takes a
 * fifteenth), with a standard deviation of 0.9 to 1; the 90 % interval holds the truth in 86 to 95 of 100.
 */

/**
 * One pressured shot of a game. Shots of one round are in the order they were taken. Those after a game was decided, on
 * which nothing hangs, may stay or go: a round may end where it will.
 */
export interface LeverageShot {
  readonly round: string;
  /** Spot and kind of shot, or any name for shots that are alike. */
  readonly place: string;
  readonly made: boolean;
  /** Worked out before the shot, from the rates before the round and the makes so far in it. */
  readonly leverage: Probability;
  /** The make rate at this place before the round, from the same ability as the leverage; above 0 and below 1. */
  readonly rate: Probability;
}

/** Points are positive = worse when more hangs on the shot. */
export interface LeverageDrop {
  /** Lost with each standard deviation of leverage, at the shooter's mean make rate. */
  readonly perSd: DropEstimate;
  /** The third of the shots on which least hangs minus the third on which most hangs, over the same places and rounds. */
  readonly mostAgainstLeast: DropEstimate;
  /** Chance that the shot is worse when more hangs on it; 0.5 before the first shot. */
  readonly probability: Probability;
  /** Standard deviation of leverage over the shots. */
  readonly sd: number;
  /** Mean leverage of the two thirds. */
  readonly least: Probability;
  readonly most: Probability;
  /** Standard deviation of good and bad rounds, log-odds. */
  readonly roundSd: number;
  readonly shots: number;
  readonly rounds: number;
}

/** Log-odds per standard deviation of leverage: about ± 4 points at a 50 % make rate. */
export const LEVERAGE_PRIOR_SD = 0.15;
/** Nothing is said from fewer shots or rounds: nearly half of the answer would be the prior's. Our own choice. */
export const LEAST_LEVERAGE = { shots: 300, rounds: 10 } as const;
/** So many of the latest shots are looked at, in whole rounds: older ones are of another shooter, as it were. */
export const MOST_LEVERAGE = 3000;
/** How far the rates under pressure may lie from those before, all together, each place by itself, and over 25 shots. */
const LEVEL_SD = 1;
const PLACE_SD = 0.3;
const ORDER_SD = 0.3;
const ORDER_UNIT = 25;
/** Values of τ that are weighed against each other. */
const ROUND_SDS = Array.from({ length: 7 }, (_, step) => 0.04 + 0.09 * step);
const ROUND_SD_SCALE = 0.25;
const NODES = 5;

/**
 * What leverage takes off, over one shooter's pressured shots of games. With few shots the prior speaks: an interval of
 * about ± 6 points around 0.
 *
 * @param level share of such intervals that hold the truth, between 0 and 1
 * @param priorSd for simulations that want to see through the prior
 * @returns null where all shots have the same leverage
 * @throws RangeError where a rate is not between 0 and 1
 */
export function leverageDrop(
  shots: readonly LeverageShot[],
  level = READING_LEVEL,
  priorSd = LEVERAGE_PRIOR_SD,
): LeverageDrop | null {
  return finish(leverageDropInSteps(shots, level, priorSd));
}

/**
 * The same in short steps.
 *
 * @yields the share of the work that is done, 0 to 1
 */
export function* leverageDropInSteps(
  shots: readonly LeverageShot[],
  level = READING_LEVEL,
  priorSd = LEVERAGE_PRIOR_SD,
): Generator<Probability, LeverageDrop | null> {
  const n = shots.length;
  const mean = shots.reduce((sum, { leverage }) => sum + leverage, 0) / n;
  const sd = Math.sqrt(shots.reduce((sum, { leverage }) => sum + (leverage - mean) ** 2, 0) / n);
  // Leverages of one value differ in their last digit at most.
  if (!(sd > 1e-9)) return null;
  const data = layOut(shots, mean, sd, priorSd);
  const { gamma, variance, beta, roundSd } = yield* overRoundSds(data);
  const reach = zFor(level) * Math.sqrt(variance);
  const within = (points: (gamma: number) => Points): DropEstimate => ({
    points: points(gamma),
    low: points(gamma + reach),
    high: points(gamma - reach),
  });
  const makes = shots.filter(({ made }) => made).length;
  const middle = logit((makes + 0.5) / (n + 1));
  const sorted = shots.map(({ leverage }) => leverage).toSorted((a, b) => a - b);
  const third = Math.max(1, Math.floor(n / 3));
  const least = meanOf(sorted.slice(0, third));
  const most = meanOf(sorted.slice(-third));
  // Everything but the leverage as it was, rounds neither good nor bad.
  const rest = data.rounds.flatMap(({ columns, offsets }) =>
    columns.map(
      (x, j) => at(offsets, j) + x.reduce((sum, one, i) => sum + (i === GAMMA ? 0 : one * at(beta, i)), 0),
    ),
  );
  const rateAt = (leverage: number, slope: number): Probability =>
    meanOf(rest.map((odds) => expit(odds + (slope * (leverage - mean)) / sd)));
  return {
    perSd: within((slope) => 100 * (expit(middle - slope / 2) - expit(middle + slope / 2))),
    mostAgainstLeast: within((slope) => 100 * (rateAt(least, slope) - rateAt(most, slope))),
    probability: normalCdf(-gamma / Math.sqrt(variance)),
    sd,
    least,
    most,
    roundSd,
    shots: n,
    rounds: data.rounds.length,
  };
}

/** Columns: the level, leverage, the shot's number, then the places where there are several. */
const GAMMA = 1;

function layOut(shots: readonly LeverageShot[], mean: number, sd: number, priorSd: number): RandomRounds {
  const places = [...new Set(shots.map(({ place }) => place))];
  const own = places.length > 1 ? places : [];
  const byRound = new Map<string, LeverageShot[]>();
  for (const shot of shots) {
    const round = byRound.get(shot.round);
    if (round) round.push(shot);
    else byRound.set(shot.round, [shot]);
  }
  const rounds = [...byRound.values()].map((round): RoundShots => ({
    columns: round.map(({ leverage, place }, number) =>
      Float64Array.from([
        1,
        (leverage - mean) / sd,
        number / ORDER_UNIT,
        ...own.map((one) => (one === place ? 1 : 0)),
      ]),
    ),
    offsets: Float64Array.from(round, ({ rate }) => logit(rate)),
    made: Uint8Array.from(round, ({ made }) => (made ? 1 : 0)),
  }));
  return { rounds, priorSds: [LEVEL_SD, priorSd, ORDER_SD, ...own.map(() => PLACE_SD)] };
}

/** γ with the spread of rounds integrated over its grid; the rest of β at its mean. */
function* overRoundSds(
  data: RandomRounds,
): Generator<Probability, { gamma: number; variance: number; beta: Float64Array; roundSd: number }> {
  const fits: (RoundsFit & { tau: number })[] = [];
  for (const tau of ROUND_SDS) {
    const steps = fitRoundsInSteps(data, tau, NODES, fits.at(-1)?.beta);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield fits.length / ROUND_SDS.length;
    fits.push({ ...step.value, tau });
  }
  const logs = fits.map(({ logEvidence, tau }) => logEvidence - (tau / ROUND_SD_SCALE) ** 2 / 2);
  const best = Math.max(...logs);
  const raw = logs.map((log) => Math.exp(log - best));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const over = (of: (fit: RoundsFit & { tau: number }) => number): number =>
    fits.reduce((sum, fit, i) => sum + (at(raw, i) / total) * of(fit), 0);
  const beta = Float64Array.from(data.priorSds, (_, i) => over((fit) => at(fit.beta, i)));
  const gamma = at(beta, GAMMA);
  const diagonal = GAMMA * (data.priorSds.length + 1);
  const variance = over((fit) => at(fit.covariance.values, diagonal) + (at(fit.beta, GAMMA) - gamma) ** 2);
  return { gamma, variance, beta, roundSd: over(({ tau }) => tau) };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
