import { describe, expect, it } from 'vitest';

import type { ChokeIndex } from '../../../renderer/stats/model/chokeIndex.ts';
import { feltOf } from '../../../renderer/stats/model/felt.ts';
import { fitDrop } from '../../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { verdictOf } from '../../../renderer/stats/model/verdict.ts';
import { freeThrows, roundOf } from '../rounds.ts';

const HAVE = {
  relaxed: { makes: 70, attempts: 100 },
  pressured: { makes: 60, attempts: 100 },
  sessions: 4,
};
const CALM = { e: 1, highest: 1 };

/** An index with these chances of a drop, and of one within 3 points of none. */
function index(probability: number, probabilitySame = 0.1): ChokeIndex {
  const fit = fitDrop(
    modelData([roundOf('relaxed', [freeThrows(7, 10)]), roundOf('pressured', [freeThrows(6, 10)])]),
  );
  if (fit.index.kind === 'none') throw new Error(fit.index.reason);
  return { ...fit.index, overall: { ...fit.index.overall, probability, probabilitySame } };
}

describe('the verdict', () => {
  it('waits for 100 pressured shots and 4 sessions with both conditions', () => {
    const few = { ...HAVE, pressured: { makes: 1, attempts: 99 }, sessions: 3 };
    expect(verdictOf(index(1), { e: 99, highest: 99 }, few)).toEqual({
      kind: 'none',
      needs: { pressured: 1, sessions: 1 },
    });
    expect(verdictOf(index(0.999), CALM, HAVE)).toEqual({ kind: 'drop', sure: 'clear' });
  });

  it.each([
    [0.991, 0.1, 1, { kind: 'drop', sure: 'clear' }],
    [0.99, 0.1, 1, { kind: 'drop', sure: 'likely' }],
    [0.951, 0.1, 1, { kind: 'drop', sure: 'likely' }],
    [0.95, 0.1, 1, { kind: 'unclear' }],
    [0.8, 0.1, 20, { kind: 'drop', sure: 'clear' }],
    [0.8, 0.1, 19.9, { kind: 'unclear' }],
    // Bets won early do not outlast a gain.
    [0.5, 0.1, 99, { kind: 'unclear' }],
    [0.004, 0.1, 99, { kind: 'gain', sure: 'clear' }],
    [0.5, 0.91, 1, { kind: 'same' }],
    [0.5, 0.9, 1, { kind: 'unclear' }],
    [0.049, 0.1, 1, { kind: 'gain', sure: 'likely' }],
    [0.009, 0.1, 1, { kind: 'gain', sure: 'clear' }],
  ])('reads P %d, P(same) %d and evidence %d', (probability, same, highest, verdict) => {
    expect(verdictOf(index(probability, same), { e: 1, highest }, HAVE)).toEqual(verdict);
  });

  it('has nothing to say without an index', () => {
    const none = { kind: 'none', reason: 'no relaxed shot', seen: 0 } as const;
    expect(verdictOf(none, CALM, HAVE)).toEqual({ kind: 'none', needs: { pressured: 0, sessions: 0 } });
  });
});

describe('whether pressure was felt', () => {
  const round = (id: string, condition: 'relaxed' | 'pressured', nerves: number | null) => ({
    ...roundOf(condition, [freeThrows(5, 10)]),
    id,
    nerves,
  });

  it('sorts pressured rounds by the median nerves of the relaxed ones', () => {
    const felt = feltOf([
      ...[1, 2, 4, 9].map((nerves) => round(`r${nerves}`, 'relaxed', nerves)),
      round('up', 'pressured', 4),
      round('level', 'pressured', 3),
      round('unknown', 'pressured', null),
    ]);
    expect(felt).toEqual({
      line: { before: 3, during: null },
      felt: { rounds: ['up'], makes: 5, attempts: 10 },
      unfelt: { rounds: ['level'], makes: 5, attempts: 10 },
      unrated: { rounds: ['unknown'], makes: 5, attempts: 10 },
    });
  });

  it('counts nerves that rose only during the round', () => {
    const rated = (
      id: string,
      condition: 'relaxed' | 'pressured',
      nerves: number,
      nervesAfter: number | null,
    ) => ({
      ...round(id, condition, nerves),
      nervesAfter,
    });
    const felt = feltOf([
      ...['a', 'b', 'c'].map((id) => rated(id, 'relaxed', 2, 3)),
      rated('later', 'pressured', 2, 4),
      rated('never', 'pressured', 2, 3),
      rated('unasked', 'pressured', 2, null),
    ]);
    expect(felt.line).toEqual({ before: 2, during: 3 });
    expect(felt.felt.rounds).toEqual(['later']);
    expect(felt.unfelt.rounds).toEqual(['never', 'unasked']);
  });

  it('has no line from two rated rounds', () => {
    const felt = feltOf([round('a', 'relaxed', 1), round('b', 'relaxed', 1), round('c', 'pressured', 1)]);
    expect(felt.line).toBeNull();
    expect(felt.unrated.rounds).toEqual(['c']);
  });
});
