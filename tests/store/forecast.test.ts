import { beforeEach, describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import type { Book } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { forecastScore } from '../../renderer/stats/forecastScore.ts';
import { forecastBefore, inHundred, marksFor, roundForecast } from '../../renderer/store/forecast.ts';
import { solvedGame, standingOf } from '../../renderer/store/liveChance.ts';
import { diary, INES, PRESSURE, START, started, type Diary } from '../log/diary.ts';

const threes = present(
  STANDARD_CARDS.find(({ id }) => id === 'threes-25'),
  'the threes',
);
const NOW = { at: START, zone: 60 };
const makesOf = (makes: number) =>
  threes.stops.map(({ spot, shot, attempts }: Stop) => ({ spot, shot, attempts, makes }));

/* The marks of a card, the chance of a game, and which days of the record they rest on. */

/** Ines with a paper round of 20 of 25 threes on 2026-11-20. */
let log: Diary;
beforeEach(() => {
  log = diary();
  log.write('ShooterAdded', INES);
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
  const pressure = { ...PRESSURE, mark: { makes: 12, chance: 0.5 } };
  log.write('RoundStarted', started({ condition: 'pressured', card: threes, pressure }));
}

const chanceNow = (book: Book): number => {
  const round = present(book.open, 'an open round');
  return standingOf(present(solvedGame(book, round), 'a mark'), round).chance;
};
const markChance = (now = NOW) => marksFor(log.book(), 'ines', threes.stops, now).chance(12);

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

describe('the forecast before a round', () => {
  const said = (condition: Condition = 'pressured', now = NOW, stops: readonly Stop[] = threes.stops) =>
    roundForecast(log.book(), 'ines', condition, stops, now);

  it('rests on such shots of the last half year, and says where there are none', () => {
    const days = (after: number) => ({ ...NOW, at: START + after * 86_400_000 });
    expect(said().rests).toBe('record');
    expect(said('relaxed').rests).toBe('record');
    // Of the other threes the five spots tell too; of a free throw they do not.
    expect(said('relaxed', NOW, [{ spot: 'top', shot: 'dribble-left', attempts: 5 }]).rests).toBe('record');
    expect(said('relaxed', NOW, [{ spot: 'free-throw', shot: 'free-throw', attempts: 5 }]).rests).toBe(
      'nothing',
    );
    expect(said('pressured', days(170)).rests).toBe('record');
    expect(said('pressured', days(180)).rests).toBe('faded');
    expect(roundForecast(log.book(), 'nobody', 'relaxed', threes.stops, NOW).rests).toBe('nothing');
  });
  it('is wide and in the middle without a record, narrower and higher with a good one', () => {
    const blank = roundForecast(log.book(), 'nobody', 'pressured', threes.stops, NOW);
    const known = said();
    expect(blank.attempts).toBe(25);
    expect(known.about).toBeGreaterThan(blank.about + 3);
    expect(known.high - known.low).toBeLessThan(blank.high - blank.low);
    for (const { about, low, high } of [blank, known]) {
      expect(Number.isInteger(about) && about >= low && about <= high).toBe(true);
    }
  });
  it('promises what the marks promise', () => {
    const marks = marksFor(log.book(), 'ines', threes.stops, NOW);
    const { low, high } = said();
    expect(1 - marks.chance(low)).toBeLessThanOrEqual(0.1);
    expect(marks.chance(high + 1)).toBeLessThanOrEqual(0.1);
    expect(1 - marks.chance(low + 1)).toBeGreaterThan(0.1);
  });
});

describe('the forecast after a round', () => {
  /** A whole round, shot in the app; what was said before it. */
  function shoot(round: string, condition: Condition, makes: number) {
    const before = roundForecast(log.book(), 'ines', condition, threes.stops, NOW);
    log.write(
      'RoundStarted',
      started({ round, condition, card: threes, pressure: condition === 'pressured' ? PRESSURE : null }),
    );
    for (const stop of threes.stops.keys()) log.write('StopCounted', { round, stop, makes, attempts: 5 });
    log.write('RoundEnded', { round, why: 'played-out', clockLeft: null });
    return before;
  }
  const after = (round: string) =>
    forecastBefore(log.book(), present(log.book().rounds.get(round), 'the round'));

  it('is what was said before it, whatever came later, and what its score is reckoned from', () => {
    log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
    const before = [
      shoot('round 1', 'relaxed', 1),
      shoot('round 2', 'pressured', 0),
      shoot('round 3', 'relaxed', 5),
    ];
    paper('paper 2', '2026-11-24', 0);
    paper('paper 3', '2026-11-25', 0);
    const rounds = ['round 1', 'round 2', 'round 3'];
    expect(rounds.map(after)).toEqual(
      before.map(({ attempts, about, low, high }) => ({ attempts, about, low, high })),
    );
    expect(new Set(before.map(({ about }) => about)).size).toBeGreaterThan(1);
    const scored = forecastScore([...log.book().rounds.values()]).rounds;
    for (const round of rounds) {
      const { attempts, low, high, mean } = present(
        scored.find((one) => one.round === round),
        round,
      );
      expect({ attempts, about: Math.round(mean), low, high }).toEqual(after(round));
    }
  });
  it('is none for a card that was not shot to its end, nor for a round from a file', () => {
    log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
    log.write('RoundStarted', started({ card: threes }));
    log.write('StopCounted', { round: 'round 1', stop: 0, makes: 3, attempts: 5 });
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    expect(after('round 1')).toBeNull();
    expect(after('paper 1')).toBeNull();
  });
});

it('a chance is said as so many in a hundred, never none and never all', () => {
  expect([0, 0.004, 0.456, 0.999, 1].map(inHundred)).toEqual([1, 1, 46, 99, 99]);
});
