import { oncePer } from '../basics/remembered.ts';
import type { Round } from '../log/book.ts';
import { roundTally, type Tally } from '../log/roundCells.ts';

/** The rounds with their free throws alone; rounds without one are left out. */
export function freeThrowsOf(rounds: Iterable<Round>): Round[] {
  return [...rounds].map(withFreeThrows).filter((round) => roundTally(round).attempts > 0);
}

/** Free throws made and taken in a round. */
export function freeThrowTally(round: Round): Tally {
  return roundTally(withFreeThrows(round));
}

/** The same round for as long as the round stays the same, so that what is made of it is known again. */
const withFreeThrows = oncePer((round: Round): Round => {
  const entries = round.entries.filter(({ stop }) => round.stops[stop]?.shot === 'free-throw');
  return { ...round, entries };
});
