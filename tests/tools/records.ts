import type { NewId } from '../../renderer/basics/ids.ts';
import { EMPTY_BOOK, type Book, type Round } from '../../renderer/log/book.ts';
import { COLUMNS, type Column } from '../../renderer/log/csvColumns.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { stamp } from '../../renderer/log/facts.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { planImport } from '../../renderer/log/importRounds.ts';
import { roundCells } from '../../renderer/log/roundCells.ts';

/** A row of a record file; what is left out is as in `USUAL`. */
export type RecordRow = Partial<Record<Column, string | number>>;

const USUAL: Readonly<Record<Column, string | number>> = {
  date: '2026-10-05',
  session: 'a',
  round: 1,
  condition: 'relaxed',
  game: 'Threes',
  spot: 'top',
  shot: 'catch',
  first: '',
  makes: 0,
  attempts: 1,
  nerves: '',
  shooter: 'Mo',
  note: '',
};

/** The text of a record file. No field here needs quotation marks. */
export function recordFile(rows: readonly RecordRow[], newline = '\n'): string {
  const lines = rows.map((row) => COLUMNS.map((column) => row[column] ?? USUAL[column]).join(','));
  return [COLUMNS.join(','), ...lines, ''].join(newline);
}

/** The book an empty log becomes when a record file is taken in. */
export function bookFromFile(csv: string): Book {
  let made = 0;
  const newId: NewId = () => {
    made += 1;
    return `id-${made}`;
  };
  const { facts } = planImport(EMPTY_BOOK, readCsv(csv), newId, {
    hand: 'right',
    rules: 'FIBA',
    units: 'metric',
  });
  return foldAll(EMPTY_BOOK, stamp(facts, { at: 0, zone: 0, device: 'test', newId }));
}

/** Rounds as rows of a record file, one for each spot and kind of shot. */
export function rowsOf(rounds: Iterable<Round>): RecordRow[] {
  return [...rounds].flatMap((round) =>
    roundCells(round).map(({ spot, shot, makes, attempts }) => ({
      date: round.date,
      session: round.session,
      round: round.label,
      condition: round.condition,
      spot,
      shot,
      first: round.first ?? '',
      makes,
      attempts,
      nerves: round.nerves ?? '',
    })),
  );
}

/** 15 of 25 relaxed and 10 of 25 pressured from one spot: the worked case of the drop. */
export const GOLDEN: readonly RecordRow[] = [
  { round: 1, condition: 'relaxed', makes: 15, attempts: 25 },
  { round: 2, condition: 'pressured', makes: 10, attempts: 25 },
];
