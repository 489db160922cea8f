import type { RoundId, ShooterId } from '../basics/ids.ts';
import { oncePer } from '../basics/remembered.ts';
import type { Book, Round } from '../log/book.ts';
import { MOST_DOUBLES, timesOwed, type Doubles } from '../pressure/stakes.ts';
import { othersIn, restOf } from './gameOn.ts';
import { verdictOf } from './played.ts';

/** One stake that has been decided. */
export interface Debt {
  /** The round that decided how it stands: the latest, where it was played for double or nothing. */
  readonly round: Round;
  readonly stake: string;
  /**
   * `shooter`: the mark was not reached, so the shooter owes. `others`: it was beaten. `nobody`: it was wiped out by
   * double or nothing.
   */
  readonly owes: 'shooter' | 'others' | 'nobody';
  /** Rounds that were shot for double or nothing. */
  readonly doublings: number;
  /** How many times the stake is owed. */
  readonly times: number;
  /** Settled by hand, or nothing is owed any more. */
  readonly settled: boolean;
}

/**
 * Stakes of a shooter, newest first. A round that was stopped or broken off decides nothing: its shots count, its game
 * does not, and a debt it was to double stays as it was. Neither does a duel that ended level.
 *
 * A round shot for double or nothing counts only on a debt that is still open and may still grow; it moves the debt on,
 * so a link to a round that is no longer the latest of its debt counts for nothing.
 */
export function debtsOf(book: Book, shooter: ShooterId): Debt[] {
  const debts = new Map<RoundId, Debt>();
  for (const { round, stake, won } of decidedOf(book, shooter)) {
    const link = round.pressure?.doubles ?? null;
    if (link === null) {
      debts.set(round.id, debt(round, stake, won ? 'others' : 'shooter', 0));
      continue;
    }
    const before = debts.get(link.round);
    if (!before || doublesNext(before) === null) continue;
    debts.delete(link.round);
    const grows = won === (before.owes === 'others');
    debts.set(round.id, debt(round, before.stake, grows ? before.owes : 'nobody', before.doublings + 1));
  }
  return [...debts.values()].toReversed();
}

/** The debt a round decided as it stands now; undefined where it decided none, or another round has moved it on. */
export function debtOf(book: Book, round: Round): Debt | undefined {
  return debtsOf(book, round.shooter).find((one) => one.round.id === round.id);
}

/** What a round for double or nothing on a debt carries; null where it is settled or may grow no more. */
export function doublesNext({ round, doublings, settled }: Debt): Doubles | null {
  if (settled || doublings >= MOST_DOUBLES) return null;
  return { round: round.id, times: doublings === 0 ? 1 : 2 };
}

interface Decided {
  readonly round: Round;
  readonly stake: string;
  readonly won: boolean;
}

/** Oldest first: a round that was opened again stands last in the book, wherever it was played. */
function decidedOf(book: Book, shooter: ShooterId): Decided[] {
  const decided: Decided[] = [];
  for (const round of book.rounds.values()) {
    const stake = round.pressure?.stake;
    if (round.shooter !== shooter || !stake) continue;
    const others = othersIn(book, round);
    const verdict = others.length === 0 ? verdictAlone(round) : verdictOf(round, others);
    const won = verdict === 'beaten';
    if (won && round.group !== null && !someoneLost(round, others)) continue;
    if (won || verdict === 'short') decided.push({ round, stake, won });
  }
  return decided.toSorted((a, b) => a.round.startedAt - b.round.startedAt);
}

/** Of a round without others; worked out once. */
const verdictAlone = oncePer((round: Round) => verdictOf(round));

/** Of several shooters the winners are owed to only where somebody lost. */
function someoneLost(round: Round, others: readonly Round[]): boolean {
  const all = [round, ...others];
  return others.some((other) => verdictOf(other, restOf(other, all)) === 'short');
}

function debt(round: Round, stake: string, owes: Debt['owes'], doublings: number): Debt {
  const settled = round.settled || owes === 'nobody';
  return { round, stake, owes, doublings, times: timesOwed(doublings), settled };
}
