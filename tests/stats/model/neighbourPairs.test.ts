import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Cell, type Round } from '../../../renderer/log/book.ts';
import type { Condition } from '../../../renderer/log/events.ts';
import { foldAll } from '../../../renderer/log/fold.ts';
import { freeThrowTally } from '../../../renderer/stats/freeThrows.ts';
import { looksTossed, neighbourPairs } from '../../../renderer/stats/model/neighbourPairs.ts';
import { playedPairs } from '../../../renderer/stats/model/pairs.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

function round(label: string, condition: Condition, cells: readonly Cell[], date = '2026-03-02'): Round {
  return { ...roundOf(condition, cells, { date }), id: `${date} ${label}`, label };
}

const tens = (makes: number): Cell[] => [three('top', makes, 10)];
const calm = (label: string, makes: number) => round(label, 'relaxed', tens(makes));
const tense = (label: string, makes: number) => round(label, 'pressured', tens(makes));

describe('pairs found in a record', () => {
  it('are neighbours of the two conditions, from the start of the session on', () => {
    const rounds = [calm('1', 9), calm('2', 6), tense('3', 4), tense('4', 5), calm('5', 8), tense('6', 1)];
    const pairs = neighbourPairs(rounds.toReversed());
    expect(pairs.played.map(({ difference, attempts }) => [difference, attempts])).toEqual([
      [2, 10],
      [3, 10],
    ]);
    expect(pairs.relaxedFirst).toBe(1);
    expect(pairs.leftOut).toEqual(['2026-03-02 6']);
  });

  it('had the same attempts from the same spots, in whatever order the file names them', () => {
    const mixed = (condition: Condition, label: string, ...cells: Cell[]) => round(label, condition, cells);
    const fits = (cells: Cell[]) =>
      neighbourPairs([
        mixed('relaxed', '1', three('top', 3, 5), freeThrows(4, 5)),
        mixed('pressured', '2', ...cells),
      ]).played.length;
    expect(fits([freeThrows(2, 5), three('top', 1, 5)])).toBe(1);
    expect(fits([three('left-wing', 2, 5), freeThrows(2, 5)])).toBe(0);
    expect(fits([three('top', 2, 6), freeThrows(2, 4)])).toBe(0);
    expect(fits([three('top', 2, 5)])).toBe(0);
  });

  it('do not reach over to the next session, and come day by day', () => {
    const on = (date: string, ...makes: [number, number]) => [
      round('1', 'relaxed', tens(makes[0]), date),
      round('2', 'pressured', tens(makes[1]), date),
    ];
    const alone = [
      round('1', 'relaxed', tens(5), '2026-03-04'),
      round('1', 'pressured', tens(5), '2026-03-05'),
    ];
    const { played } = neighbourPairs([...alone, ...on('2026-03-03', 5, 5), ...on('2026-03-02', 9, 1)]);
    expect(played.map(({ difference }) => difference)).toEqual([8, 0]);
  });

  it('can be asked for free throws alone: the same pairs, other shots', () => {
    const card = (threes: number, line: number): Cell[] => [three('top', threes, 10), freeThrows(line, 5)];
    const rounds = [
      round('1', 'relaxed', card(7, 4)),
      round('2', 'pressured', card(3, 3)),
      round('3', 'relaxed', tens(5)),
      round('4', 'pressured', tens(5)),
    ];
    expect(neighbourPairs(rounds).played).toHaveLength(2);
    expect(neighbourPairs(rounds, freeThrowTally)).toMatchObject({
      played: [{ difference: 1, attempts: 5 }],
      leftOut: [],
    });
  });

  it('are those the coin laid down, where every round is part of one', () => {
    const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
    for (const shooter of book.shooters.keys()) {
      const rounds = [...book.rounds.values()].filter((one) => one.shooter === shooter);
      const numbers = ({ played }: ReturnType<typeof playedPairs>) =>
        played.map(({ difference, attempts }) => ({ difference, attempts }));
      const found = neighbourPairs(rounds);
      expect(numbers(found)).toEqual(numbers(playedPairs(rounds)));
      expect(found.leftOut).toEqual([]);
      expect(looksTossed(found)).toBe(true);
    }
  });
});

describe('the order of pairs', () => {
  const ordered = (n: number, relaxedFirst: number) => ({
    played: Array.from({ length: n }, (_, i) => ({ id: `${i}`, difference: 1, attempts: 10 })),
    leftOut: [],
    stopped: [],
    relaxedFirst,
  });

  it('could be a coin’s unless it is too lopsided', () => {
    expect(looksTossed(ordered(0, 0))).toBe(true);
    expect(looksTossed(ordered(4, 4))).toBe(true);
    expect(looksTossed(ordered(5, 5))).toBe(false);
    expect(looksTossed(ordered(5, 0))).toBe(false);
    expect(looksTossed(ordered(5, 4))).toBe(true);
    expect(looksTossed(ordered(5000, 5000))).toBe(false);
    expect(looksTossed(ordered(5000, 2480))).toBe(true);
  });

  it('is taken for no coin’s in at most 1 of 16 records of a coin', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (n) => {
        let refused = 0;
        let chance = 0.5 ** n;
        for (let heads = 0; heads <= n; heads += 1) {
          if (!looksTossed(ordered(n, heads))) refused += chance;
          chance *= (n - heads) / (heads + 1);
        }
        expect(refused).toBeLessThanOrEqual(1 / 16 + 1e-9);
      }),
    );
  });
});
