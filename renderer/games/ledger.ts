import type { ShooterId } from '../basics/ids.ts';
import type { Book, Round } from '../log/book.ts';
import { verdictOf } from './played.ts';

/** One stake that has been decided: owed by the shooter, or owed to them. */
export interface Debt {
  readonly round: Round;
  readonly stake: string;
  /** `shooter`: the mark was not reached, so the shooter owes. `others`: it was beaten. */
  readonly owes: 'shooter' | 'others';
  readonly settled: boolean;
}

/** Stakes of a shooter, newest first. A round that was stopped or broken off decides nothing: its shots count, its game does not. */
export function debtsOf(book: Book, shooter: ShooterId): Debt[] {
  const debts: Debt[] = [];
  for (const round of book.rounds.values()) {
    const stake = round.pressure?.stake;
    if (round.shooter !== shooter || !stake) continue;
    const verdict = verdictOf(round);
    if (verdict !== 'beaten' && verdict !== 'short') continue;
    debts.push({ round, stake, owes: verdict === 'beaten' ? 'others' : 'shooter', settled: round.settled });
  }
  // A round that was opened again stands last in the book, wherever it was played.
  return debts.toReversed().toSorted((a, b) => b.round.startedAt - a.round.startedAt);
}
