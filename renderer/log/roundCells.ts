import { present } from '../basics/invariant.ts';
import { oncePer } from '../basics/remembered.ts';
import type { Stop } from '../court/cards.ts';
import type { Cell, Entry, Round } from './book.ts';

/** Makes of attempts. */
export interface Tally {
  readonly makes: number;
  readonly attempts: number;
}

/** Turns used up at one stop: shots taken or counted, and turns the shot clock took. */
export function turnsUsed(entries: readonly Entry[], stop: number): number {
  let used = 0;
  for (const entry of entries) {
    if (entry.stop === stop) used += entry.kind === 'count' ? entry.attempts : 1;
  }
  return used;
}

/** What an entry puts on the record. An expired turn puts nothing: no ball left the hand. */
export function entryTally(entry: Entry): Tally {
  switch (entry.kind) {
    case 'shot':
      return { makes: entry.made ? 1 : 0, attempts: 1 };
    case 'count':
      return { makes: entry.makes, attempts: entry.attempts };
    case 'expired':
      return { makes: 0, attempts: 0 };
  }
}

/** Makes and attempts of a whole round; added up once. */
export const roundTally = oncePer((round: Pick<Round, 'entries'>): Tally => {
  let makes = 0;
  let attempts = 0;
  for (const entry of round.entries) {
    const tally = entryTally(entry);
    makes += tally.makes;
    attempts += tally.attempts;
  }
  return { makes, attempts };
});

/** Makes of attempts by spot and kind of shot, in card order; stops without an attempt are left out. Added up once. */
export const roundCells = oncePer((round: Pick<Round, 'entries' | 'stops'>): readonly Cell[] => {
  const makes = round.stops.map(() => 0);
  const attempts = round.stops.map(() => 0);
  for (const entry of round.entries) {
    const tally = entryTally(entry);
    makes[entry.stop] = (makes[entry.stop] ?? 0) + tally.makes;
    attempts[entry.stop] = (attempts[entry.stop] ?? 0) + tally.attempts;
  }
  // A card may come back to a spot: its stops are one cell.
  const cells = new Map<string, { -readonly [K in keyof Cell]: Cell[K] }>();
  for (const [at, { spot, shot }] of round.stops.entries()) {
    const key = `${spot}\n${shot}`;
    const cell = cells.get(key) ?? { spot, shot, makes: 0, attempts: 0 };
    cell.makes += makes[at] ?? 0;
    cell.attempts += attempts[at] ?? 0;
    cells.set(key, cell);
  }
  return [...cells.values()].filter((cell) => cell.attempts > 0);
});

/** Where the next turn of a round is taken: the stop, and the turn at it from 0; null when the card is shot out. */
export interface Turn {
  readonly stop: number;
  readonly turn: number;
}

/** The next turn, in card order. After an undo it is the turn that was undone. */
export function nextTurn(round: Pick<Round, 'entries' | 'stops'>): Turn | null {
  const used = round.stops.map(() => 0);
  for (const entry of round.entries) {
    used[entry.stop] = (used[entry.stop] ?? 0) + (entry.kind === 'count' ? entry.attempts : 1);
  }
  const stop = round.stops.findIndex((place, at) => (used[at] ?? 0) < place.attempts);
  return stop === -1 ? null : { stop, turn: used[stop] ?? 0 };
}

/** Turns of the card that are used up, and all of them. */
export function turnsOf(round: Pick<Round, 'entries' | 'stops'>): { used: number; all: number } {
  return {
    used: round.entries.reduce((sum, entry) => sum + (entry.kind === 'count' ? entry.attempts : 1), 0),
    all: round.stops.reduce((sum, stop) => sum + stop.attempts, 0),
  };
}

/** The stop at an index. @throws InvariantError where the card has no such stop */
export function stopAt(round: Pick<Round, 'stops'>, index: number): Stop {
  return present(round.stops[index], `stop ${index} of the card`);
}
