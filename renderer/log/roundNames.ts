import type { Book, Round } from './book.ts';

/** A round as a record file calls it. */
export interface NamedRound {
  readonly round: Round;
  readonly shooter: string;
  readonly session: string;
  /** The round's own number or word; `1 (2)` for a second round 1 of the same shooter, day and session. */
  readonly label: string;
}

/**
 * What a record file calls each round. Rounds from two devices may carry the same number in the same session; in one
 * file they must be told apart.
 *
 * @param rounds in the order in which equal names are counted
 */
export function* roundNames(book: Book, rounds: Iterable<Round>): Generator<NamedRound> {
  const taken = new Set<string>();
  for (const round of rounds) {
    const shooter = book.shooters.get(round.shooter)?.name ?? round.shooter;
    const session = book.sessions.get(round.session)?.label ?? round.session;
    const key = (label: string) => JSON.stringify([shooter, round.date, session, label]);
    let label = round.label;
    for (let n = 2; taken.has(key(label)); n += 1) label = `${round.label} (${n})`;
    taken.add(key(label));
    yield { round, shooter, session, label };
  }
}
