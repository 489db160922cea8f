import type { IsoDate } from '../basics/units.ts';
import type { Cell } from './book.ts';
import type { CsvFault } from './csvColumns.ts';
import { TEXT_LENGTH, type CsvRow } from './csvRow.ts';
import type { Condition } from './events.ts';

/** A round as a record file tells it. */
export interface FileRound {
  readonly shooter: string;
  readonly date: IsoDate;
  readonly session: string;
  readonly label: string;
  readonly condition: Condition;
  readonly game: string;
  readonly first: number | null;
  readonly nerves: number | null;
  readonly note: string;
  readonly cells: readonly Cell[];
}

/** Said once for a round: in one row, or the same in several. A row that leaves one empty agrees with the others. */
const ROUND_FIELDS = ['condition', 'game', 'first', 'nerves'] as const;

/** Names of one shooter are the same whatever their case and outer blanks. */
export function shooterKey(name: string): string {
  return name.trim().toLocaleLowerCase('en').normalize('NFC');
}

interface Gathered {
  /** The row that first said each of the round's fields. */
  readonly said: Map<(typeof ROUND_FIELDS)[number], CsvRow>;
  readonly notes: Set<string>;
  readonly cells: Map<string, Cell>;
  readonly head: CsvRow;
}

/**
 * Puts the rows of a file together to rounds: rows with the same shooter, date, session and round are one, with the
 * shooter named as in its first row. Notes of its rows are strung together.
 *
 * @param faults gets every contradiction found
 */
export function gatherRounds(rows: readonly CsvRow[], faults: CsvFault[]): FileRound[] {
  const rounds = new Map<string, Gathered>();
  for (const row of rows) {
    const key = JSON.stringify([shooterKey(row.shooter), row.date, row.session, row.round]);
    const round = rounds.get(key) ?? { said: new Map(), notes: new Set(), cells: new Map(), head: row };
    rounds.set(key, round);
    add(round, row, (column, reason) => faults.push({ row: row.row, column, reason }));
  }
  return [...rounds.values()].map(roundOf);
}

function add(
  round: Gathered,
  row: CsvRow,
  fault: (column: CsvFault['column'], reason: string) => void,
): void {
  for (const field of ROUND_FIELDS) {
    if (row[field] === null || row[field] === '') continue;
    const before = round.said.get(field);
    if (!before) round.said.set(field, row);
    else if (before[field] !== row[field]) {
      fault(field, `Differs from row ${before.row}, which is the same day, session and round.`);
    }
  }
  if (row.note !== '') round.notes.add(row.note);
  if (noteOf(round).length > TEXT_LENGTH) {
    fault('note', `The notes of this round are longer than ${TEXT_LENGTH} characters together.`);
  }
  const cell = `${row.spot}\n${row.shot}`;
  if (round.cells.has(cell)) {
    fault('spot', `${row.spot}, ${row.shot} stands in this round twice. Add the rows up into one.`);
  }
  round.cells.set(cell, { spot: row.spot, shot: row.shot, makes: row.makes, attempts: row.attempts });
}

function roundOf(round: Gathered): FileRound {
  const { head, said } = round;
  return {
    shooter: head.shooter,
    date: head.date,
    session: head.session,
    label: head.round,
    condition: head.condition,
    game: said.get('game')?.game ?? '',
    first: said.get('first')?.first ?? null,
    nerves: said.get('nerves')?.nerves ?? null,
    note: noteOf(round),
    cells: [...round.cells.values()],
  };
}

function noteOf({ notes }: Gathered): string {
  return [...notes].join('; ');
}
