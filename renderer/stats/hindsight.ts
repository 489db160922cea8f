import { byText } from '../basics/order.ts';
import type { IsoDate, Points } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import type { ByCondition } from './drop.ts';
import type { ChokeIndex, NoIndex } from './model/chokeIndex.ts';
import { soFarOf } from './planning.ts';
import { evidenceOf } from './reading.ts';
import { smallestShown, TYPICAL_SPREADS, varianceOf } from './showing.ts';

/**
 * What shots could have shown: the smallest drop in whole points that the model would have been sure of with a chance of
 * 80 %, had it been there. Where nothing showed, a smaller drop may well be there.
 */
export interface Hindsight {
  /** From everything shot so far; null without an index, or where even {@link MOST_POINTS} could have stayed hidden. */
  readonly soFar: Points | null;
  /** Null without a shot. */
  readonly latest: LatestSession | null;
}

export interface LatestSession {
  readonly date: IsoDate;
  /** Shots from places that were shot in both conditions. */
  readonly shots: ByCondition<number>;
  /** From these alone; null where even {@link MOST_POINTS} could have stayed hidden. One session is never a verdict. */
  readonly points: Points | null;
}

/** No one loses more: beyond it a plan has no use. Our own choice. */
export const MOST_POINTS: Points = 40;

/** Looks back on one shooter's rounds, in any order, and on the index they gave. */
export function couldHaveShown(rounds: Iterable<Round>, index: ChokeIndex | NoIndex): Hindsight {
  const shot = [...rounds].filter((round) => roundTally(round).attempts > 0);
  const spreads = index.kind === 'index' ? index.hyper.mean : TYPICAL_SPREADS;
  const latest = latestSession(shot);
  const { relaxed, pressured } = evidenceOf(latest);
  const shots = { relaxed: relaxed.attempts, pressured: pressured.attempts };
  const rate = index.kind === 'index' ? index.relaxed / 100 : (relaxed.makes + 2) / (relaxed.attempts + 4);
  const fromLatest = smallestShown(
    rate,
    (rates) => varianceOf({ order: 'pairs', shots, days: { relaxed: 1, pressured: 1 } }, rates, spreads),
    spreads,
    MOST_POINTS,
  );
  const { variance } = soFarOf(index, evidenceOf(shot));
  return {
    soFar: smallestShown(rate, () => variance, spreads, MOST_POINTS),
    latest: latest[0] ? { date: latest[0].date, shots, points: fromLatest } : null,
  };
}

/** The rounds of the session that was started last, on the last day; of a file's sessions the one named last. */
function latestSession(rounds: readonly Round[]): Round[] {
  const later = (a: Round, b: Round): number =>
    byText(a.date, b.date) || a.startedAt - b.startedAt || byText(a.session, b.session);
  const last = rounds.reduce<Round | null>(
    (best, round) => (!best || later(round, best) > 0 ? round : best),
    null,
  );
  return rounds.filter(({ date, session }) => date === last?.date && session === last.session);
}
