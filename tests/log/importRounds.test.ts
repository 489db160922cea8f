import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import type { FileRound } from '../../renderer/log/csvRounds.ts';
import { writeCsv } from '../../renderer/log/csvWrite.ts';
import { parseEvent } from '../../renderer/log/envelope.ts';
import { stamp } from '../../renderer/log/facts.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { planImport, type Import, type Retold } from '../../renderer/log/importRounds.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { uuidV7, type Id } from '../../renderer/basics/ids.ts';
import { file, fileRounds, row } from './csvFiles.ts';
import { onCourt, START, tap } from './diary.ts';

const DEFAULTS = { hand: 'right', rules: 'FIBA', units: 'metric' } as const;
const rng = rngFromSeed(1);
const newId = <Kind extends string>(): Id<Kind> => uuidV7<Kind>(START, rng.bytes());

const plan = (book: Book, rounds: readonly FileRound[], retold: Retold = 'replace') =>
  planImport(book, rounds, newId, DEFAULTS, retold);
const take = (book: Book, { facts }: Import) =>
  foldAll(book, stamp(facts, { at: START, zone: 0, device: 'tablet', newId }));
const counts = ({ rounds, replaced, doubles, retold, beside }: Import) => ({
  rounds,
  replaced,
  doubles,
  retold,
  beside,
});
const NOTHING = { rounds: 0, replaced: 0, doubles: 0, retold: 0, beside: 0 };

/** Ines's four shots in the app, three of them made, as round 1 of 2026-11-25/1. */
function playedBook(): Book {
  const log = onCourt();
  tap(log, 'ooox');
  log.write('RoundEnded', { round: 'round 1', why: 'played-out', clockLeft: null });
  return log.book();
}

describe('taking a file in', () => {
  it('adds its rounds and its shooters', () => {
    const done = plan(EMPTY_BOOK, readCsv(file(row(), row({ round: '3' }), row({ shooter: 'Tobi' }))));
    expect(counts(done)).toEqual({ ...NOTHING, rounds: 3 });
    expect(done.newShooters).toEqual(['Ines', 'Tobi']);
    const book = take(EMPTY_BOOK, done);
    expect(book.rounds.size).toBe(3);
    expect([...book.shooters.values()].map(({ name, rules }) => [name, rules])).toEqual([
      ['Ines', 'FIBA'],
      ['Tobi', 'FIBA'],
    ]);
  });
  it('finds shooters by name, whatever the case and the outer blanks', () => {
    const done = plan(playedBook(), readCsv(file(row({ shooter: 'INES' }))));
    expect(done.newShooters).toEqual([]);
    expect(take(playedBook(), done).rounds.size).toBe(2);
  });
  it('does not bring a removed shooter back under their old id', () => {
    const log = onCourt();
    log.write('ShooterRemoved', { shooter: 'ines' });
    expect(plan(log.book(), readCsv(file(row()))).newShooters).toEqual(['Ines']);
  });
  it('twice changes nothing the second time, whatever the file', () => {
    fc.assert(
      fc.property(fileRounds, (rounds) => {
        const once = plan(EMPTY_BOOK, rounds);
        const book = take(EMPTY_BOOK, once);
        const again = plan(book, rounds);
        expect(counts(again)).toEqual({ ...NOTHING, doubles: rounds.length });
        expect(again.facts).toEqual([]);
      }),
    );
  });
  it('writes only what can be read again, whatever the file', () => {
    fc.assert(
      fc.property(fileRounds, (rounds) => {
        const facts = plan(EMPTY_BOOK, rounds).facts;
        const events = stamp(facts, { at: START, zone: 0, device: 'tablet', newId });
        expect(events.map((event) => parseEvent(event))).toEqual(
          events.map((event) => ({ known: true, event })),
        );
      }),
    );
  });
  it('of what was written here finds every round again', () => {
    const book = playedBook();
    const text = writeCsv(book, book.rounds.values());
    expect(counts(plan(book, readCsv(text)))).toEqual({ ...NOTHING, doubles: 1 });
  });
});

