import { beforeEach, describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import type { Book } from '../../renderer/log/book.ts';
import { marksFor, solvedGame, standingOf } from '../../renderer/store/forecast.ts';
import { diary, PRESSURE, START, started, type Diary } from '../log/diary.ts';

const threes = present(
  STANDARD_CARDS.find(({ id }) => id === 'threes-25'),
  'the threes',
);
const NOW = { at: START, zone: 60 };
const makesOf = (makes: number) =>
  threes.stops.map(({ spot, shot, attempts }: Stop) => ({ spot, shot, attempts, makes }));

/* Which days of the record a forecast rests on. */

/** Ines with a paper round of 20 of 25 threes on 2026-11-20. */
let log: Diary;
beforeEach(() => {
  log = diary();
  log.write('ShooterAdded', {
    shooter: 'ines',
    name: 'Ines',
    hand: 'right',
    rules: 'FIBA',
    units: 'metric',
    demo: false,
  });
  paper('paper 1', '2026-11-20', 4);
});

function paper(round: string, date: string, makes: number): void {
  log.write('RoundImported', {
    round,
    shooter: 'ines',
    date,
    session: '1',
    label: round,
    condition: 'pressured',
    game: 'Threes',
    cells: makesOf(makes),
    first: null,
    nerves: null,
    note: '',
  });
}

/** Starts a pressured round on 2026-11-25 with the mark at 12. */
function start(): void {
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  const card = { id: threes.id, name: threes.name, stops: [...threes.stops] };
  const pressure = {
    ...PRESSURE,
    ingredients: [...PRESSURE.ingredients],
    mark: { makes: 12, chance: 0.5 },
  };
  log.write('RoundStarted', started({ condition: 'pressured', card, pressure }));
}

const chanceNow = (book: Book): number => {
  const round = present(book.open, 'an open round');
  return standingOf(present(solvedGame(book, round), 'a mark'), round).chance;
};
const markChance = (now = NOW) => marksFor(log.book(), 'ines', threes.stops, now).chance(12);

describe('the marks of a card', () => {
  it('are worked out for today: a year later the record has faded', () => {
    const later = markChance({ ...NOW, at: START + 365 * 86_400_000 });
    expect(later).toBeCloseTo(marksFor(log.book(), 'nobody', threes.stops, NOW).chance(12), 12);
  });
  it('keep the record where one day is a slip of the pen, ten years ahead', () => {
    const before = markChance();
    paper('paper 2', '2036-11-20', 1);
    expect(markChance()).toBe(before);
  });
});

describe('the chance of a game', () => {
  it('opens with the one its mark was set by, and moves with every shot', () => {
    const set = markChance();
    start();
    expect(chanceNow(log.book())).toBeCloseTo(set, 9);
    log.write('ShotTaken', { round: 'round 1', stop: 0, made: true, side: null });
    expect(chanceNow(log.book())).toBeGreaterThan(set);
  });
  it.each([
    ['an earlier day', '2026-11-10'],
    ['the same day', '2026-11-25'],
    ['a later day', '2026-11-26'],
  ])('is not moved by a round of %s that is brought in later', (_what, date) => {
    start();
    const before = chanceNow(log.book());
    paper('paper 2', date, 0);
    expect(chanceNow(log.book())).toBe(before);
  });
});
