import type { NewId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import { nameKey } from '../court/spots.ts';
import { EMPTY_BOOK, type Round } from '../log/book.ts';
import { readCsv } from '../log/csvRead.ts';
import { shooterKey, type FileRound } from '../log/csvRounds.ts';
import { stamp } from '../log/facts.ts';
import { foldAll } from '../log/fold.ts';
import { planImport } from '../log/importRounds.ts';
import { placedSessions } from '../stats/model/sessionOrder.ts';

/** One shooter of a record file. */
export interface FileRecord {
  readonly name: string;
  /** Day by day, in the order they were shot. */
  readonly rounds: readonly Round[];
}

/**
 * The record of every shooter in a file, by name, as taking it into an empty log would leave it. The order of the rows
 * shows only where rounds have neither `first` nor a number.
 *
 * @throws CsvError with row, column and reason where the file is not a record file
 */
export function recordsOf(csv: string): FileRecord[] {
  const told = oneSpelling(readCsv(csv)).toSorted((a, b) => byText(a.shooter, b.shooter));
  let made = 0;
  const newId: NewId = () => `file-${(made += 1)}`;
  const { facts } = planImport(EMPTY_BOOK, told, newId, { hand: 'right', rules: 'FIBA', units: 'metric' });
  const book = foldAll(EMPTY_BOOK, stamp(facts, { at: 0, zone: 0, device: 'report', newId }));
  const rounds = [...book.rounds.values()];
  return [...book.shooters.values()].map(({ id, name }) => {
    const own = rounds.filter((round) => round.shooter === id);
    return { name, rounds: placedSessions(own).flatMap((session) => session.map(({ round }) => round)) };
  });
}

/** Names under the first of their spellings by text, and a round's cells in an order of their own. */
function oneSpelling(rounds: readonly FileRound[]): FileRound[] {
  const shooters = spellings(
    rounds.map(({ shooter }) => shooter),
    shooterKey,
  );
  const spots = spellings(
    rounds.flatMap(({ cells }) => cells.map(({ spot }) => spot)),
    nameKey,
  );
  return rounds.map((round) => ({
    ...round,
    shooter: shooters(round.shooter),
    cells: round.cells
      .map((cell) => ({ ...cell, spot: spots(cell.spot) }))
      .toSorted((a, b) => byText(a.spot, b.spot) || byText(a.shot, b.shot)),
  }));
}

function spellings(names: readonly string[], keyOf: (name: string) => string): (name: string) => string {
  const first = new Map<string, string>();
  for (const name of new Set(names)) {
    const known = first.get(keyOf(name));
    if (known === undefined || name < known) first.set(keyOf(name), name);
  }
  return (name) => first.get(keyOf(name)) ?? name;
}
