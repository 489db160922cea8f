import { beforeEach, describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import type { Book } from '../../renderer/log/book.ts';
import { inHundred, marksFor, solvedGame, standingOf } from '../../renderer/store/forecast.ts';
import { diary, PRESSURE, START, started, type Diary } from '../log/diary.ts';

const threes = present(
  STANDARD_CARDS.find(({ id }) => id === 'threes-25'),
  'the threes',
);
const NOW = { at: START, zone: 60 };

/* The marks of a card and the chance of a game. Which days they rest on is in forecastDays.test.ts. */

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
  log.write('RoundImported', {
    round: 'paper 1',
    shooter: 'ines',
    date: '2026-11-20',
    session: '1',
    label: '1',
    condition: 'pressured',
    game: 'Threes',
    cells: threes.stops.map(({ spot, shot, attempts }) => ({ spot, shot, attempts, makes: 4 })),
    first: null,
    nerves: null,
    note: '',
  });
});

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
const markChance = () => marksFor(log.book(), 'ines', threes.stops, NOW).chance(12);

describe('the marks of a card', () => {
  it('know the shooter’s own record', () => {
    const known = markChance();
    expect(marksFor(log.book(), 'nobody', threes.stops, NOW).chance(12)).toBeLessThan(known - 0.1);
    expect(marksFor(log.book(), 'ines', threes.stops, NOW).shots).toBe(25);
  });
  it('are less likely the more makes they ask for, and the nearest one to a wish is offered', () => {
    const marks = marksFor(log.book(), 'ines', threes.stops, NOW);
    const makes = Array.from({ length: 25 }, (_, at) => at + 1);
    const chances = makes.map((mark) => marks.chance(mark));
    expect(chances).toEqual(chances.toSorted((one, other) => other - one));
    for (const wanted of [0.1, 0.3, 0.5, 0.7, 0.9]) {
      const off = Math.abs(marks.chance(marks.nearest(wanted)) - wanted);
      expect(chances.filter((chance) => Math.abs(chance - wanted) < off)).toEqual([]);
    }
  });
  it('count the shots on the record from these spots, taken the same way', () => {
    const shots = (stop: Stop) => marksFor(log.book(), 'ines', [stop], NOW).shots;
    expect(shots({ spot: 'top', shot: 'catch', attempts: 3 })).toBe(5);
    expect(shots({ spot: 'top', shot: 'dribble-left', attempts: 3 })).toBe(0);
    expect(shots({ spot: 'free-throw', shot: 'free-throw', attempts: 3 })).toBe(0);
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
  it('is certain once the mark is reached', () => {
    start();
    for (const [stop, makes] of [5, 5, 1].entries())
      log.write('StopCounted', { round: 'round 1', stop, makes, attempts: 5 });
    expect(chanceNow(log.book())).toBeLessThan(1);
    log.write('ShotTaken', { round: 'round 1', stop: 3, made: true, side: null });
    expect(chanceNow(log.book())).toBeCloseTo(1, 12);
  });
  it('is gone once the mark is out of reach', () => {
    start();
    for (const stop of [0, 1]) log.write('StopCounted', { round: 'round 1', stop, makes: 0, attempts: 5 });
    log.write('StopCounted', { round: 'round 1', stop: 2, makes: 1, attempts: 4 });
    expect(chanceNow(log.book())).toBeGreaterThan(0);
    log.write('StopCounted', { round: 'round 1', stop: 2, makes: 0, attempts: 1 });
    log.write('StopCounted', { round: 'round 1', stop: 3, makes: 0, attempts: 1 });
    expect(chanceNow(log.book())).toBe(0);
  });
  it('is none without a mark', () => {
    log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
    log.write('RoundStarted', started());
    const book = log.book();
    expect(solvedGame(book, present(book.open, 'an open round'))).toBeNull();
  });
});

it('a chance is said as so many in a hundred, never none and never all', () => {
  expect([0, 0.004, 0.456, 0.999, 1].map(inHundred)).toEqual([1, 1, 46, 99, 99]);
});
