import { fileURLToPath } from 'node:url';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { coinChance, doubleBallDrop } from '../../renderer/stats/doubleBall.ts';
import { type LeverageDrop, leverageDrop, type LeverageShot } from '../../renderer/stats/leverage.ts';
import { byRound, type LeverageWorld, playLeverage, scaleFor, scaleOf } from './leverageWorld.ts';

/*
 * What ways of reading leverage make of simulated shooters of known truth. Points are lost with each standard deviation of
 * leverage: positive = worse when more hangs on the shot. Usage: npx tsx tests/bench/leverageBias.ts [data sets]
 */

/** A way of reading; points for each standard deviation. */
type Way = (shots: readonly LeverageShot[]) => number;

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const rateOf = (shots: readonly LeverageShot[]): number => meanOf(shots.map(({ made }) => (made ? 1 : 0)));

/** Least against most, all rounds thrown together: the third of least leverage minus that of most. */
const thirds: Way = (shots) => {
  const sorted = shots.toSorted((a, b) => a.leverage - b.leverage);
  const third = Math.floor(shots.length / 3);
  return 100 * (rateOf(sorted.slice(0, third)) - rateOf(sorted.slice(-third)));
};

/** In each round the lower half minus the upper half of leverage, averaged over the rounds. */
const withinRounds: Way = (shots) =>
  100 *
  meanOf(
    byRound(shots).flatMap((round) => {
      const middle = meanOf(round.map(({ leverage }) => leverage));
      const low = round.filter(({ leverage }) => leverage < middle);
      const high = round.filter(({ leverage }) => leverage >= middle);
      return low.length > 0 && high.length > 0 ? [rateOf(low) - rateOf(high)] : [];
    }),
  );

/** Least squares with an effect fixed for each round. */
const fixedEffects: Way = (shots) => {
  let [together, spread] = [0, 0];
  for (const round of byRound(shots)) {
    const middle = meanOf(round.map(({ leverage }) => leverage));
    const rate = rateOf(round);
    for (const { leverage, made } of round) {
      together += (leverage - middle) * ((made ? 1 : 0) - rate);
      spread += (leverage - middle) ** 2;
    }
  }
  return (-100 * scaleOf(shots).sd * together) / spread;
};

/** Figures of one world over many data sets. */
export interface LeverageBias {
  /** Points a standard deviation, the truth in these data: the spread of leverage depends a little on the play. */
  readonly truth: number;
  readonly thirds: number;
  readonly withinRounds: number;
  readonly fixedEffects: number;
  /** Ours, with its prior. */
  readonly ours: number;
  /** Ours without the prior. */
  readonly bare: number;
  /** Standard deviation of `ours` over the data sets, and its own mean claim. */
  readonly sd: number;
  readonly claimed: number;
  /** Share of 90 % intervals that hold the truth, with the prior and without. */
  readonly cover: number;
  readonly bareCover: number;
  /** Share in which the chance that the shot suffers is above 95 %. */
  readonly calls: number;
}

/** A prior so wide that it says nothing. */
const NO_PRIOR = 5;
const LEVEL = 0.9;

export function leverageBias(world: LeverageWorld, sets: number, seed: number): LeverageBias {
  const rng = rngFromSeed(seed);
  const scale = scaleFor(world.game, rngFromSeed(5));
  const rows = Array.from({ length: sets }, () => {
    const shots = playLeverage(world, scale, rng);
    const ours = told(leverageDrop(shots, LEVEL));
    const bare = told(leverageDrop(shots, LEVEL, NO_PRIOR));
    // A make rate of one half, so half a standard deviation to each side.
    const slope = (world.perSd * scaleOf(shots).sd) / scale.sd;
    const truth = 100 * (2 / (1 + Math.exp(-slope / 2)) - 1);
    return { shots, ours, bare, truth };
  });
  const points = rows.map(({ ours }) => ours.perSd.points);
  const mean = meanOf(points);
  return {
    truth: meanOf(rows.map(({ truth }) => truth)),
    thirds: meanOf(rows.map(({ shots }) => thirds(shots))),
    withinRounds: meanOf(rows.map(({ shots }) => withinRounds(shots))),
    fixedEffects: meanOf(rows.map(({ shots }) => fixedEffects(shots))),
    ours: mean,
    bare: meanOf(rows.map(({ bare }) => bare.perSd.points)),
    sd: Math.sqrt(meanOf(points.map((one) => (one - mean) ** 2))),
    claimed: meanOf(rows.map(({ ours: { perSd } }) => (perSd.high - perSd.low) / 2 / 1.645)),
    cover: meanOf(rows.map(({ ours, truth }) => held(ours, truth))),
    bareCover: meanOf(rows.map(({ bare, truth }) => held(bare, truth))),
    calls: meanOf(rows.map(({ ours }) => (ours.probability > 0.95 ? 1 : 0))),
  };
}

