import { CsvError } from './csvColumns.ts';

/** An encoding as `TextDecoder` calls it. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be';

/**
 * How a record file is written: UTF-8 unless it says that it is UTF-16 by its first two bytes, as some spreadsheets do.
 *
 * @throws CsvError where it is no text at all
 */
export function csvEncoding([first, second]: Uint8Array): Encoding {
  // A spreadsheet's own format is a zip archive, which begins with "PK".
  if (first === 0x50 && second === 0x4b) {
    const reason =
      'This is a spreadsheet, not a CSV file. In the spreadsheet, choose “Save as” and then CSV.';
    throw new CsvError([{ row: 0, column: null, reason }]);
  }
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
}
