import { fitDrop } from '../../renderer/stats/model/fitDrop.ts';
import { normalCdf } from '../../renderer/stats/special.ts';
import type { Known } from './priorRecord.ts';
import { likeWithLike } from './simpleWays.ts';

/*
 * Whether a stated chance of a drop is what it says: of the shooters who were told 80 to 95 %, so many should really have a
 * drop. Only shooters drawn from the prior can tell.
 */

/** A chance that was stated, and whether there was a drop. */
interface Stated {
  readonly chance: number;
  readonly real: boolean;
}

/** Ends of the classes into which stated chances fall; the verdict's thresholds are among them. */
const ENDS = [0.05, 0.2, 0.5, 0.8, 0.95, 1] as const;

/** How far stated chances are from what came true, in points: the mean over all shooters, class by class. */
export function chancesOff(shooters: readonly Known[]): { model: number; likeWithLike: number } {
  const model = shooters.map(({ data, drops }): Stated => {
    const { index } = fitDrop(data);
    if (index.kind === 'none') throw new Error(index.reason);
    return { chance: index.overall.probability, real: meanOf(drops) > 0 };
  });
  const simple = shooters.map(({ data, drops }): Stated => {
    const { points, low, high } = likeWithLike(data, { mean: meanOf(drops), last: NaN });
    // The interval is ± 1.645 standard deviations.
    return { chance: normalCdf(points / ((high - low) / 3.29)), real: meanOf(drops) > 0 };
  });
  console.log('  stated chance of a drop: how many were told so, on average, and how many had one');
  return { model: off('model', model), likeWithLike: off('like with like', simple) };
}

function off(name: string, stated: readonly Stated[]): number {
  let sum = 0;
  let from = -Infinity;
  for (const end of ENDS) {
    const told = stated.filter(({ chance }) => chance > from && chance <= end);
    from = end;
    if (told.length === 0) continue;
    const mean = 100 * meanOf(told.map(({ chance }) => chance));
    const share = (100 * told.filter(({ real }) => real).length) / told.length;
    sum += told.length * Math.abs(share - mean);
    console.log(
      `  ${name.padEnd(15)}up to ${String(end).padEnd(5)} n ${String(told.length).padEnd(5)}` +
        `${mean.toFixed(1).padStart(5)} %  ${share.toFixed(1).padStart(5)} %`,
    );
  }
  return sum / stated.length;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
