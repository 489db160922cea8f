import * as fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';

import { COLUMNS, CsvError } from '../../renderer/log/csvColumns.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { writeCsv } from '../../renderer/log/csvWrite.ts';
import { bookOf, file, fileRounds, HEADER, row } from './csvFiles.ts';

const written = (rounds: Parameters<typeof bookOf>[0]) => {
  const book = bookOf(rounds);
  return writeCsv(book, book.rounds.values());
};

describe('the columns', () => {
  it('are exactly these, in this order', () => {
    expect(HEADER).toBe(
      'date,session,round,condition,game,spot,shot,first,makes,attempts,nerves,shooter,note',
    );
  });
  it('may come in any order', () => {
    const turned = file(row({ note: 'windy' }))
      .split('\r\n')
      .map((line) => line.split(',').toReversed().join(','))
      .join('\r\n');
    expect(readCsv(turned)).toEqual(readCsv(file(row({ note: 'windy' }))));
  });
});

describe('a record file', () => {
  it('tells rounds, one row for each spot and kind of shot', () => {
    const rounds = readCsv(
      file(
        row(),
        row({ spot: 'right-corner', makes: '4' }),
        row({ round: '3', condition: 'relaxed', nerves: '', first: '', note: 'calm' }),
      ),
    );
    expect(rounds).toEqual([
      {
        shooter: 'Ines',
        date: '2026-11-25',
        session: '1',
        label: '2',
        condition: 'pressured',
        game: 'Threes',
        first: 25,
        nerves: 6,
        note: '',
        cells: [
          { spot: 'left-corner', shot: 'catch', makes: 3, attempts: 5 },
          { spot: 'right-corner', shot: 'catch', makes: 4, attempts: 5 },
        ],
      },
      {
        shooter: 'Ines',
        date: '2026-11-25',
        session: '1',
        label: '3',
        condition: 'relaxed',
        game: 'Threes',
        first: null,
        nerves: null,
        note: 'calm',
        cells: [{ spot: 'left-corner', shot: 'catch', makes: 3, attempts: 5 }],
      },
    ]);
  });
  it('may count its sessions anew every day', () => {
    const rounds = readCsv(file(row(), row({ date: '2026-11-26' })));
    expect(rounds.map((round) => [round.date, round.session, round.label])).toEqual([
      ['2026-11-25', '1', '2'],
      ['2026-11-26', '1', '2'],
    ]);
  });
  it('may hold several shooters with the same session and round', () => {
    expect(readCsv(file(row(), row({ shooter: 'Tobi' }))).map((round) => round.shooter)).toEqual([
      'Ines',
      'Tobi',
    ]);
  });
  it.each([
    ['Left corner', 'left-corner'],
    ['LEFT-CORNER', 'left-corner'],
    ['Top of the key', 'top'],
    ['free throw', 'free-throw'],
    ['Short corner', 'Short corner'],
  ])('may call a spot %j', (spot, is) => {
    expect(readCsv(file(row({ spot })))[0]?.cells[0]?.spot).toBe(is);
  });
  it('may say what belongs to the whole round in one of its rows, and a note in each', () => {
    const [round] = readCsv(
      file(
        row({ note: 'windy' }),
        row({ spot: 'top', game: '', first: '', nerves: '', note: '' }),
        row({ spot: 'right-wing', note: 'off balance' }),
        row({ spot: 'left-wing', note: 'windy' }),
      ),
    );
    expect(round).toMatchObject({ game: 'Threes', first: 25, nerves: 6, note: 'windy; off balance' });
  });
  it.each([
    ['a byte order mark', `\uFEFF${file(row())}`],
    ['no line break at the end', file(row()).trimEnd()],
    ['bare line feeds', file(row()).replaceAll('\r\n', '\n')],
    ['bare carriage returns', file(row()).replaceAll('\r\n', '\r')],
    ['a mix of them', `${HEADER}\r\n${row()}\n`],
    ['blank lines', file('', row(), '  ', '')],
    ['rows of nothing but commas, as spreadsheets leave them', file(row(), ','.repeat(12), ','.repeat(12))],
    ['blanks around the fields', file(row().replaceAll(',', ' , '))],
    ['quotation marks around every field', file(row()).replaceAll(/[^,\r\n]+/g, '"$&"')],
  ])('is read with %s', (_what, text) => {
    expect(readCsv(text)).toEqual(readCsv(file(row())));
  });
});

