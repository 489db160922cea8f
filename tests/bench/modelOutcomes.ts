import { present } from '../../renderer/basics/invariant.ts';
import { at, cholesky, type Matrix, zeros } from '../../renderer/stats/matrix.ts';
import { designOf } from '../../renderer/stats/model/design.ts';
import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { unknowns } from '../stats/model/dense.ts';
import { fitStatic } from '../stats/model/staticModel.ts';
import { REPEATS } from './deskSpeed.ts';
import type { DeskUsed } from './modelProbe.ts';
import { measureModel } from './modelProcess.ts';
import { hasR, type Rivals, runR } from './modelRivals.ts';
import type { Timing } from './modelSpeed.ts';
import type { Outcome } from './outcome.ts';

/*
 * The choke index of five years of single shots: how fast, how it grows, how much memory. Beside lme4 and mgcv on the same
 * cells where R is there; their models are smaller, with independent weeks, no free order curve and no averaging over the
 * spreads. Where R is not there, beside one single step of one single fit with a dense matrix, of which a fit without the
 * model's block structure would need some two hundred.
 */

const LENGTHS = [4, 13, 26, 52, 104, 260] as const;

/**
 * The benchmark `model`.
 *
 * @param named lme4's fit takes minutes, so it is run only where the benchmark was asked for by name
 */
export async function modelOutcomes(named: boolean): Promise<Outcome[]> {
  const { timings, data, fit, without, desk } = await measureModel(LENGTHS);
  const five = timingOf(timings, 260);
  const rivals = hasR() ? runR(data, named ? ['bam', 'glmer', 'glmer-full'] : ['bam']) : null;
  if (!rivals) console.log('  Rscript with lme4, mgcv and jsonlite is not here; a dense step stands in.');
  const bam = rivals && { what: 'mgcv bam, discrete', figure: present(rivals.bam, 'bam').seconds };
  const n = `best of 3, ${five.shots} shots`;
  return [
    {
      what: `choke index, full fit of ${five.weeks} weeks`,
      unit: 's',
      figure: five.full,
      rival: bam ?? { what: 'one dense Newton step', figure: denseStep(unknowns(designOf(data))) },
      n,
      limit: { on: 'figure', most: 3, by: 'agreed' },
    },
    {
      what: 'the same in a new process, nothing warmed up',
      unit: 's',
      figure: fit.seconds,
      rival: { what: 'warmed up', figure: five.full },
      n,
      limit: { on: 'figure', most: 3, by: 'agreed' },
    },
    {
      what: 'choke index alone, refit on cells that are ready',
      unit: 's',
      figure: five.refit,
      rival: { what: 'the full fit', figure: five.full },
      n,
      limit: null,
    },
    ...deskOutcomes(desk),
    {
      what: 'a week of a full fit of 260 weeks',
      unit: 'ms',
      figure: perWeek(five),
      rival: { what: 'of 52 weeks', figure: perWeek(timingOf(timings, 52)) },
      n: 'best of 3 each',
      limit: { on: 'ratio', most: 2, by: 'own' },
    },
    {
      what: 'memory of a process that only fits, at its highest',
      unit: 'MB',
      figure: fit.megabytes,
      rival: { what: 'without the fit', figure: without.megabytes },
      n: 'most of 3',
      limit: { on: 'figure', most: 300, by: 'agreed' },
    },
    ...(rivals ? againstR(data, five, rivals) : []),
  ];
}

/** The whole answer of the worker after a round, from the rounds on: five years in pairs, 249,600 shots. */
function deskOutcomes(desk: DeskUsed): Outcome[] {
  console.log(
    `  The worker, in seconds that it was running: first study ${desk.first.toFixed(2)}, thorough ${desk.thorough.toFixed(2)}, ` +
      `quick ${desk.quick.toFixed(2)} at best and ${desk.usual.toFixed(2)} in the middle of ${REPEATS}.`,
  );
  return [
    {
      what: 'the whole study in the worker after one more round, all shots in pairs',
      unit: 's',
      figure: desk.quick,
      rival: { what: 'a thorough one', figure: desk.thorough },
      n: `best of ${REPEATS}, running time`,
      limit: { on: 'figure', most: 0.4, by: 'agreed' },
    },
    {
      what: 'longest time in which a thorough study hears no question',
      unit: 's',
      figure: desk.deaf,
      rival: { what: 'the whole of it', figure: desk.thorough },
      n: '1, running time',
      limit: { on: 'figure', most: 0.4, by: 'own' },
    },
    {
      what: 'memory of the worker at its highest, 10,400 rounds in it',
      unit: 'MB',
      figure: desk.megabytes,
      rival: { what: 'told of the rounds, before any study', figure: desk.told },
      n: '1',
      limit: { on: 'figure', most: 300, by: 'agreed' },
    },
  ];
}

function againstR(data: ModelData, { full }: Timing, rivals: Rivals): Outcome[] {
  const { R, lme4, mgcv } = rivals.versions;
  console.log(`  ${R}, lme4 ${lme4}, mgcv ${mgcv}, on the same ${data.cells.count} cells`);
  const against = (what: string, { seconds }: { seconds: number }, most: number | null): Outcome => ({
    what: `choke index, full fit, against ${what}`,
    unit: 's',
    figure: full,
    rival: { what, figure: seconds },
    n: '1',
    limit: most === null ? null : { on: 'ratio', most, by: 'agreed' },
  });
  const { bam, glmer, glmerFull } = rivals;
  return [
    against('mgcv bam', present(bam, 'bam'), 1),
    // Four spreads, as the index has them; with one it is a smaller question.
    ...(glmerFull ? [against('lme4 glmer, nAGQ = 1', glmerFull, 1 / 50)] : []),
    ...(glmer ? [against('glmer of days alone', glmer, null), sameAnswer(data, glmer)] : []),
  ];
}

/** The part of the model that glmer knows too must come to the same pressure effect. */
function sameAnswer(data: ModelData, { estimate, se, daySd }: NonNullable<Rivals['glmer']>): Outcome {
  const ours = fitStatic(data, daySd).estimate['pressured'] ?? NaN;
  return {
    what: 'pressure effect, away from glmer’s',
    unit: 'log-odds',
    figure: Math.abs(ours - (estimate['pressured'] ?? NaN)),
    rival: { what: 'its standard error', figure: se['pressured'] ?? NaN },
    n: '1',
    limit: { on: 'ratio', most: 0.15, by: 'own' },
  };
}

function timingOf(timings: readonly Timing[], wanted: number): Timing {
  return present(
    timings.find(({ weeks }) => weeks === wanted),
    `${wanted} weeks`,
  );
}

function perWeek({ full, weeks }: Timing): number {
  return (1000 * full) / weeks;
}

/** Seconds to factor one dense matrix of this size, without making it. */
function denseStep(size: number): number {
  const matrix: Matrix = zeros(size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) matrix.values[i * size + j] = i === j ? size : 0.5;
  }
  const start = performance.now();
  const lower = cholesky(matrix);
  const seconds = (performance.now() - start) / 1000;
  if (!(at(lower.values, 0) > 0)) throw new Error('no factor');
  return seconds;
}
