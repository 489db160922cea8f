import type { PairId } from '../../basics/ids.ts';
import type { Points, Probability } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
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
  /** Pairs with a round missing, or rounds of different length: they say nothing fair. */
  readonly leftOut: readonly PairId[];
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
}

/** One shooter's coin-ordered pairs, in the order they were shot. */
export function playedPairs(rounds: Iterable<Round>): Pairs {
  const members = new Map<PairId, Round[]>();
  for (const round of rounds) {
    if (round.pair) members.set(round.pair.id, [...(members.get(round.pair.id) ?? []), round]);
  }
  const played: { readonly at: number; readonly pair: PlayedPair }[] = [];
  const leftOut: PairId[] = [];
  for (const [id, both] of members) {
    const calm = both.find((round) => round.condition === 'relaxed');
    const tense = both.find((round) => round.condition === 'pressured');
    const complete = both.length === 2 && calm && tense;
    const first = complete ? roundTally(calm) : null;
    const second = complete ? roundTally(tense) : null;
    if (!first || !second || first.attempts === 0 || first.attempts !== second.attempts) {
      leftOut.push(id);
      continue;
    }
    const at = Math.min(...both.map((round) => round.startedAt));
    played.push({
      at,
      pair: { id, difference: first.makes - second.makes, attempts: first.attempts },
    });
  }
  played.sort((a, b) => a.at - b.at || (a.pair.id < b.pair.id ? -1 : 1));
  return { played: played.map(({ pair }) => pair), leftOut: leftOut.toSorted() };
}

/** The mean difference of the pairs with the exact test over all of them. */
export function pairResult({ played, leftOut }: Pairs): PairResult {
  const n = played.length;
  if (n === 0) return { n, mean: null, se: null, p: null, leftOut: leftOut.length };
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
    leftOut: leftOut.length,
  };
}

/** Pairs and model are compared from this many pairs on; fewer have no error to speak of. Our own choice. */
export const LEAST_TO_COMPARE = 8;

/**
 * Whether pairs and model tell different stories: further apart than two standard errors of the pairs. Then the pairs are
 * to be believed, since the coin makes them fair whatever the model gets wrong.
 */
export function disagree(pairs: PairResult, model: Points): boolean {
  if (pairs.n < LEAST_TO_COMPARE || pairs.mean === null || pairs.se === null) return false;
  return Math.abs(pairs.mean - model) > 2 * pairs.se;
}
