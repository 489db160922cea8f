import { byText } from '../../basics/order.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';

/** A round, and the shots of its session before it. */
export interface PlacedRound {
  readonly round: Round;
  /** Place of its first shot in the session, from 0. */
  readonly first: number;
  readonly attempts: number;
}

/**
 * Finds the place of each round of one session and gives them in the order they were shot. Where `first` is noted it is
 * taken at its word, else a round follows the one before.
 *
 * Before and after go by the start of the rounds. Rounds of a file all start at one moment: they go by number where their
 * names tell them apart by a number alone (1, 2, 3; Round 1, Round 2), and then the order of the file's rows changes
 * nothing; else in the order in which they stand in the file, which is the order given here.
 */
export function placeRounds(rounds: readonly Round[]): PlacedRound[] {
  const numbers = numbersOf(rounds);
  const number = (round: Round): number => numbers?.get(round) ?? 0;
  const inOrder = rounds.toSorted((a, b) => a.startedAt - b.startedAt || number(a) - number(b));
  let next = 0;
  const placed = inOrder.map((round) => {
    const first = round.first ?? next;
    const { attempts } = roundTally(round);
    next = first + attempts;
    return { round, first, attempts };
  });
  return placed.toSorted((a, b) => a.first - b.first);
}

/** One shooter's sessions day by day, each with its rounds in the order they came in. */
export function sessionsOf(rounds: Iterable<Round>): Round[][] {
  const sessions = new Map<string, Round[]>();
  let latest: Round[] = [];
  for (const round of rounds) {
    const { date, session } = round;
    // Mostly they follow each other.
    if (latest[0]?.session !== session || latest[0].date !== date) {
      const name = `${date} ${session}`;
      latest = sessions.get(name) ?? [];
      sessions.set(name, latest);
    }
    latest.push(round);
  }
  return [...sessions].toSorted(([a], [b]) => byText(a, b)).map(([, session]) => session);
}

/** The same, each with its rounds in the order they were shot. */
export function placedSessions(rounds: Iterable<Round>): PlacedRound[][] {
  return sessionsOf(rounds).map(placeRounds);
}

const NUMBERED = /^(\D*)(\d+(?:\.\d+)?)(\D*)$/;

/** The numbers in the rounds' names; null where the names differ in more than these. */
function numbersOf(rounds: readonly Round[]): ReadonlyMap<Round, number> | null {
  const numbers = new Map<Round, number>();
  const words = new Set<string>();
  for (const round of rounds) {
    const [whole, before, number, after] = NUMBERED.exec(round.label) ?? [];
    if (whole === undefined) return null;
    numbers.set(round, Number(number));
    words.add(`${before}\n${after}`.toLowerCase());
  }
  return words.size === 1 ? numbers : null;
}
