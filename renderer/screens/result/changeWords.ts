import type { IsoDate, Probability } from '../../basics/units.ts';
import type { Change } from '../../stats/model/chokeIndex.ts';
import type { Estimate } from '../../stats/model/estimate.ts';
import { shortDayWords, yearDayWords } from '../dayWords.ts';
import { LIKELY } from '../../store/fixedNumbers.ts';
import { endWords, pointsWords, withPoints } from '../numberWords.ts';

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
      headline: `${weeks} stayed about where it was: somewhere between ${sides(change).join(' and ')}.`,
      caution: null,
    };
  }
  const shrank = points < 0;
  const chance = shrank ? 1 - change.probability : change.probability;
  const moved = `${shrank ? 'went down' : 'went up'} by about ${pointsWords(Math.abs(points))}`;
  return {
    headline: `${weeks} ${moved}, somewhere between ${spanWords(change, shrank)}: ${chancesWords(chance)} that it ${shrank ? 'shrank' : 'grew'}.`,
    caution: chance < LIKELY ? 'That may still be luck.' : null,
  };
}

/** `nine chances in ten`, never surer than it is. */
export function chancesWords(chance: Probability): string {
  if (chance > 0.99) return 'more than 99 chances in 100';
  if (chance >= LIKELY) return `${Math.floor(100 * chance)} chances in 100`;
  return `${TENTHS[Math.round(10 * chance)] ?? 'nine'} chances in ten`;
}

const TENTHS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** What is left of the make rate under pressure. */
export function shareWords({ value, low, high }: Estimate): string {
  const ends = endWords(100 * low, 100 * high).join(' and ');
  return `For every 100 makes when you are relaxed there are about ${Math.round(100 * value)} under pressure, somewhere between ${ends}.`;
}

/** The smaller end first, without a sign where both lie on one side. */
function spanWords({ low, high }: Change, shrank: boolean): string {
  const [near, far] = shrank ? [-high, -low] : [low, high];
  if (Math.round(near) >= 0) return endWords(near, far).join(' and ');
  const both = sides({ low, high });
  return (shrank ? both.toReversed() : both).join(' and ');
}

function sides({ low, high }: Pick<Change, 'low' | 'high'>): string[] {
  return endWords(low, high).map((end) => {
    if (end === '0') return end;
    return `${withPoints(end.replace('−', ''))} ${end.startsWith('−') ? 'down' : 'up'}`;
  });
}
