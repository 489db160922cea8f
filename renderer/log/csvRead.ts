import Papa from 'papaparse';

import { COLUMNS, CsvError, type Column, type CsvFault } from './csvColumns.ts';
import { gatherRounds, type FileRound } from './csvRounds.ts';
import { readRow, type CsvRow } from './csvRow.ts';

/** More faults than this are only counted: the first ones are enough to mend a file by. */
const MOST_FAULTS = 20;

/**
 * Reads a record file (RFC 4180, a header row with exactly the columns of {@link COLUMNS} in any order).
 * Rows with the same shooter, date, session and round are one round; the rounds come in the order of their first rows.
 *
 * @throws CsvError with every fault placed by row and column; a file with one fault gives nothing
 */
export function readCsv(text: string): FileRound[] {
  const faults: CsvFault[] = [];
  const rows = readRows(text, faults);
  const rounds = gatherRounds(rows, faults);
  if (faults.length > 0) throw new CsvError(trimmed(faults));
  return rounds;
}

function readRows(text: string, faults: CsvFault[]): CsvRow[] {
  const parsed = Papa.parse<string[]>(withEvenLines(text), {
    delimiter: ',',
    newline: '\n',
    skipEmptyLines: false,
  });
  for (const { row, code } of parsed.errors) {
    const reason =
      code === 'MissingQuotes'
        ? 'A quotation mark is opened and never closed.'
        : 'A quotation mark stands inside a field. Double it: "".';
    faults.push({ row: (row ?? 0) + 1, column: null, reason });
  }
  const [header = [], ...lines] = parsed.data;
  if (faults.length === 0) checkHeader(header, faults);
  if (faults.length > 0) return [];

  const rows: CsvRow[] = [];
  for (const [index, line] of lines.entries()) {
    const row = index + 2;
    if (line.every((field) => field.trim() === '')) continue;
    if (line.length !== header.length) {
      const reason = `${line.length} fields instead of ${header.length}. A comma inside a field needs "quotation marks" around the field.`;
      faults.push({ row, column: null, reason });
      continue;
    }
    const fields = Object.fromEntries(header.map((name, at) => [name.trim(), plain(line[at] ?? '')]));
    const read = readRow(row, fields as Record<Column, string>, (column, reason) =>
      faults.push({ row, column, reason }),
    );
    if (read) rows.push(read);
  }
  if (rows.length === 0 && faults.length === 0) {
    faults.push({
      row: 0,
      column: null,
      reason: 'The file holds no rounds: there is no row below the header.',
    });
  }
  return rows;
}

/** Every line ended by LF, whatever mix of CRLF, LF and CR the file came with; quoted fields keep what they hold. */
function withEvenLines(text: string): string {
  return text
    .replace(/^\uFEFF/, '')
    .replace(/"[^"]*"|\r\n?/g, (piece) => (piece.startsWith('"') ? piece : '\n'));
}

function checkHeader(header: readonly string[], faults: CsvFault[]): void {
  const names = header.map((name) => name.trim());
  const missing = COLUMNS.filter((column) => !names.includes(column));
  const unknown = names.filter(
    (name, at) => !(COLUMNS as readonly string[]).includes(name) || names.indexOf(name) !== at,
  );
  if (missing.length === COLUMNS.length) {
    const reason =
      names.length === 1 && names[0]?.includes(';')
        ? 'The fields are parted by semicolons. Save the file as CSV with commas.'
        : `The first row must name the columns: ${COLUMNS.join(',')}.`;
    faults.push({ row: 1, column: null, reason });
    return;
  }
  for (const column of missing) faults.push({ row: 1, column, reason: 'This column is missing.' });
  for (const name of unknown) {
    faults.push({
      row: 1,
      column: null,
      reason: `"${name}" is no column of a record file, or stands there twice.`,
    });
  }
}

/** A field without the outer blanks, and without the mark that keeps a spreadsheet from reading it as a formula. */
function plain(field: string): string {
  const text = field.trim();
  return /^'+[=+\-@\t\r\n]/.test(text) ? text.slice(1) : text;
}

function trimmed(faults: readonly CsvFault[]): CsvFault[] {
  if (faults.length <= MOST_FAULTS) return [...faults];
  const more = faults.length - MOST_FAULTS;
  return [...faults.slice(0, MOST_FAULTS), { row: 0, column: null, reason: `… and ${more} more faults.` }];
}
