import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { priceGame } from './priceGame.ts';
import { seatsFor } from '../../renderer/store/groupPrices.ts';
import { duelOn, groupGamesOf, type GroupGame } from '../../renderer/store/groupWish.ts';

const NOW = { at: Date.parse('2026-11-25T18:00Z'), zone: 60 };
const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
/** Two with records of their own; nobody knows anything of the guest. */
const [ines = '', tobi = ''] = book.shooters.keys();
const GUEST = 'guest';
const game = (id: string): GroupGame =>
  present(
    groupGamesOf(book).find((one) => one.id === id),
    id,
  );
const duel = duelOn(
  present(
    STANDARD_CARDS.find(({ id }) => id === 'free-throws-20'),
    'twenty free throws',
  ),
);
const seats = (of: GroupGame, shooters: string[], wanted: number | null, headStart: number | null = null) =>
  seatsFor(book, { shooters, game: of, wanted, headStart }, 5, NOW);
const needed = (plan: GamePlan | undefined): number => (plan?.family === 'reach' ? plan.needed : Number.NaN);
const ahead = (plan: GamePlan | undefined): number => (plan?.family === 'duel' ? plan.headStart : Number.NaN);

describe('the games of several', () => {
  it('are the same for all where that is wanted, each with their own chance', () => {
    const [one, other] = seats(game('reach-line'), [ines, tobi], null);
    expect(one?.plan).toEqual(game('reach-line').plan);
    expect(other?.plan).toEqual(one?.plan);
    expect(one?.name).toBe('Eight of ten at the line');
    for (const seat of [one, other]) {
      const { plan, stops } = game('reach-line');
      expect(seat?.chance).toBeCloseTo(priceGame(book, seat?.shooter ?? '', plan, stops, NOW).chance, 9);
    }
    expect(one?.chance).not.toBeCloseTo(other?.chance ?? 0, 2);
  });

  it('ask more of a better shooter where they are fair, and are then about as likely for both', () => {
    const same = seats(game('reach-line'), [ines, tobi], null);
    const [better, weaker] = same.toSorted((a, b) => b.chance - a.chance).map(({ shooter }) => shooter);
    const fair = seats(game('reach-line'), [better ?? '', weaker ?? '', GUEST], 0.5);
    expect(needed(fair[0]?.plan)).toBeGreaterThanOrEqual(needed(fair[1]?.plan));
    const apart = (of: typeof fair): number => Math.abs((of[0]?.chance ?? 0) - (of[1]?.chance ?? 0));
    expect(apart(fair)).toBeLessThan(apart(same) + 0.13);
    // A step of one make in ten moves the chance by up to a quarter.
    for (const { chance } of fair) expect(Math.abs(chance - 0.5)).toBeLessThan(0.13);
  });

  it('have names that tell them apart', () => {
    const [seat] = seats(game('reach-line'), [ines], 0.9);
    expect(seat?.name).toBe(`Eight of ten at the line: ${needed(seat?.plan)} of 10`);
  });
});

describe('a duel of two', () => {
  it('has no seats for fewer or for more', () => {
    expect(seats(duel, [ines], 0.5)).toEqual([]);
    expect(seats(duel, [ines, tobi, GUEST], 0.5)).toEqual([]);
  });

  it('is as likely won as the solver says, level ends aside', () => {
    const [one, other] = seats(duel, [ines, tobi], null);
    expect(ahead(one?.plan)).toBe(0);
    const priced = priceGame(book, ines, duel.plan, duel.stops, NOW, tobi).chance;
    expect(one?.chance).toBeCloseTo(priced, 9);
    const mirrored = priceGame(book, tobi, duel.plan, duel.stops, NOW, ines).chance;
    expect(other?.chance).toBeCloseTo(mirrored, 9);
    const level = 1 - (one?.chance ?? 0) - (other?.chance ?? 0);
    expect(level).toBeGreaterThan(0);
    expect(level).toBeLessThan(0.05);
  });

  it('is fair by the head start nearest to even: a point more or less is further from it', () => {
    const gap = (headStart: number | null): number => {
      const [one, other] = seats(duel, [ines, tobi], 0.5, headStart);
      return Math.abs((one?.chance ?? 0) - (other?.chance ?? 0));
    };
    const fair = ahead(seats(duel, [ines, tobi], 0.5)[0]?.plan);
    for (const step of [-1, 1]) expect(gap(null)).toBeLessThanOrEqual(gap(fair + step));
    expect(gap(null)).toBeLessThanOrEqual(gap(0));
  });

  it('is the same duel whoever is named first', () => {
    const [ours, theirs] = [seats(duel, [ines, tobi], 0.5), seats(duel, [tobi, ines], 0.5)];
    expect(ahead(ours[0]?.plan)).toBe(0 - ahead(theirs[0]?.plan));
    expect(ours[0]?.chance).toBeCloseTo(theirs[1]?.chance ?? 0, 9);
  });

  it('takes the head start they choose', () => {
    const [one, other] = seats(duel, [ines, tobi], 0.5, 4);
    expect([ahead(one?.plan), ahead(other?.plan)]).toEqual([4, 4]);
    expect(one?.chance).toBeGreaterThan(other?.chance ?? 1);
  });
});