describe('RFC 4180', () => {
  // The rules of section 2, by number; rule 7's example is the RFC's own.
  it('2.1: records are written with CRLF, also after the last', () => {
    const text = written(readCsv(file(row(), row({ spot: 'top' }))));
    expect(text.split('\r\n')).toHaveLength(4);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
  it('2.3: the header comes first', () => {
    expect(written([]).split('\r\n')[0]).toBe(HEADER);
  });
  it('2.4: blanks inside a field belong to it', () => {
    expect(readCsv(file(row({ game: 'Five  by  five' })))[0]?.game).toBe('Five  by  five');
  });
  it.each([
    ['2.6: a comma', 'left, then right'],
    ['2.6: CRLF', 'one\r\ntwo'],
    ['2.6: LF', 'one\ntwo'],
    ['2.6: a bare CR', 'one\rtwo'],
    ['2.7: a quotation mark', 'b"bb'],
    ['2.7: nothing but quotation marks', '"""'],
  ])('%s in a field stands in quotation marks', (_rule, note) => {
    const quoted = `"${note.replaceAll('"', '""')}"`;
    const [round] = readCsv(file(row({ note: quoted })));
    expect(round?.note).toBe(note);
    expect(written(round ? [round] : [])).toBe(file(row({ note: quoted })));
  });
  it('2.7: "aaa","b""bb","ccc"', () => {
    const [round] = readCsv(file(row({ game: '"aaa"', shooter: '"b""bb"', note: '"ccc"' })));
    expect([round?.game, round?.shooter, round?.note]).toEqual(['aaa', 'b"bb', 'ccc']);
  });
});

describe('what is written', () => {
  it('is read back as it was, whatever the names and notes', () => {
    fc.assert(
      fc.property(fileRounds, (rounds) => {
        expect(readCsv(written(rounds))).toEqual(rounds);
      }),
      { numRuns: 500 },
    );
  });
  it('is no formula to a spreadsheet', () => {
    fc.assert(
      fc.property(fileRounds, (rounds) => {
        const fields = Papa.parse<string[]>(written(rounds), { delimiter: ',', newline: '\r\n' }).data.flat();
        expect(fields.filter((field) => /^[=+\-@\t\r\n]/.test(field))).toEqual([]);
      }),
    );
  });
  it.each([
    ['=HYPERLINK("http://example.org")', '"\'=HYPERLINK(""http://example.org"")"'],
    ['=1+1\nsecond line', '"\'=1+1\nsecond line"'],
    ['+49 …', '"\'+49 …"'],
    ['-', '"\'-"'],
    ['@home', '"\'@home"'],
    ["'=quoted already", '"\'\'=quoted already"'],
    ["'tis nothing", "'tis nothing"],
  ])('marks %j as text', (note, field) => {
    const text = written(readCsv(file(row())).map((round) => ({ ...round, note })));
    expect(text).toBe(file(row({ note: field })));
    expect(readCsv(text)[0]?.note).toBe(note);
  });
  it('gives rounds of one name in one session names of their own', () => {
    const [round] = readCsv(file(row()));
    const twice = round ? [round, { ...round, nerves: 7 }, { ...round, nerves: 8 }] : [];
    expect(readCsv(written(twice)).map(({ label, nerves }) => [label, nerves])).toEqual([
      ['2', 6],
      ['2 (2)', 7],
      ['2 (3)', 8],
    ]);
  });
});

describe('a damaged file', () => {
  const sound = written(
    readCsv(
      file(
        row({ note: '"a, ""b"""' }),
        row({ spot: 'top', nerves: '' }),
        row({ round: '3', shooter: 'Tobi' }),
      ),
    ),
  );
  const scrap = fc.oneof(
    fc.constantFrom(
      '"',
      ',',
      '\r\n',
      '\n',
      '\r',
      '""',
      '0',
      '-1',
      '1e9',
      'NaN',
      '\u0000',
      ' ',
      'relaxed',
      '\uFFFD',
    ),
    fc.string({ maxLength: 3 }),
  );
  const cut = fc.record({ at: fc.nat({ max: sound.length }), gone: fc.nat({ max: 12 }), put: scrap });

  it('is taken whole or refused with its faults placed, and nothing else happens', () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.array(cut, { minLength: 1, maxLength: 4 }), (cuts) => {
        const text = cuts.reduce(
          (old, { at, gone, put }) => old.slice(0, at) + put + old.slice(at + gone),
          sound,
        );
        let failed: unknown = null;
        try {
          const rounds = readCsv(text);
          // What is taken is sound: it can be written and read again.
          expect(readCsv(written(rounds))).toEqual(rounds);
        } catch (error) {
          failed = error;
          refused += 1;
        }
        expect(failed === null || failed instanceof CsvError).toBe(true);
        const faults = failed instanceof CsvError ? failed.faults : [];
        const lines = text.split(/\r\n?|\n/).length;
        for (const { row: at, column, reason } of faults) {
          expect(Number.isInteger(at) && at >= 0 && at <= lines).toBe(true);
          expect(column === null || COLUMNS.includes(column)).toBe(true);
          expect(reason).toMatch(/\S/);
        }
        expect(faults.length > 0).toBe(failed !== null);
      }),
      { numRuns: 800 },
    );
    // The damage done here is real: a good part of the files must have been refused.
    expect(refused).toBeGreaterThan(200);
  });
});
