import { describe, expect, it } from 'vitest';

import { addDays, isoWeekName } from '../../renderer/basics/days.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { debtsOf } from '../../renderer/games/ledger.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import { EMPTY_BOOK, type Round } from '../../renderer/log/book.ts';
import { parseEvent } from '../../renderer/log/envelope.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';

const TODAY = '2026-11-25';
const season = (seed = 1, today = TODAY) => demoSeason(today, 60, 'tablet', seed);
const events = season();
const book = foldAll(EMPTY_BOOK, events);
const rounds = [...book.rounds.values()];
const [ines, tobi] = [...book.shooters.values()];

describe('the invented season', () => {
  it('is the same for the same seed and day', () => {
    expect(season()).toEqual(events);
  });
  it('can be loaded a second time: the same shots under fresh ids', () => {
    const again = season(21);
    const ids = new Set(events.map(({ id }) => id));
    expect(again.some(({ id }) => ids.has(id))).toBe(false);
    const shots = (log: typeof events) =>
      log.flatMap((event) => (event.type === 'ShotTaken' ? [event.body.made] : []));
    expect(shots(again)).toEqual(shots(events));
  });
  it('settles no stake twice', () => {
    const settled = events.flatMap((event) => (event.type === 'StakeSettled' ? [event.body.round] : []));
    expect(new Set(settled).size).toBe(settled.length);
    expect(settled.length).toBeGreaterThan(0);
  });
  it('is a log like any other: every event can be read, and every one fits', () => {
    expect(events.map((event) => parseEvent(event))).toEqual(events.map((event) => ({ known: true, event })));
    expect(book.skipped).toBe(0);
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  });
  it('has two shooters who are marked as invented', () => {
    expect([ines, tobi].map((shooter) => shooter?.demo)).toEqual([true, true]);
    expect(book.shooters.size).toBe(2);
  });
  it.each(['2026-11-23', '2026-11-25', '2026-11-29', '2026-01-01'])(
    'ends before %s and spans ten weeks',
    (today) => {
      const played = [...foldAll(EMPTY_BOOK, season(20, today)).rounds.values()];
      const days = played.map(({ date }) => date).toSorted();
      expect((days.at(-1) ?? today) < today).toBe(true);
      expect(new Set(days.map((day) => isoWeekName(day))).size).toBe(10);
      expect((days.at(-1) ?? '') >= addDays(today, -14)).toBe(true);
    },
  );
  it('has every round played out, in pairs of one relaxed and one pressured', () => {
    expect(book.open).toBeNull();
    const pairs = new Map<string, Round[]>();
    for (const round of rounds) {
      expect(round).toMatchObject({ state: 'ended', ending: 'played-out' });
      const pair = round.pair?.id ?? '';
      pairs.set(pair, [...(pairs.get(pair) ?? []), round]);
    }
    expect(pairs.size).toBe(book.pairs.size);
    for (const [id, [one, two, ...more]] of pairs) {
      expect(more).toEqual([]);
      const order = [one?.condition, two?.condition];
      const tossed = book.pairs.get(id)?.order;
      expect(order).toEqual(tossed === 'relaxed-first' ? ['relaxed', 'pressured'] : ['pressured', 'relaxed']);
    }
  });
  it('has both orders of the pairs', () => {
    const orders = [...book.pairs.values()].map(({ order }) => order);
    const share = orders.filter((order) => order === 'relaxed-first').length / orders.length;
    // Five standard deviations of a fair coin over some 150 pairs.
    expect(Math.abs(share - 0.5)).toBeLessThan(0.2);
  });
  it('counts the shots taken before each round', () => {
    const taken = new Map<string, number>();
    for (const round of rounds) {
      expect(round.first).toBe(taken.get(round.session) ?? 0);
      taken.set(round.session, (round.first ?? 0) + roundTally(round).attempts);
    }
  });
  it('has marks that are neither a gift nor out of reach', () => {
    const verdicts = rounds.map((round) => verdictOf(round)).filter((verdict) => verdict !== null);
    const beaten = verdicts.filter((verdict) => verdict === 'beaten').length / verdicts.length;
    expect(beaten).toBeGreaterThan(0.25);
    expect(beaten).toBeLessThan(0.75);
    expect(verdicts.every((verdict) => verdict === 'beaten' || verdict === 'short')).toBe(true);
  });
  it('has a ledger that is settled but for the last week', () => {
    const debts = [ines, tobi].flatMap((shooter) => debtsOf(book, shooter?.id ?? ''));
    const open = debts.filter(({ settled }) => !settled);
    expect(debts.length).toBeGreaterThan(100);
    expect(open.length).toBeGreaterThan(0);
    expect(new Set(open.map(({ round }) => isoWeekName(round.date))).size).toBe(1);
  });
  it('has more nerves under pressure', () => {
    const mean = (condition: string) => {
      const ratings = rounds
        .filter((round) => round.condition === condition)
        .map(({ nerves }) => nerves ?? NaN);
      return ratings.reduce((sum, rating) => sum + rating, 0) / ratings.length;
    };
    expect(mean('pressured')).toBeGreaterThan(mean('relaxed') + 1);
  });
});

describe('the truth behind it', () => {
  // Eight seasons together, so that luck says little: the drop over half of them has a standard deviation near 1 point.
  const books = Array.from({ length: 8 }, (_, seed) => foldAll(EMPTY_BOOK, season(seed)));
  const middle = addDays(rounds.map(({ date }) => date).toSorted()[0] ?? TODAY, 35);

  /** Relaxed minus pressured make percentage, in points. */
  function dropOf(name: string, half: 'early' | 'late'): number {
    const heap = { relaxed: { makes: 0, attempts: 0 }, pressured: { makes: 0, attempts: 0 } };
    for (const { shooters, rounds: all } of books) {
      for (const round of all.values()) {
        if (shooters.get(round.shooter)?.name !== name) continue;
        if (round.date < middle !== (half === 'early')) continue;
        const { makes, attempts } = roundTally(round);
        heap[round.condition].makes += makes;
        heap[round.condition].attempts += attempts;
      }
    }
    const rate = ({ makes, attempts }: typeof heap.relaxed) => (100 * makes) / attempts;
    return rate(heap.relaxed) - rate(heap.pressured);
  }

  it('is a drop of Ines that shrinks by a third or more', () => {
    const early = dropOf('Ines (demo)', 'early');
    expect(early).toBeGreaterThan(10);
    expect(dropOf('Ines (demo)', 'late')).toBeLessThan((2 / 3) * early);
  });
  it('is a drop of Tobi that stays', () => {
    const early = dropOf('Tobi (demo)', 'early');
    expect(early).toBeGreaterThan(3);
    expect(Math.abs(early - dropOf('Tobi (demo)', 'late'))).toBeLessThan(6);
  });
});
