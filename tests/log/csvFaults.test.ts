import { describe, expect, it } from 'vitest';

import { CsvError, faultWords, type Column, type CsvFault } from '../../renderer/log/csvColumns.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { file, HEADER, row } from './csvFiles.ts';

function faultsOf(text: string): readonly CsvFault[] {
  try {
    readCsv(text);
  } catch (error) {
    if (error instanceof CsvError) return error.faults;
    throw error;
  }
  return [];
}

describe('a field that cannot be', () => {
  it.each<readonly [Column, string, RegExp]>([
    ['date', '25.11.2026', /calendar day/],
    ['date', '2026-02-30', /calendar day/],
    ['date', '', /An empty field/],
    ['session', '', /empty/],
    ['round', ' ', /empty/],
    ['shooter', '', /empty/],
    ['spot', '', /empty/],
    ['condition', 'Relaxed', /neither relaxed nor pressured/],
    ['condition', '', /neither/],
    ['shot', 'dunk', /none of catch, dribble-left, dribble-right, free-throw, form/],
    ['first', '-1', /whole number/],
    ['first', '2.5', /whole number/],
    ['makes', '', /whole number/],
    ['makes', 'three', /whole number/],
    ['makes', '6', /6 makes of 5 attempts/],
    ['makes', '1e1', /whole number/],
    ['attempts', '0', /No attempts/],
    ['attempts', '12345678', /whole number/],
    ['nerves', '11', /0 to 10/],
    ['nerves', '-1', /0 to 10/],
    ['nerves', 'high', /0 to 10/],
    ['nerves', '5.12345', /0 to 10/],
    ['shooter', 'x'.repeat(201), /Longer than 200/],
    ['note', 'x'.repeat(2001), /Longer than 2000/],
  ])('%s %j', (column, value, reason) => {
    // Where makes are fine, so are attempts: each case breaks one thing.
    const change = column === 'attempts' ? { makes: '0', [column]: value } : { [column]: value };
    const faults = faultsOf(file(row({ round: '1' }), row(change), row({ round: '9' })));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ row: 3, column });
    expect(faults[0]?.reason).toMatch(reason);
  });
});

describe('a file that does not hang together', () => {
  it.each<readonly [string, string, Partial<CsvFault>, RegExp]>([
    ['nothing at all', '', { row: 1, column: null }, /must name the columns/],
    ['no row below the header', file(), { row: 0, column: null }, /holds no rounds/],
    ['a header of other words', 'a,b,c\r\n1,2,3\r\n', { row: 1, column: null }, /must name the columns/],
    ['semicolons', file(row()).replaceAll(',', ';'), { row: 1, column: null }, /semicolons/],
    [
      'a column missing',
      file(row()).replaceAll(/,[^,]*(?=\r\n)/g, ''),
      { row: 1, column: 'note' },
      /missing/,
    ],
    [
      'a column of its own',
      `${HEADER},colour\r\n${row()},red\r\n`,
      { row: 1, column: null },
      /"colour" is no column/,
    ],
    ['a column twice', `${HEADER},note\r\n${row()},\r\n`, { row: 1, column: null }, /"note".*twice/],
    [
      'a field too many',
      file(row(), `${row({ round: '3' })},more`),
      { row: 3, column: null },
      /14 fields instead of 13/,
    ],
    ['a field too few', file(row(), '2026-11-25,1'), { row: 3, column: null }, /2 fields instead of 13/],
    ['a quotation mark never closed', file(row({ note: '"open' })), { column: null }, /never closed/],
    ['a quotation mark inside a field', file(row({ note: '"a"b"' })), { column: null }, /quotation mark/i],
    [
      'one round in two conditions',
      file(row(), row({ spot: 'top', condition: 'relaxed' })),
      { row: 3, column: 'condition' },
      /Differs from row 2/,
    ],
    [
      'one round with two ratings',
      file(row(), row({ spot: 'top', nerves: '7' })),
      { row: 3, column: 'nerves' },
      /Differs from row 2/,
    ],
    [
      'one round with notes without end',
      file(...['top', 'left-wing'].map((spot) => row({ spot, note: spot + 'x'.repeat(1500) }))),
      { row: 3, column: 'note' },
      /longer than 2000 characters together/,
    ],
    ['a spot twice in a round', file(row(), row()), { row: 3, column: 'spot' }, /twice/],
  ])('%s', (_what, text, place, reason) => {
    const faults = faultsOf(text);
    expect(faults[0]).toMatchObject(place);
    expect(faults[0]?.reason).toMatch(reason);
  });
  it('names all of its faults at once, by row as a spreadsheet counts', () => {
    const faults = faultsOf(
      file(row({ note: '"two\r\nlines"' }), row({ date: 'x', makes: 'y' }), '', row({ shot: 'z' })),
    );
    expect(faults.map((fault) => [fault.row, fault.column])).toEqual([
      [3, 'date'],
      [3, 'makes'],
      [5, 'shot'],
    ]);
  });
  it('with hundreds of faults names twenty and counts the rest', () => {
    const faults = faultsOf(
      file(...Array.from({ length: 300 }, (_, at) => row({ round: String(at), date: 'x' }))),
    );
    expect(faults).toHaveLength(21);
    expect(faults.at(-1)?.reason).toBe('… and 280 more faults.');
  });
});

describe('a fault in words', () => {
  it.each<readonly [CsvFault, string]>([
    [{ row: 3, column: 'makes', reason: 'Too many.' }, 'Row 3, makes: Too many.'],
    [{ row: 3, column: null, reason: 'Too short.' }, 'Row 3: Too short.'],
    [{ row: 0, column: null, reason: 'Nothing there.' }, 'Nothing there.'],
  ])('%j', (fault, words) => {
    expect(faultWords(fault)).toBe(words);
  });
  it('is what the error says', () => {
    expect(() => readCsv(file(row({ makes: '9' })))).toThrow(
      'Row 2, makes: 9 makes of 5 attempts cannot be.',
    );
  });
});
