import { describe, expect, it } from 'vitest';

import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { writeCsv } from '../../renderer/log/csvWrite.ts';
import { planImport } from '../../renderer/log/importRounds.ts';
import { roundCells } from '../../renderer/log/roundCells.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import { othersIn } from '../../renderer/games/gameOn.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { groupOf, shoot } from '../games/onCourt.ts';
import { diary, readableIds } from './diary.ts';

const DEFAULTS = { hand: 'right', rules: 'FIBA', units: 'metric' } as const;
const DUEL: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 1, extraPairs: 2 };
const LIVES: GamePlan = { family: 'lives', needed: 3, lives: 3 };

/** A game of several, played out: every third shot misses. */
function played(plan: GamePlan, shooters: readonly string[]) {
  const log = groupOf(plan, 'shot', shooters);
  for (let at = 0; log.book().open; at += 1) shoot(log, at % 3 !== 2);
  return log;
}

const csvOf = (book: Book): string => writeCsv(book, book.rounds.values());

/** What is on everybody's record, by name. */
function records(book: Book): unknown {
  return Object.fromEntries(
    [...book.rounds.values()].map((round) => [
      book.shooters.get(round.shooter)?.name,
      [round.date, round.condition, round.game, round.nerves, roundCells(round)],
    ]),
  );
}

describe.each([
  ['a duel', DUEL, ['ines', 'tobi']],
  ['a game of three', LIVES, ['ines', 'tobi', 'ada']],
] as const)('%s in a record file', (_, plan, shooters) => {
  it('is everybody’s own rounds, and comes in on another device as such', () => {
    const here = played(plan, shooters).book();
    const rounds = readCsv(csvOf(here));
    expect(rounds.map(({ shooter }) => shooter).toSorted()).toEqual(
      shooters.map((name) => `${name[0]?.toUpperCase()}${name.slice(1)}`).toSorted(),
    );
    const there = diary();
    there.tap(planImport(EMPTY_BOOK, rounds, readableIds(), DEFAULTS).facts);
    expect(there.book().skipped).toBe(0);
    expect(records(there.book())).toEqual(records(here));
    // A file tells shots, not games: nothing is won or owed from it.
    for (const round of there.book().rounds.values()) {
      expect([round.group, verdictOf(round, othersIn(there.book(), round))]).toEqual([null, null]);
    }
  });
  it('is known on the device it was played on', () => {
    const here = played(plan, shooters).book();
    const again = planImport(here, readCsv(csvOf(here)), readableIds(), DEFAULTS);
    expect(again).toMatchObject({ rounds: 0, doubles: shooters.length, facts: [] });
  });
});

describe('a duel whose other shooter is removed later', () => {
  it('is as it was: shots, verdict and file', () => {
    const log = played(DUEL, ['ines', 'tobi']);
    const before = log.book();
    const ines = (book: Book) => {
      const round = book.rounds.get('round ines');
      if (!round) throw new Error('a round of Ines');
      return round;
    };
    log.write('ShooterRemoved', { shooter: 'tobi' });
    const after = log.book();
    expect(after.rounds).toEqual(before.rounds);
    expect(verdictOf(ines(after), othersIn(after, ines(after)))).toBe(
      verdictOf(ines(before), othersIn(before, ines(before))),
    );
    expect(csvOf(after)).toBe(csvOf(before));
    // Somebody new of the same name is somebody else.
    const brought = planImport(after, readCsv(csvOf(after)), readableIds(), DEFAULTS);
    expect(brought).toMatchObject({ doubles: 1, rounds: 1, newShooters: ['Tobi'] });
  });
});
