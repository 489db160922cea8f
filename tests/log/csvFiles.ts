import * as fc from 'fast-check';

import { SHOT_KINDS, SPOTS } from '../../renderer/court/spots.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { COLUMNS, type Column } from '../../renderer/log/csvColumns.ts';
import { shooterKey, type FileRound } from '../../renderer/log/csvRounds.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { diary } from './diary.ts';

export const HEADER = COLUMNS.join(',');

export const FIELDS: Readonly<Record<Column, string>> = {
  date: '2026-11-25',
  session: '1',
  round: '2',
  condition: 'pressured',
  game: 'Threes',
  spot: 'left-corner',
  shot: 'catch',
  first: '25',
  makes: '3',
  attempts: '5',
  nerves: '6',
  shooter: 'Ines',
  note: '',
};

/** One row of a record file, as it stands in the file. */
export function row(change: Partial<Record<Column, string>> = {}): string {
  return COLUMNS.map((column) => change[column] ?? FIELDS[column]).join(',');
}

/** A whole file out of rows. */
export function file(...rows: readonly string[]): string {
  return [HEADER, ...rows, ''].join('\r\n');
}

/** Names as people, spreadsheets and attackers write them; without outer blanks, which a file does not keep. */
const nasty = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '"',
        '""',
        ',',
        ';',
        '\n',
        '\r',
        '\r\n',
        "'",
        '=',
        '+',
        '-',
        '@',
        '\t',
        ' ',
        '=1+1',
        '#',
        '\\',
      ),
      fc.constantFrom(
        'Ines',
        'Käthe',
        '李',
        '🏀',
        'e\u0301',
        '\u200d',
        '\uFEFF',
        '\u00a0',
        'O’Neil',
        '__proto__',
      ),
      fc.string({ maxLength: 4, unit: 'binary' }),
    ),
    { maxLength: 6 },
  )
  .map((pieces) => pieces.join('').trim());
const name = nasty.filter((text) => text !== '');

const cell = fc
  .record({
    spot: fc.oneof(fc.constantFrom<string>(...SPOTS), name),
    shot: fc.constantFrom(...SHOT_KINDS),
    makes: fc.nat({ max: 100 }),
    misses: fc.nat({ max: 100 }),
  })
  .map(({ spot, shot, makes, misses }) => ({ spot, shot, makes, attempts: Math.max(1, makes + misses) }));

const fileRound = fc.record({
  shooter: name,
  date: fc.constantFrom('2026-11-25', '2026-11-26', '2024-02-29'),
  session: name,
  label: name,
  condition: fc.constantFrom('relaxed' as const, 'pressured' as const),
  game: nasty,
  first: fc.option(fc.nat({ max: 999_999 })),
  nerves: fc.option(
    fc.oneof(
      fc.nat({ max: 10 }),
      fc.nat({ max: 9999 }).map((n) => n / 1000),
    ),
  ),
  note: nasty,
  cells: fc.uniqueArray(cell, {
    minLength: 1,
    maxLength: 4,
    selector: ({ spot, shot }) => `${spot}\n${shot}`,
  }),
});

/** Rounds that a file can hold, each with a title of its own. */
export const fileRounds: fc.Arbitrary<FileRound[]> = fc.uniqueArray(fileRound, {
  minLength: 1,
  maxLength: 6,
  selector: ({ shooter, date, session, label }) =>
    JSON.stringify([shooterKey(shooter), date, session, label]),
});

/** A book with these rounds in it, each shooter known by their name. */
export function bookOf(rounds: readonly FileRound[]): Book {
  const log = diary();
  for (const shooter of new Set(rounds.map((round) => round.shooter))) {
    log.write('ShooterAdded', {
      shooter,
      name: shooter,
      hand: 'right',
      rules: 'FIBA',
      units: 'metric',
      demo: false,
    });
  }
  for (const [at, round] of rounds.entries()) {
    log.write('RoundImported', { ...round, round: `round ${at}`, cells: [...round.cells] });
  }
  return foldAll(EMPTY_BOOK, log.events);
}
