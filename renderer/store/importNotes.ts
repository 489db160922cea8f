import type { IsoDate } from '../basics/units.ts';
import { isSpot, nameKey } from '../court/spots.ts';
import type { Book } from '../log/book.ts';
import type { FileRound } from '../log/csvRounds.ts';
import { knownSpots } from '../log/knownSpots.ts';

/** What a person should look at before saying yes to a file. */
export interface ImportNotes {
  /** Whose rounds they are. */
  readonly shooters: readonly string[];
  /** Spots that no card and no round here has had: one's own, or a slip of the pen. */
  readonly newSpots: readonly string[];
  /** Days that are still to come. */
  readonly future: readonly IsoDate[];
}

/** Looks a file over for slips that no rule can catch. @param today the day here */
export function importNotes(book: Book, rounds: readonly FileRound[], today: IsoDate): ImportNotes {
  const spots = new Set(rounds.flatMap((round) => round.cells.map(({ spot }) => spot)));
  const known = knownSpots(book);
  return {
    shooters: [...new Set(rounds.map(({ shooter }) => shooter))],
    newSpots: [...spots].filter((spot) => !isSpot(spot) && !known.has(nameKey(spot))),
    future: [...new Set(rounds.map(({ date }) => date).filter((date) => date > today))].toSorted(),
  };
}
