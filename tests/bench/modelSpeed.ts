import { fileURLToPath } from 'node:url';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Condition } from '../../renderer/log/events.ts';
import type { ChokeIndex } from '../../renderer/stats/model/chokeIndex.ts';
import { fitDrop, type FitOptions } from '../../renderer/stats/model/fitDrop.ts';
import { type ModelData, modelData } from '../../renderer/stats/model/modelData.ts';
import { hasR, runR } from './modelRivals.ts';
import { PLAIN, play } from './modelWorld.ts';

/*
 * How long the choke index takes: the full fit, the refit after a round, and R's lme4 and mgcv on the same cells in the
 * same run. Five years of single shots, 240 a session, four sessions a week: 249,600 shots. The rivals' models are
 * smaller: independent weeks, no averaging over the spreads, no order knots.
 */

/** Seconds and bytes. */
export interface Timing {
  readonly weeks: number;
  readonly shots: number;
  readonly cells: number;
  readonly data: number;
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

function fitted(data: ModelData, options: FitOptions): { index: ChokeIndex; seconds: number } {
  const start = performance.now();
  const { index } = fitDrop(data, options);
  if (index.kind === 'none') throw new Error(index.reason);
  return { index, seconds: (performance.now() - start) / 1000 };
}

/** Times one length of record. The refit is the best of three: it comes after every round, so never cold. */
export function time(weeks: number): { timing: Timing; data: ModelData } {
  const data = record(weeks);
  const { index, seconds: full } = fitted(data, {});
  const refits = [1, 2, 3].map(() => fitted(data, { hyper: index.hyper.mean }).seconds);
  const shots = data.cells.attempts.reduce((sum, attempts) => sum + attempts, 0);
  const timing = {
    weeks,
    shots,
    cells: data.cells.count,
    data: data.seconds,
    full,
    refit: Math.min(...refits),
  };
  return { timing, data };
}

/** Prints the growth table and, where R is there, the rivals. */
export function run(lengths: readonly number[] = [4, 13, 26, 52, 104, 260], rivals = true): void {
  console.log('weeks  shots    cells   data s  full s  full s/week  refit s');
  let last: ReturnType<typeof time> | null = null;
  for (const weeks of lengths) {
    last = time(weeks);
    const { shots, cells, data, full, refit } = last.timing;
    console.log(
      `${String(weeks).padEnd(7)}${String(shots).padEnd(9)}${String(cells).padEnd(8)}${data.toFixed(2).padEnd(8)}` +
        `${full.toFixed(2).padEnd(8)}${(full / weeks).toFixed(4).padEnd(13)}${refit.toFixed(3)}`,
    );
  }
  const peak = process.resourceUsage().maxRSS / 1024;
  console.log(`Memory at its highest, simulated log included: ${peak.toFixed(0)} MB`);
  if (!last || !rivals) return;
  if (!hasR()) {
    console.log('Rscript with lme4, mgcv and jsonlite is not here: no rival was timed.');
    return;
  }
  const { full } = last.timing;
  const { glmer, glmerFull, bam, versions } = runR(last.data, ['glmer', 'glmer-full', 'bam']);
  const line = (name: string, seconds: number | undefined): void => {
    if (seconds !== undefined)
      console.log(`${name.padEnd(44)}${seconds.toFixed(1).padEnd(8)}x ${(seconds / full).toFixed(1)}`);
  };
  console.log(`On the same cells, seconds and how many times the full fit (${JSON.stringify(versions)}):`);
  line('lme4 glmer nAGQ = 1, (1 | day)', glmer?.seconds);
  line('lme4 glmer nAGQ = 1, four spreads', glmerFull?.seconds);
  line('mgcv bam, discrete', bam?.seconds);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) run();
