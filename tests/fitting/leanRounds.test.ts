import { describe, expect, it } from 'vitest';

import { LeanRounds } from '../../renderer/fitting/leanRounds.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Entry, type Round } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';

const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const rounds = structuredClone([...book.rounds.values()]);

describe('rounds kept small', () => {
  it('are the same but for the ids of single entries', () => {
    const lean = new LeanRounds();
    const noIds = (round: Round): Round => ({
      ...round,
      entries: round.entries.map((entry): Entry => ({ ...entry, id: '' })),
    });
    expect(rounds.map((round) => lean.made(round))).toEqual(rounds.map(noIds));
  });

  it('keep entries of every kind', () => {
    const [round] = rounds;
    if (!round) throw new Error('no round');
    const entries: Entry[] = [
      { kind: 'expired', id: 'x', at: 5, stop: 0 },
      { kind: 'count', id: 'y', at: 6, stop: 0, makes: 2, attempts: 3 },
      { kind: 'shot', id: 'z', at: 7, stop: 1, made: false, side: 'short' },
    ];
    const kept = new LeanRounds().made({ ...round, entries }).entries;
    expect(kept).toEqual(entries.map((entry) => ({ ...entry, id: '' })));
  });

  it('share one card where their cards are alike', () => {
    const lean = new LeanRounds();
    const cards = new Set(rounds.map((round) => lean.made(round).stops));
    expect(cards.size).toBe(new Set(rounds.map(({ stops }) => JSON.stringify(stops))).size);
    expect(cards.size).toBeLessThan(rounds.length / 5);
  });
});
