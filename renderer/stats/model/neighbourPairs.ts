import type { Round } from '../../log/book.ts';
import { roundCells, roundTally, type Tally } from '../../log/roundCells.ts';
import { incompleteBeta } from '../special.ts';
import type { Pairs, PlayedPair } from './pairs.ts';
import { placedSessions } from './sessionOrder.ts';

/** Pairs of a record that does not say who was paired with whom. */
export interface NeighbourPairs extends Pairs {
  /** Pairs in which the relaxed round came first. */
  readonly relaxedFirst: number;
}

/**
 * One shooter's pairs where no coin is on record, as in a file: neighbours in a session, one relaxed and one pressured,
 * with the same attempts from the same spots and kinds of shot. From the start of the session on, each round is paired
 * with the next where the two fit. Pressured rounds without a partner are left out.
 *
 * What follows from these pairs holds only where a coin decided which round came first, see {@link looksTossed}.
 *
 * @param rounds all of them, so that leaving shots out makes no new neighbours
 * @param tally makes and attempts of a round that count; pairs without any are passed over
 */
export function neighbourPairs(
  rounds: Iterable<Round>,
  tally: (round: Round) => Tally = roundTally,
): NeighbourPairs {
  const played: PlayedPair[] = [];
  const leftOut: string[] = [];
  let relaxedFirst = 0;
  for (const placed of placedSessions(rounds)) {
    // A round without a shot stands between no two.
    const session = placed.filter(({ attempts }) => attempts > 0).map(({ round }) => round);
    for (let at = 0; at < session.length; at += 1) {
      const [first, second] = [session[at], session[at + 1]];
      if (!first || tally(first).attempts === 0) continue;
      if (!second || !fit(first, second)) {
        if (first.condition === 'pressured') leftOut.push(first.id);
        continue;
      }
      at += 1;
      const calmFirst = first.condition === 'relaxed';
      if (calmFirst) relaxedFirst += 1;
      const { makes, attempts } = tally(first);
      const lead = makes - tally(second).makes;
      played.push({ id: `${first.id} ${second.id}`, difference: (calmFirst ? lead : -lead) + 0, attempts });
    }
  }
  // A file does not tell who ended a round early.
  return { played, leftOut: leftOut.toSorted(), stopped: [], relaxedFirst };
}

/** A fair coin gives so lopsided an order in at most one record of sixteen. Our own choice. */
const LOPSIDED = 1 / 16;

/**
 * Whether a fair coin could well have decided which round of each pair came first: the two-sided binomial chance of an
 * order at least as lopsided is above 1 in 16. Always the same order is too lopsided from 5 pairs on.
 */
export function looksTossed({ played, relaxedFirst }: NeighbourPairs): boolean {
  const n = played.length;
  if (n === 0) return true;
  const fewer = Math.min(relaxedFirst, n - relaxedFirst);
  // P(at most k heads of n) = I_½(n − k, k + 1); 1 in 16 is met exactly by five of five.
  return 2 * incompleteBeta(n - fewer, fewer + 1, 0.5) > LOPSIDED + 1e-9;
}

function fit(first: Round, second: Round): boolean {
  return first.condition !== second.condition && shotsKey(first) === shotsKey(second);
}

/** The attempts of a round by spot and kind of shot. */
function shotsKey(round: Round): string {
  const shots = roundCells(round).map(({ spot, shot, attempts }) => JSON.stringify([spot, shot, attempts]));
  return shots.toSorted().join();
}
