import type { IsoDate, Probability } from '../../basics/units.ts';
import type { Change } from '../../stats/model/chokeIndex.ts';
import type { Estimate } from '../../stats/model/estimate.ts';
import { shortDayWords, yearDayWords } from '../dayWords.ts';
import { pointsWords } from '../numberWords.ts';

/** Below this a change may well be luck, see the verdict's own threshold in stats/model/verdict.ts. */
const SURE: Probability = 0.95;

/** A sentence on a change of the drop, and what goes with it. */
export interface ChangeWords {
  readonly headline: string;
  /** Null where nothing need be added. */
  readonly caution: string | null;
}

/**
 * Says how far the drop moved between two weeks, and how likely it moved that way.
 *
 * @param from Monday of the first week
 * @param to Monday of the second
 */
export function changeWords(change: Change, from: IsoDate, to: IsoDate): ChangeWords {
  const day = from.slice(0, 4) === to.slice(0, 4) ? shortDayWords : yearDayWords;
  const weeks = `From the week of ${day(from)} to the week of ${day(to)} the drop`;
  const points = Math.round(change.points);
  if (points === 0) {
    return {
      headline: `${weeks} stayed about where it was: somewhere between ${side(change.low)} and ${side(change.high)}.`,
      caution: null,
    };
  }
  const shrank = points < 0;
  const chance = shrank ? 1 - change.probability : change.probability;
  const moved = `${shrank ? 'went down' : 'went up'} by about ${pointsWords(Math.abs(points))}`;
  return {
    headline: `${weeks} ${moved}, somewhere between ${spanWords(change, shrank)}: ${chancesWords(chance)} that it ${shrank ? 'shrank' : 'grew'}.`,
    caution: chance < SURE ? 'That may still be luck.' : null,
  };
}

/** `nine chances in ten`, never surer than it is. */
export function chancesWords(chance: Probability): string {
  if (chance > 0.99) return 'more than 99 chances in 100';
  if (chance >= SURE) return `${Math.floor(100 * chance)} chances in 100`;
  return `${TENTHS[Math.round(10 * chance)] ?? 'nine'} chances in ten`;
}

const TENTHS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** What is left of the make rate under pressure. */
export function shareWords({ value, low, high }: Estimate): string {
  const of = (share: number): number => Math.round(100 * share);
  return `For every 100 makes when you are relaxed there are about ${of(value)} under pressure, somewhere between ${of(low)} and ${of(high)}.`;
}

/** The smaller end first, without a sign where both lie on one side. */
function spanWords({ low, high }: Change, shrank: boolean): string {
  const [near, far] = shrank ? [-high, -low] : [low, high];
  if (Math.round(near) >= 0) return `${Math.abs(Math.round(near))} and ${Math.round(far)}`;
  return shrank ? `${side(high)} and ${side(low)}` : `${side(low)} and ${side(high)}`;
}

function side(points: number): string {
  const whole = Math.round(points);
  if (whole === 0) return '0';
  return `${pointsWords(Math.abs(whole))} ${whole < 0 ? 'down' : 'up'}`;
}
