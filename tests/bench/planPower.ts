import { fileURLToPath } from 'node:url';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { fitDrop } from '../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { chanceToShow, type Plan } from '../../renderer/stats/planning.ts';
import type { PlanOrder } from '../../renderer/stats/showing.ts';
import { type Mix, PLAIN, play, pressureFor, RELAXED_MIX } from './modelWorld.ts';

/*
 * Whether plans keep what they promise: simulated shooters with a true drop train as planned, the model reads their
 * record, and the share of them in which it is more than 95 % sure of a drop stands beside the promised chance. Relaxed
 * rounds are of 25 shots; the make rate is about one half; days differ by 0.25 and answer to pressure by 0.05.
 */

/** Four sessions a week. */
export interface Trial {
  readonly points: number;
  readonly weeks: number;
  readonly order: PlanOrder;
  /** Shots of a pressured round. */
  readonly round: number;
  /** Of a session with pressure; 1 unless told. */
  readonly pairs?: number;
  /** None but those of the pairs where 0; else a session has four relaxed rounds. */
  readonly relaxed?: 0;
  /** Sessions of the week with pressure; all four unless told. */
  readonly sessions?: readonly number[];
}

const ONE_DAY = { order: 'own-day', sessions: [3] } as const;

/** The spans and sizes of our design study, and some that it left out. */
export const TRIALS: readonly Trial[] = [
  { points: 10, weeks: 1, order: 'pairs', round: 25 },
  { points: 10, weeks: 1, order: 'pairs', round: 25, pairs: 4, relaxed: 0 },
  { points: 10, weeks: 2, order: 'pairs', round: 25 },
  { points: 10, weeks: 4, order: 'pairs', round: 10 },
  { points: 10, weeks: 4, order: 'pairs', round: 13 },
  { points: 10, weeks: 4, order: 'pairs', round: 15 },
  { points: 10, weeks: 4, order: 'pairs', round: 10, pairs: 2 },
  { points: 10, weeks: 4, order: 'pairs', round: 25, relaxed: 0 },
  { points: 10, weeks: 8, order: 'pairs', round: 6 },
  { points: 10, weeks: 8, order: 'pairs', round: 8 },
  { points: 10, weeks: 8, order: 'pairs', round: 12, sessions: [0, 2] },
  { points: 10, weeks: 12, order: 'pairs', round: 8, sessions: [0, 2] },
  { points: 10, weeks: 12, order: 'pairs', round: 10, sessions: [0, 2] },
  { points: 5, weeks: 8, order: 'pairs', round: 20 },
  { points: 5, weeks: 8, order: 'pairs', round: 30 },
  { points: 5, weeks: 12, order: 'pairs', round: 20 },
  { points: 5, weeks: 12, order: 'pairs', round: 10, pairs: 2 },
  { points: 10, weeks: 4, round: 60, ...ONE_DAY },
  { points: 10, weeks: 4, round: 120, ...ONE_DAY },
  { points: 10, weeks: 8, round: 25, ...ONE_DAY },
  { points: 10, weeks: 8, round: 35, ...ONE_DAY },
  { points: 10, weeks: 12, round: 32, ...ONE_DAY },
  { points: 10, weeks: 4, order: 'last', round: 15 },
  { points: 10, weeks: 8, order: 'last', round: 6 },
  { points: 10, weeks: 8, order: 'last', round: 10 },
];

const SESSIONS = 4;
const RELAXED_ROUND = 25;

/** What the planner is told of a trial. */
export function planOfTrial({ points, weeks, order, round, pairs = 1, relaxed, sessions }: Trial): Plan {
  const days = sessions?.length ?? SESSIONS;
  const rounds = relaxed === 0 ? pairs : 4;
  const relaxedDays = order === 'own-day' ? SESSIONS - days : SESSIONS;
  return {
    points,
    weeks,
    order,
    habit: {
      sessionsPerWeek: SESSIONS,
      relaxedPerWeek: relaxedDays * rounds * RELAXED_ROUND,
      pressuredPerWeek: days * pairs * round,
      relaxedRate: 0.5,
    },
  };
}

/** Share of simulated shooters in whom the drop shows. */
export function powerOf(trial: Trial, replicates: number, seed: number): number {
  const world = {
    ...PLAIN,
    weeks: trial.weeks,
    sessions: SESSIONS,
    plan: (rng: Rng, session: number) => roundsOf(trial, rng, session),
    relaxedMix: RELAXED_MIX,
    pressuredMix: mixOf(trial.round),
    pressure: (week: number) => pressureFor(trial.points, (PLAIN.skillRise * week) / 26),
  };
  let shown = 0;
  for (let replicate = 0; replicate < replicates; replicate += 1) {
    const { rounds } = play(world, rngFromSeed(seed + replicate));
    const { index } = fitDrop(modelData(rounds));
    if (index.kind === 'none') throw new Error(`no index: ${index.reason}`);
    if (index.overall.probability > 0.95) shown += 1;
  }
  return shown / replicates;
}

const R: Condition = 'relaxed';
const P: Condition = 'pressured';

/** The first relaxed round warms up, then come the pairs, then what is left of four relaxed rounds. */
function roundsOf({ order, pairs = 1, relaxed, sessions }: Trial, rng: Rng, session: number): Condition[] {
  const pressure = sessions?.includes(session) ?? true;
  if (order === 'own-day') return pressure ? [P] : [R, R, R, R];
  if (!pressure) return [R, R, R, R];
  if (order === 'last') return [R, R, R, R, P];
  const both = Array.from({ length: pairs }, () => (rng.chance(0.5) ? [R, P] : [P, R])).flat();
  return relaxed === 0 ? both : [R, ...both, ...Array.from({ length: 3 - pairs }, () => R)];
}

/** The relaxed mix in a round of another length, by largest remainders. */
function mixOf(shots: number): Mix {
  const all = RELAXED_MIX.reduce((sum, one) => sum + one, 0);
  const wanted = RELAXED_MIX.map((one) => (one * shots) / all);
  const mix = wanted.map(Math.floor);
  const left = shots - mix.reduce((sum, one) => sum + one, 0);
  const byRemainder = wanted
    .map((one, target) => ({ target, rest: one - Math.floor(one) }))
    .toSorted((a, b) => b.rest - a.rest);
  for (const { target } of byRemainder.slice(0, left)) mix[target] = (mix[target] ?? 0) + 1;
  return mix;
}

/** Prints every trial. */
export function run(replicates: number, trials = TRIALS): void {
  console.log(`Promised and simulated chance that a drop shows, ${replicates} simulated shooters each`);
  console.log('order    points  weeks  relaxed  pressured a week  promised  simulated');
  for (const trial of trials) {
    const plan = planOfTrial(trial);
    const { relaxedPerWeek, pressuredPerWeek } = plan.habit;
    const percent = (share: number): string => `${Math.round(100 * share)} %`;
    console.log(
      [
        plan.order.padEnd(9),
        String(plan.points).padEnd(8),
        String(plan.weeks).padEnd(7),
        String(relaxedPerWeek).padEnd(9),
        String(pressuredPerWeek).padEnd(18),
        percent(chanceToShow(plan)).padEnd(10),
        percent(powerOf(trial, replicates, 5000)),
      ].join(''),
    );
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const only = process.argv[3];
  run(
    Number(process.argv[2] ?? 300),
    TRIALS.filter(({ order }) => !only || order === only),
  );
}