describe('a round told differently', () => {
  const before = take(EMPTY_BOOK, plan(EMPTY_BOOK, readCsv(file(row({ makes: '3' })))));
  const corrected = readCsv(file(row({ makes: '4' })));
  const makes = (book: Book) => [...book.rounds.values()].map((round) => roundTally(round).makes);

  it('takes the place of the one that came in before', () => {
    const done = plan(before, corrected);
    expect(counts(done)).toEqual({ ...NOTHING, replaced: 1, retold: 1 });
    expect(makes(take(before, done))).toEqual([4]);
  });
  it('stands beside it where the shooter says so, and is then found again', () => {
    const done = plan(before, corrected, 'keep-both');
    expect(counts(done)).toEqual({ ...NOTHING, rounds: 1, retold: 1 });
    const both = take(before, done);
    expect(makes(both)).toEqual([3, 4]);
    expect(counts(plan(both, corrected))).toEqual({ ...NOTHING, doubles: 1 });
    // Both go into one file under names of their own, and come back as what they are.
    const text = writeCsv(both, both.rounds.values());
    expect(readCsv(text).map(({ label }) => label)).toEqual(['2', '2 (2)']);
    expect(counts(plan(both, readCsv(text)))).toEqual({ ...NOTHING, doubles: 2 });
  });
  it('is counted where it bears the name of a round shot in the app, which stays', () => {
    const book = playedBook();
    const done = plan(book, readCsv(file(row({ session: '2026-11-25/1', round: '1' }))));
    expect(counts(done)).toEqual({ ...NOTHING, rounds: 1, beside: 1 });
    expect(makes(take(book, done))).toEqual([3, 3]);
  });
  it.each([
    ['nerves', '7'],
    ['first', '30'],
    ['game', 'Elbows'],
    ['note', 'windy'],
  ] as const)('is one whose %s was corrected: the shots are the same, the rest is mended', (column, told) => {
    const mended = readCsv(file(row({ makes: '3', [column]: told })));
    const done = plan(before, mended);
    expect(counts(done)).toEqual({ ...NOTHING, replaced: 1, retold: 1 });
    const after = take(before, done);
    expect([...after.rounds.values()].map((round) => String(round[column]))).toEqual([told]);
    expect(counts(plan(after, mended))).toEqual({ ...NOTHING, doubles: 1 });
  });
  it('but was shot in the app stays as it is while its shots are the same', () => {
    const book = playedBook();
    const [round] = readCsv(writeCsv(book, book.rounds.values()));
    const told = round ? [{ ...round, nerves: 9, note: 'from memory' }] : [];
    expect(counts(plan(book, told))).toEqual({ ...NOTHING, doubles: 1 });
  });
  it('is another round on another day', () => {
    const done = plan(before, readCsv(file(row({ date: '2026-11-26' }))));
    expect(counts(done)).toEqual({ ...NOTHING, rounds: 1 });
  });
});

describe('a spot of one’s own', () => {
  const spots = (book: Book) => [...book.rounds.values()].map(({ stops }) => stops.map(({ spot }) => spot));
  const corner = (spot: string, round = '2') => readCsv(file(row({ spot, round })));

  it('is found by name, as it was put on the floor', () => {
    const log = onCourt();
    log.write('OwnSpotPlaced', { spot: 'Short corner', x: 4, y: 0 });
    const book = take(log.book(), plan(log.book(), corner('short  Corner')));
    expect(spots(book)).toEqual([['Short corner']]);
    expect(counts(plan(book, corner('SHORT-CORNER')))).toEqual({ ...NOTHING, doubles: 1 });
  });
  it('is found by name where an earlier round or an earlier row has it', () => {
    const once = take(EMPTY_BOOK, plan(EMPTY_BOOK, corner('Short corner')));
    expect(spots(take(once, plan(once, corner('short corner', '3'))))).toEqual([
      ['Short corner'],
      ['Short corner'],
    ]);
    const rows = readCsv(file(row({ spot: 'The wall' }), row({ spot: 'the wall', round: '3' })));
    expect(spots(take(EMPTY_BOOK, plan(EMPTY_BOOK, rows)))).toEqual([['The wall'], ['The wall']]);
  });
  it('spelt in two ways in one round is one place', () => {
    const rows = readCsv(file(row({ spot: 'The wall' }), row({ spot: 'the wall', makes: '1' })));
    const book = take(EMPTY_BOOK, plan(EMPTY_BOOK, rows));
    expect([...book.rounds.values()].map((round) => [round.stops.length, roundTally(round)])).toEqual([
      [1, { makes: 4, attempts: 10 }],
    ]);
    expect(counts(plan(book, rows))).toEqual({ ...NOTHING, doubles: 1 });
  });
  it('that came in under another name before it was put on the floor does not come in twice', () => {
    const log = onCourt();
    log.write('RoundImported', {
      round: 'paper 1',
      shooter: 'ines',
      date: '2026-11-25',
      session: '1',
      label: '2',
      condition: 'pressured',
      game: 'Threes',
      cells: [{ spot: 'short corner', shot: 'catch', makes: 3, attempts: 5 }],
      first: 25,
      nerves: 6,
      note: '',
    });
    log.write('OwnSpotPlaced', { spot: 'Short corner', x: 4, y: 0 });
    expect(counts(plan(log.book(), corner('short corner')))).toEqual({ ...NOTHING, doubles: 1 });
  });
});

it('a shooter spelt in two ways in one file is one, round for round', () => {
  const rounds = readCsv(file(row(), row({ shooter: 'ines', spot: 'top' })));
  expect(rounds).toHaveLength(1);
  expect(rounds[0]).toMatchObject({ shooter: 'Ines', cells: [{ spot: 'left-corner' }, { spot: 'top' }] });
});
