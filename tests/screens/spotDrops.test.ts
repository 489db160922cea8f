import { describe, expect, it } from 'vitest';

import { spotDrops } from '../../renderer/screens/result/spotDrops.ts';
import type { IndexPlace } from '../../renderer/stats/model/chokeIndex.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { roundOf, three } from '../stats/rounds.ts';

const place = (change: Partial<IndexPlace>): IndexPlace => ({
  spot: 'top',
  shot: 'catch',
  weight: 0.5,
  raw: { relaxed: { makes: 30, attempts: 50 }, pressured: { makes: 20, attempts: 50 } },
  relaxed: 58,
  pressured: 44,
  points: 14,
  low: 4,
  high: 24,
  sd: 6,
  probability: 0.98,
  ...change,
});

const figures = (() => {
  const rounds = [
    roundOf('relaxed', [three('top', 30, 50), three('left-wing', 20, 50)]),
    roundOf('pressured', [three('top', 20, 50)]),
  ];
  const book = { ...EMPTY_BOOK, rounds: new Map(rounds.map((round) => [round.id, round])) };
  return shooterFigures(book, 'shooter').spots;
})();
const NEVER = { relaxed: { makes: 20, attempts: 50 }, pressured: { makes: 0, attempts: 0 } };

describe('the drop at a spot', () => {
  it('stands beside what was shot there', () => {
    const [top] = spotDrops([place({})], figures);
    expect(top?.raw?.points).toBeCloseTo(20, 9);
    expect(top?.model).toEqual({ points: 14, low: 4, high: 24 });
    expect(top?.byOthers).toBe(false);
  });

  it('is judged by the other spots where there was no pressured shot', () => {
    const [, wing] = spotDrops([place({}), place({ spot: 'left-wing', raw: NEVER })], figures);
    expect(wing).toMatchObject({ spot: 'left-wing', raw: null, byOthers: true });
  });

  it('weighs several kinds of shot as the mix does', () => {
    const kinds = [
      place({ weight: 0.3 }),
      place({ shot: 'dribble-left', weight: 0.1, raw: NEVER, points: 6, low: 0, high: 12 }),
    ];
    const all = spotDrops(kinds, figures);
    expect(all).toHaveLength(1);
    expect(all[0]?.model.points).toBeCloseTo(12, 9);
    expect(all[0]?.model.low).toBeCloseTo(3, 9);
    expect(all[0]?.model.high).toBeCloseTo(21, 9);
    expect(all[0]?.byOthers).toBe(false);
  });
});
