import type { PairId } from '../../basics/ids.ts';
import type { Points, Probability } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import { fixedLength } from '../fixedLength.ts';
import { signFlipTest } from './signFlip.ts';

/** The two rounds of a coin-ordered pair, both played out. */
export interface PlayedPair {
  readonly id: PairId;
  /** Relaxed minus pressured makes. */
  readonly difference: number;
  /** Attempts of each round. */
  readonly attempts: number;
}

export interface Pairs {
  readonly played: readonly PlayedPair[];
  /**
   * Pairs with a round missing, rounds of different length, or a game that is over by makes and misses: they say nothing
   * fair, since luck decides which of them are whole.
   */
  readonly leftOut: readonly PairId[];
  /** Those of them that the shooter ended early. */
  readonly stopped: readonly PairId[];
}

/** What coin-ordered pairs say by themselves, without a model. Points are positive = worse under pressure. */
export interface PairResult {
  readonly n: number;
  /** Σ d / Σ attempts, in points; null without a pair. */
  readonly mean: Points | null;
  /** From the scatter of the pairs around their mean; null with fewer than two. */
  readonly se: Points | null;
  /** Exact one-sided sign-flip test; null without a pair. */
  readonly p: Probability | null;
  readonly leftOut: number;
  /** Of those left out, the ones the shooter ended early. */
  readonly stopped: number;
}

/** One shooter's coin-ordered pairs, in the order they were shot. */
export function playedPairs(rounds: Iterable<Round>): Pairs {
  const members = new Map<PairId, Round[]>();
  for (const round of rounds) {
    if (!round.pair) continue;
    const both = members.get(round.pair.id);
    if (both) both.push(round);
    else members.set(round.pair.id, [round]);
  }
  const played: { readonly at: number; readonly pair: PlayedPair }[] = [];
  const leftOut: PairId[] = [];
  const stopped: PairId[] = [];
  for (const [id, both] of members) {
    const calm = both.find((round) => round.condition === 'relaxed');
    const tense = both.find((round) => round.condition === 'pressured');
    const complete = both.length === 2 && calm && tense && both.every(fixedLength);
    const first = complete ? roundTally(calm) : null;
    const second = complete ? roundTally(tense) : null;
    if (!first || !second || first.attempts === 0 || first.attempts !== second.attempts) {
      leftOut.push(id);
      if (both.some(({ ending }) => ending === 'stopped')) stopped.push(id);
      continue;
    }
    played.push({
      at: both.reduce((earliest, { startedAt }) => Math.min(earliest, startedAt), Infinity),
      pair: { id, difference: first.makes - second.makes, attempts: first.attempts },
    });
  }
  played.sort((a, b) => a.at - b.at || (a.pair.id < b.pair.id ? -1 : 1));
  return { played: played.map(({ pair }) => pair), leftOut: leftOut.toSorted(), stopped };
}

/** The mean difference of the pairs with the exact test over all of them. */
export function pairResult({ played, leftOut, stopped }: Pairs): PairResult {
  const n = played.length;
  const missing = { leftOut: leftOut.length, stopped: stopped.length };
  if (n === 0) return { n, mean: null, se: null, p: null, ...missing };
  const { sum, oneSided } = signFlipTest(played.map(({ difference }) => difference));
  const attempts = played.reduce((total, pair) => total + pair.attempts, 0);
  const mean = sum / attempts;
  // A ratio of sums: its error is that of Σ (d − mean·attempts).
  const scatter = played.reduce((total, pair) => total + (pair.difference - mean * pair.attempts) ** 2, 0);
  return {
    n,
    mean: 100 * mean,
    se: n < 2 ? null : (100 * Math.sqrt((scatter * n) / (n - 1))) / attempts,
    p: oneSided,
    ...missing,
  };
}

/** Of all pairs, the share that may be ended early before the rest no longer count as fair. Our own choice. */
const MOST_STOPPED = 0.1;

/**
 * Whether what is left of the pairs is still fair. Whoever ends pairs that go badly keeps the ones that went well; a few
 * are an accident.
 */
export function fewStopped({ played, stopped }: Pick<Pairs, 'played' | 'stopped'>): boolean {
  return stopped.length <= MOST_STOPPED * (played.length + stopped.length);
}

/** The span of the pairs' mean is told from this many pairs on; the scatter of fewer says next to nothing. Our own choice. */
export const LEAST_TO_COMPARE = 8;
/** Pairs and model are set against each other from this many on, and this many standard errors apart. */
export const LEAST_TO_CONTRADICT = 16;
export const FAR_APART = 3;

/**
 * Whether pairs and model tell different stories. Then the pairs are to be believed, since the coin makes them fair
 * whatever the model gets wrong. Three standard errors and not two, since this is looked at after every pair: with a
 * model that is right, two would warn a third of all shooters at some time in their first hundred pairs, three about one
 * in forty (tests/stats/model/disagree.test.ts).
 *
 * @param model the drop for the mix of shots the pairs were shot from, so that it answers the same question
 */
export function disagree(pairs: PairResult, model: Points): boolean {
  if (pairs.n < LEAST_TO_CONTRADICT || pairs.mean === null || pairs.se === null) return false;
  return Math.abs(pairs.mean - model) > FAR_APART * pairs.se;
}
