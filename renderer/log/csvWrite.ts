import Papa from 'papaparse';

import type { Book, Round } from './book.ts';
import { COLUMNS, type Column } from './csvColumns.ts';
import { roundCells } from './roundCells.ts';
import { roundNames } from './roundNames.ts';

/** What a spreadsheet would run as a formula, and whatever already carries the mark against it. */
const FORMULA = /^'*[=+\-@\t\r\n]/;

/**
 * The records as a CSV file (RFC 4180, CRLF, UTF-8), one row for each round, spot and kind of shot. A field that a
 * spreadsheet would take for a formula gets an apostrophe in front; reading takes it away again.
 *
 * @param rounds which rounds to write, in this order; rounds without a shot give no row
 */
export function writeCsv(book: Book, rounds: Iterable<Round>): string {
  const lines: string[][] = [];
  for (const { round, shooter, session, label } of roundNames(book, rounds)) {
    for (const { spot, shot, makes, attempts } of roundCells(round)) {
      const fields: Record<Column, string> = {
        date: round.date,
        session,
        round: label,
        condition: round.condition,
        game: round.game,
        spot,
        shot,
        first: round.first === null ? '' : String(round.first),
        makes: String(makes),
        attempts: String(attempts),
        nerves: round.nerves === null ? '' : String(round.nerves),
        shooter,
        note: round.note,
      };
      lines.push(COLUMNS.map((column) => fields[column]));
    }
  }
  return `${Papa.unparse({ fields: [...COLUMNS], data: lines }, { newline: '\r\n', escapeFormulae: FORMULA })}\r\n`;
}
