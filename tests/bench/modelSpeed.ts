import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Condition } from '../../renderer/log/events.ts';
import type { ChokeIndex } from '../../renderer/stats/model/chokeIndex.ts';
import { fitDrop, type FitOptions } from '../../renderer/stats/model/fitDrop.ts';
import { type ModelData, modelData } from '../../renderer/stats/model/modelData.ts';
import { PLAIN, play } from './modelWorld.ts';

/*
 * How long the choke index takes: the full fit, and the refit after a round. 240 single shots a session, four sessions a
 * week: 249,600 shots in five years.
 */

/** Seconds. */
export interface Timing {
  readonly weeks: number;
  readonly shots: number;
  readonly cells: number;
  /** From rounds to cells. */
  readonly data: number;
  /** Best of three, and so is the refit: what else the machine does is not their cost. */
  readonly full: number;
  readonly refit: number;
}

const PLAN: readonly Condition[] = Array.from({ length: 10 }, (_, i) =>
  i === 4 || i === 8 ? 'pressured' : 'relaxed',
);

function record(weeks: number): ModelData & { readonly seconds: number } {
  const world = {
    ...PLAIN,
    weeks,
    singly: true,
    skillRise: 0.1,
    plan: () => PLAN,
    relaxedMix: [3, 3, 3, 3, 3, 3, 2, 4],
    pressuredMix: [2, 2, 2, 2, 2, 1, 2, 11],
    pressure: () => -0.35,
  };
  const { rounds } = play(world, rngFromSeed(1));
  const start = performance.now();
  return { ...modelData(rounds), seconds: (performance.now() - start) / 1000 };
}

/** An index and the seconds it took. */
export function fitted(data: ModelData, options: FitOptions): { index: ChokeIndex; seconds: number } {
  const start = performance.now();
  const { index } = fitDrop(data, options);
  if (index.kind === 'none') throw new Error(index.reason);
  return { index, seconds: (performance.now() - start) / 1000 };
}

function time(weeks: number): { timing: Timing; data: ModelData } {
  const data = record(weeks);
  const fulls = [1, 2, 3].map(() => fitted(data, {}));
  const hyper = present(fulls[0], 'a fit').index.hyper.mean;
  const refits = [1, 2, 3].map(() => fitted(data, { hyper }).seconds);
  const shots = data.cells.attempts.reduce((sum, attempts) => sum + attempts, 0);
  const timing = {
    weeks,
    shots,
    cells: data.cells.count,
    data: data.seconds,
    full: Math.min(...fulls.map(({ seconds }) => seconds)),
    refit: Math.min(...refits),
  };
  return { timing, data };
}

/** Timings of some lengths of record, and the cells of the last. */
export interface Grown {
  readonly timings: readonly Timing[];
  readonly data: ModelData;
}

/** Times records of these lengths, shortest first, and prints the table. */
export function growth(lengths: readonly number[]): Grown {
  console.log('weeks  shots    cells   cells s  full fit s  s/week  refit s');
  const timings: Timing[] = [];
  let last: ModelData | null = null;
  for (const weeks of lengths) {
    const { timing, data } = time(weeks);
    timings.push(timing);
    last = data;
    const { shots, cells, full, refit } = timing;
    console.log(
      `${String(weeks).padEnd(7)}${String(shots).padEnd(9)}${String(cells).padEnd(8)}` +
        `${timing.data.toFixed(2).padEnd(9)}${full.toFixed(2).padEnd(12)}${(full / weeks).toFixed(4).padEnd(8)}` +
        refit.toFixed(3),
    );
  }
  return { timings, data: present(last, 'a length') };
}
