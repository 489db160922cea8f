import { fileURLToPath } from 'node:url';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Condition } from '../../renderer/log/events.ts';
import type { DesignOptions } from '../../renderer/stats/model/design.ts';
import { fitDrop } from '../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import {
  FREE_THROW_MIX,
  PLAIN,
  play,
  pressureFor,
  RELAXED_MIX,
  THREE_MIX,
  type World,
} from './modelWorld.ts';
import { type Known, priorRecord } from './priorRecord.ts';

/*
 * How honest the index is, by simulated shooters whose true drop is known: how often its 90 % interval holds the truth, how
 * far its mean is off, and how often it calls a drop, P(drop > 0) > 0.95.
 */

/** Sums over the simulated shooters. Points. */
export interface Honesty {
  readonly replicates: number;
  /** Share of 90 % intervals that hold the truth: over the whole span, and for the change from first to last week. */
  readonly cover: number;
  readonly changeCover: number;
  readonly bias: number;
  readonly rmse: number;
  readonly calls: number;
  /** Mean of squared errors over squared standard deviations; 1 where the spread is honest. */
  readonly squares: number;
}

export interface Scenario {
  readonly name: string;
  readonly record: (rng: Rng) => Known;
}

const R: Condition = 'relaxed';
const P: Condition = 'pressured';

/** Six relaxed rounds, then on four days of five two pressured ones: pressure always comes when legs are tired. */
const casual = (rng: Rng): Condition[] =>
  rng.chance(0.8) ? [R, R, R, R, R, R, P, P] : [R, R, R, R, R, R, R, R];

/** Pairs in random order among relaxed rounds. */
const paired = (rng: Rng): Condition[] => {
  const pair = (): Condition[] => (rng.chance(0.5) ? [R, P] : [P, R]);
  return [R, ...pair(), R, R, ...pair(), R];
};

const steady = (points: number, weeks: number): World => ({
  ...PLAIN,
  weeks,
  plan: casual,
  pressuredMix: FREE_THROW_MIX,
  pressure: (week: number) => pressureFor(points, (0.4 * week) / 26),
});

const odd = (shot: number): number =>
  -0.5 * Math.max(0, 1 - shot / 40) - 0.5 * (Math.max(0, shot - 80) / 100) ** 2;

function played(world: World): Scenario['record'] {
  return (rng) => {
    const { rounds, drops } = play(world, rng);
    return { data: modelData(rounds), drops };
  };
}

/** The scenarios of the model's design: confounded by mix and order, drifting, noisy, and well designed. */
export const SCENARIOS: readonly Scenario[] = [
  { name: 'truth from the prior, 4 weeks', record: priorRecord },
  { name: 'casual, 4 weeks, drop 0', record: played(steady(0, 4)) },
  { name: 'casual, 12 weeks, drop 0', record: played(steady(0, 12)) },
  { name: 'casual, 12 weeks, drop 5', record: played(steady(5, 12)) },
  { name: 'casual, 12 weeks, drop 10', record: played(steady(10, 12)) },
  {
    name: 'pressured rounds three-heavy, drop 5',
    record: played({ ...steady(5, 12), pressuredMix: THREE_MIX }),
  },
  {
    name: 'drop drifts from 12 to 2, 12 weeks',
    record: played({
      ...steady(0, 12),
      pressure: (week: number) => pressureFor(12 - (10 * week) / 11, (0.4 * week) / 26),
    }),
  },
  { name: 'rounds noisy, drop 5', record: played({ ...steady(5, 12), roundSd: 0.2 }) },
  {
    // A curve that warm and tired cannot follow.
    name: 'odd order curve, pressure last, same mix, drop 0',
    record: played({ ...steady(0, 12), pressuredMix: RELAXED_MIX, order: odd }),
  },
  {
    name: 'odd order curve, pairs in random order, drop 0',
    record: played({ ...steady(0, 12), plan: paired, pressuredMix: RELAXED_MIX, order: odd }),
  },
  {
    name: 'pairs in random order, same mix, drop 5',
    record: played({ ...steady(5, 12), plan: paired, pressuredMix: RELAXED_MIX }),
  },
];

/** Simulates one scenario. */
export function honestyOf(
  { record }: Scenario,
  replicates: number,
  seed: number,
  design: Partial<DesignOptions> = {},
): Honesty {
  let [held, changeHeld, error, square, calls, squares] = [0, 0, 0, 0, 0, 0];
  for (let replicate = 0; replicate < replicates; replicate += 1) {
    const rng = rngFromSeed(seed + replicate);
    const { data, drops } = record(rng);
    const { index } = fitDrop(data, { design });
    if (index.kind === 'none') throw new Error(`no index: ${index.reason}`);
    const truth = drops.reduce((sum, drop) => sum + drop, 0) / drops.length;
    const { points, low, high, sd, probability } = index.overall;
    if (low <= truth && truth <= high) held += 1;
    const moved = (drops.at(-1) ?? NaN) - (drops[0] ?? NaN);
    if (index.change && index.change.low <= moved && moved <= index.change.high) changeHeld += 1;
    error += points - truth;
    square += (points - truth) ** 2;
    squares += ((points - truth) / sd) ** 2;
    if (probability > 0.95) calls += 1;
  }
  return {
    replicates,
    cover: held / replicates,
    changeCover: changeHeld / replicates,
    bias: error / replicates,
    rmse: Math.sqrt(square / replicates),
    calls: calls / replicates,
    squares: squares / replicates,
  };
}

/** Prints every scenario, with parts of the model switched if wished. */
export function run(replicates: number, scenarios = SCENARIOS, design: Partial<DesignOptions> = {}): void {
  console.log(`90 % intervals of the choke index, ${replicates} simulated shooters each`);
  console.log('                                            cover  change  bias   RMSE   calls  z²');
  for (const scenario of scenarios) {
    const { cover, changeCover, bias, rmse, calls, squares } = honestyOf(scenario, replicates, 1000, design);
    const percent = (share: number): string => `${(100 * share).toFixed(1)}%`.padEnd(7);
    console.log(
      `${scenario.name.padEnd(44)}${percent(cover)}${percent(changeCover)} ${bias.toFixed(2).padEnd(7)}` +
        `${rmse.toFixed(2).padEnd(7)}${percent(calls)}${squares.toFixed(2)}`,
    );
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const only = process.argv[3];
  run(
    Number(process.argv[2] ?? 400),
    SCENARIOS.filter(({ name }) => !only || name.includes(only)),
  );
}
