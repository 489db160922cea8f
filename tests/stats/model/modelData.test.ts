import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { InvariantError } from '../../../renderer/basics/invariant.ts';
import type { Round } from '../../../renderer/log/book.ts';
import { modelData, UNKNOWN_INGREDIENTS } from '../../../renderer/stats/model/modelData.ts';
import { meanOrder, ORDER_COLUMNS } from '../../../renderer/stats/model/orderCurve.ts';
import { PLAIN, play } from '../../bench/modelWorld.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

function orderOf(data: ReturnType<typeof modelData>, cell: number): number[] {
  return Array.from(data.cells.order.subarray(cell * ORDER_COLUMNS, (cell + 1) * ORDER_COLUMNS));
}

function between(from: number, to: number): unknown[] {
  const out = new Float64Array(ORDER_COLUMNS);
  meanOrder(from, to, out);
  return Array.from(out, (value): unknown => expect.closeTo(value, 12));
}

/** A pressured round with these ingredients. */
function pressuredBy(ingredients: NonNullable<Round['pressure']>['ingredients'], date: string): Round {
  return {
    ...roundOf('pressured', [freeThrows(5, 10)], { date }),
    pressure: { ingredients, stake: null, mark: null, clock: null, crowd: false, showChance: true, seed: 1 },
  };
}

describe('cells from rounds', () => {
  it('takes `first` at its word, and counts on where it is empty', () => {
    const round = (label: string, first: number | null): Round => ({
      ...roundOf('relaxed', [three('top', 5, 10)]),
      id: label,
      label,
      first,
    });
    // In the order of their numbers, 10 after 9.
    const data = modelData([round('10', null), round('9', 40), round('2', null)]);
    expect([0, 1, 2].map((cell) => orderOf(data, cell))).toEqual([
      between(0, 10),
      between(40, 50),
      between(50, 60),
    ]);
  });

  it('spreads counts over the whole round, and puts single shots where they were', () => {
    const counted = roundOf('relaxed', [three('top', 2, 4), freeThrows(3, 4)]);
    expect(orderOf(modelData([counted]), 1)).toEqual(between(0, 8));
    const shots: Round = {
      ...counted,
      entries: [0, 0, 1, 1].map((stop, i) => ({
        kind: 'shot',
        id: `${i}`,
        at: 0,
        stop,
        made: i % 2 === 0,
        side: null,
      })),
    };
    const singly = modelData([shots]);
    expect([orderOf(singly, 0), orderOf(singly, 1)]).toEqual([between(0, 2), between(2, 4)]);
    expect([...singly.cells.makes]).toEqual([1, 1]);
    expect([...singly.cells.attempts]).toEqual([2, 2]);
  });

  it('loses no shot, one by one or counted', () => {
    for (const singly of [true, false]) {
      const { rounds } = play({ ...PLAIN, singly, pressure: () => -0.2 }, rngFromSeed(1));
      const { cells, leftOut } = modelData(rounds);
      expect(cells.attempts.reduce((sum, one) => sum + one, 0)).toBe(4 * 4 * 8 * 25);
      expect(leftOut).toEqual([]);
    }
  });

  it('counts calendar weeks from Monday, empty ones too', () => {
    const on = (date: string): Round => roundOf('relaxed', [three('top', 5, 10)], { date });
    // A Sunday, the Monday after, and a Wednesday two weeks on.
    const { sessions, weeks } = modelData([on('2026-03-18'), on('2026-03-02'), on('2026-03-01')]);
    expect([...sessions.week]).toEqual([0, 1, 3]);
    expect(weeks).toEqual({ count: 4, first: '2026-02-23' });
  });

  it('knows level and ingredients where they were noted', () => {
    const data = modelData([
      pressuredBy(['clock', 'crowd'], '2026-03-02'),
      pressuredBy(['crowd'], '2026-03-03'),
      roundOf('pressured', [freeThrows(5, 10)], { date: '2026-03-04' }),
      roundOf('relaxed', [freeThrows(5, 10)], { date: '2026-03-05' }),
    ]);
    expect(data.ingredients).toEqual(['clock', 'crowd']);
    expect([...data.cells.mask]).toEqual([0b11, 0b10, UNKNOWN_INGREDIENTS, 0]);
    expect([...data.cells.dose]).toEqual([0.4, 0.2, 0.5, 0]);
  });

  it('says what it leaves out', () => {
    const empty = { ...roundOf('relaxed', [three('top', 0, 0)]), id: 'empty' };
    const calm = { ...roundOf('pressured', [three('top', 5, 10)]), id: 'calm', nerves: 2 };
    const kept = roundOf('relaxed', [three('top', 5, 10)]);
    const data = modelData([empty, calm, kept], { feltAbove: { before: 2, during: null } });
    expect(data.leftOut).toEqual([
      { reason: 'no pressure felt', rounds: ['calm'], shots: 10 },
      { reason: 'no shot', rounds: ['empty'], shots: 0 },
    ]);
    expect(modelData([calm, kept]).leftOut).toEqual([]);
  });

  it('leaves out by nerves also where the usual nerves are 0', () => {
    const calm = { ...roundOf('pressured', [three('top', 5, 10)]), nerves: 0 };
    const { leftOut } = modelData([calm], { feltAbove: { before: 0, during: null } });
    expect(leftOut).toMatchObject([{ reason: 'no pressure felt', shots: 10 }]);
  });

  it('is the same whatever order the rounds come in', () => {
    const { rounds } = play({ ...PLAIN, weeks: 2, pressure: () => 0 }, rngFromSeed(4));
    const rng = rngFromSeed(9);
    const shuffled = rounds
      .map((round) => ({ round, key: rng.next() }))
      .toSorted((a, b) => a.key - b.key)
      .map(({ round }) => round);
    expect(modelData(shuffled)).toEqual(modelData(rounds));
  });

  it('is the same after a round is added, corrected or taken away as if it were all read anew', () => {
    const { rounds } = play({ ...PLAIN, weeks: 2, singly: true, pressure: () => 0 }, rngFromSeed(5));
    const record = rounds.map((round, at): Round => {
      const by = (['clock', 'crowd', 'watchers'] as const).slice(0, at % 4);
      return { ...round, nerves: at % 5, pressure: pressuredBy(by, round.date).pressure };
    });
    const [first, second, ...others] = record;
    if (!first || !second) throw new Error('no rounds');
    const corrected = { ...second, entries: second.entries.slice(0, 3) };
    const states = [others, record, [first, ...others], [first, corrected, ...others], record.slice(0, -1)];
    for (const options of [{}, { feltAbove: { before: 2, during: null } }]) {
      for (const state of [...states, ...states]) {
        // A copy has other objects, of which nothing is known yet.
        expect(modelData(state, options)).toEqual(modelData(structuredClone(state), options));
      }
    }
  });

  it('takes one shooter at a time, and none', () => {
    const other = { ...roundOf('relaxed', [three('top', 5, 10)]), shooter: 'other' };
    expect(() => modelData([roundOf('relaxed', [three('top', 5, 10)]), other])).toThrow(InvariantError);
    expect(modelData([]).weeks.count).toBe(0);
  });
});