function told(drop: LeverageDrop | null): LeverageDrop {
  if (!drop) throw new Error('leverage that does not vary');
  return drop;
}

function held({ perSd }: LeverageDrop, truth: number): number {
  return perSd.low <= truth && truth <= perSd.high ? 1 : 0;
}

export interface CoinBias {
  readonly points: number;
  readonly sd: number;
  readonly calls: number;
}

/** Double balls by coin instead: 120 rounds of 25, one in five double, a cost of 0.25 log-odds or none. */
export function coinBias(cost: number, roundSd: number, sets: number, seed: number): CoinBias {
  const rng = rngFromSeed(seed);
  const rows = Array.from({ length: sets }, () => {
    const balls = Array.from({ length: 120 }, () => {
      const luck = roundSd * rng.normal();
      return Array.from({ length: 25 }, (_, ball) => {
        const double = rng.chance(0.2);
        const rate = 1 / (1 + Math.exp((double ? cost : 0) - luck));
        return { stop: `${Math.floor(ball / 5)}`, made: rng.chance(rate), double };
      });
    }).flat();
    return { points: doubleBallDrop(balls, LEVEL)?.points ?? NaN, p: coinChance(balls).worse };
  });
  const points = rows.map((row) => row.points);
  const mean = meanOf(points);
  return {
    points: mean,
    sd: Math.sqrt(meanOf(points.map((one) => (one - mean) ** 2))),
    calls: meanOf(rows.map(({ p }) => (p <= 0.05 ? 1 : 0))),
  };
}

/** Prints every world. */
export function printLeverageBias(sets: number): void {
  console.log(`Points lost for each standard deviation of leverage; ${sets} data sets of 120 rounds each`);
  console.log(
    'game    round sd  tires  truth  thirds  within  fixed   ours  no prior     sd  claimed  cover  no prior  calls',
  );
  for (const game of ['reach', 'streak'] as const) {
    for (const perSd of [0, 0.25]) {
      for (const [roundSd, tires] of [
        [0, 0],
        [0.3, 0],
        [0.3, 0.3],
      ] as const) {
        const one = leverageBias({ game, rounds: 120, perSd, roundSd, tires }, sets, 11);
        const percent = (share: number): string => `${Math.round(100 * share)} %`;
        const cells: [string, number][] = [
          [one.truth.toFixed(1), 7],
          [one.thirds.toFixed(1), 8],
          [one.withinRounds.toFixed(1), 8],
          [one.fixedEffects.toFixed(1), 7],
          [one.ours.toFixed(1), 7],
          [one.bare.toFixed(1), 10],
          [one.sd.toFixed(2), 7],
          [one.claimed.toFixed(2), 9],
          [percent(one.cover), 7],
          [percent(one.bareCover), 10],
          [percent(one.calls), 7],
        ];
        const world = `${game.padEnd(8)}${String(roundSd).padEnd(10)}${String(tires).padEnd(5)}`;
        console.log(world + cells.map(([text, width]) => text.padStart(width)).join(''));
      }
    }
  }
  console.log('\nDouble balls drawn by coin, one in five: single minus double make rate, points');
  for (const cost of [0, 0.25]) {
    for (const roundSd of [0, 0.3]) {
      const { points, sd, calls } = coinBias(cost, roundSd, sets, 12);
      console.log(
        `cost ${cost} log-odds, round sd ${roundSd}: ${points.toFixed(1)}, sd ${sd.toFixed(2)}, ` +
          `p at most 0.05 in ${Math.round(100 * calls)} %`,
      );
    }
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) printLeverageBias(Number(process.argv[2] ?? 200));
