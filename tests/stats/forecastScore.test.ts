import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { addDays } from '../../renderer/basics/days.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import type { Round } from '../../renderer/log/book.ts';
import { abilityOn, forecast } from '../../renderer/stats/ability.ts';
import {
  type ForecastScore,
  forecastScore,
  forecastScoreInSteps,
} from '../../renderer/stats/forecastScore.ts';
import { PRESSURE } from '../log/diary.ts';
import { freeThrows, roundOf, three } from './rounds.ts';
import { dayOf, someShooter } from './simulatedRecord.ts';

const card = (id: string) =>
  present(
    STANDARD_CARDS.find((one) => one.id === id),
    id,
  ).stops;
const THREES = card('threes-25');
const PLAN = ['relaxed', 'pressured', 'relaxed'] as const;
const FIRST = '2026-03-02';

/** A record of some visits, `apart` days from each other, as the app logs it: one round after the other. */
function record(seed: number, visits: number, apart = 2): Round[] {
  const rng = rngFromSeed(seed);
  const { day } = someShooter(rng);
  return Array.from({ length: visits }, (_, visit) =>
    dayOf(addDays(FIRST, apart * visit), day(), THREES, PLAN, rng),
  )
    .flat()
    .map((round, at) => ({ ...round, id: `round ${at}`, label: String((at % 3) + 1), startedAt: 1000 * at }));
}

/** What the app says before a round, from everything that was in the book before it. */
function saidBefore(rounds: readonly Round[], { startedAt, condition, stops, date }: Round) {
  const before = rounds.filter((round) => round.startedAt < startedAt);
  const { mean, range } = forecast(abilityOn(before, condition, stops, date));
  return { mean, ...range };
}

const scoredOf = (score: ForecastScore, round: string) =>
  present(
    score.rounds.find((one) => one.round === round),
    round,
  );
const spanOf = (score: ForecastScore, round: string) => {
  const { mean, low, high } = scoredOf(score, round);
  return { mean, low, high };
};

describe('each forecast', () => {
  it('is the one the app makes before the round, to the last digit', () => {
    const rounds = record(1, 20);
    const { rounds: scored } = forecastScore(rounds);
    expect(scored).toHaveLength(60);
    for (const [at, { mean, low, high }] of scored.entries()) {
      expect({ mean, low, high }).toEqual(saidBefore(rounds, rounds[at] as Round));
    }
  });
  it('is the same where the record goes back for years, though only half a year is looked at', () => {
    const rounds = record(2, 60, 20);
    for (const { round, mean, low, high } of forecastScore(rounds).rounds) {
      const played = present(
        rounds.find(({ id }) => id === round),
        round,
      );
      expect({ mean, low, high }).toEqual(saidBefore(rounds, played));
    }
  });
  it('knows nothing of its own round or a later one', () => {
    const rounds = record(3, 8);
    const before = forecastScore(rounds).rounds;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: rounds.length - 1 }),
        fc.integer({ min: 0, max: 5 }),
        (from, makes) => {
          const changed = rounds.map((round, at) =>
            at < from
              ? round
              : { ...round, entries: round.entries.map((entry) => ({ ...entry, makes, attempts: 5 })) },
          );
          const after = forecastScore(changed).rounds;
          for (let at = 0; at <= from; at += 1) {
            expect({ ...after[at], makes: 0 }).toEqual({ ...before[at], makes: 0 });
          }
        },
      ),
      { numRuns: 20 },
    );
  });
  it('does not know what was brought in after the round was started', () => {
    const rounds = record(4, 6);
    const file: Round = { ...roundOf('relaxed', [three('top', 25, 25)]), id: 'file', imported: true };
    const late = { ...file, date: FIRST, startedAt: 1000 * rounds.length };
    const early = { ...late, startedAt: -1 };
    const plain = forecastScore(rounds);
    expect(spanOf(forecastScore([...rounds, late]), 'round 17')).toEqual(spanOf(plain, 'round 17'));
    expect(spanOf(forecastScore([...rounds, early]), 'round 17').mean).toBeGreaterThan(
      scoredOf(plain, 'round 17').mean,
    );
  });
});

describe('a round from a file', () => {
  const row = (id: string, date: string, session: string, label: string, makes = 12): Round => ({
    ...roundOf('relaxed', [three('top', makes, 25)], { date, session }),
    id,
    label,
    imported: true,
  });
  /** The mean of a round's forecast where another round stands in the same file. */
  const meanBeside = (...others: Round[]) =>
    scoredOf(forecastScore([row('asked', '2026-03-10', 'a', '2'), ...others]), 'asked').mean;
  const alone = meanBeside();

  it.each([
    ['an earlier day', row('other', '2026-03-09', 'z', '1', 25)],
    ['earlier in its session', row('other', '2026-03-10', 'a', '1', 25)],
  ])('is forecast from what came before: %s', (_, other) => {
    expect(meanBeside(other)).toBeGreaterThan(alone + 1);
  });
  it.each([
    ['later in its session', row('other', '2026-03-10', 'a', '3', 25)],
    [
      'another session of the day, since nobody knows which was first',
      row('other', '2026-03-10', 'b', '1', 25),
    ],
    ['a later day', row('other', '2026-03-11', 'a', '1', 25)],
  ])('is not moved by %s', (_, other) => {
    expect(meanBeside(other)).toBe(alone);
  });
});

describe('the rounds that are looked at', () => {
  const round = (at: number, change: Partial<Round> = {}): Round => ({
    ...roundOf('relaxed', [freeThrows(7, 10)]),
    id: `round ${at}`,
    label: String(at),
    startedAt: at,
    ...change,
  });
  const cut = round(0).entries.map((entry) => ({ ...entry, attempts: 8 }));

  it('are those whose whole card was shot; the others are counted', () => {
    const score = forecastScore([
      round(1),
      round(2, { ending: 'stopped', entries: cut }),
      round(3, { ending: 'time-up' }),
      round(4, { entries: [...cut, { kind: 'expired', id: 'x', at: 0, stop: 0 }] }),
      round(5, { state: 'paused', ending: null, entries: cut }),
      round(6, { ending: 'stopped', entries: [] }),
      { ...roundOf('relaxed', [freeThrows(200, 400)]), id: 'month', startedAt: 7 },
      round(8),
    ]);
    expect(score.rounds.map(({ round: id }) => id)).toEqual(['round 1', 'round 8']);
    expect(score.leftOut).toBe(5);
  });
  it('are the latest, oldest first, whatever order they come in', () => {
    const rounds = record(5, 10);
    const { rounds: scored } = forecastScore(rounds.toReversed(), { latest: 7 });
    expect(scored.map((one) => one.round)).toEqual(rounds.slice(-7).map(({ id }) => id));
    expect(scored[0]).toMatchObject({ date: rounds.at(-7)?.date, condition: 'relaxed', attempts: 25 });
  });
  it('are none in an empty record', () => {
    expect(forecastScore([])).toMatchObject({
      rounds: [],
      marks: [],
      games: [],
      inside: 0,
      plain: null,
      reading: 'too few',
    });
  });
  it('come with the marks as they were said', () => {
    const pressure = { ...PRESSURE, mark: { makes: 7, chance: 0.55 } };
    const rounds = [1, 2, 3].map((at) => round(at, { condition: 'pressured', pressure }));
    const off = { ...pressure, mark: { makes: 9, chance: 0.15 } };
    const score = forecastScore([...rounds, round(4, { condition: 'pressured', pressure: off })]);
    expect(score.marks).toMatchObject([
      { said: 0.15, marks: 1, beaten: 0 },
      { marks: 3, beaten: 3 },
    ]);
    expect(score.marks[1]?.said).toBeCloseTo(0.55, 12);
  });
  it('come with the games as somebody else says they ended, the latest of them', () => {
    const rounds = [1, 2, 3, 4, 5].map((at) => round(at));
    const won = new Set(['round 2', 'round 3', 'round 5']);
    const gameOutcome = ({ id }: Round) => (id === 'round 4' ? null : { chance: 0.35, beaten: won.has(id) });
    const { games, marks } = forecastScore(rounds, { gameOutcome });
    expect(games).toMatchObject([{ marks: 4, beaten: 3 }]);
    expect(games[0]?.said).toBeCloseTo(0.35, 12);
    expect(marks).toEqual([]);
    expect(forecastScore(rounds, { gameOutcome, latest: 2 }).games).toMatchObject([{ marks: 2, beaten: 2 }]);
    expect(forecastScore(rounds).games).toEqual([]);
  });
  it('are worked on in steps, one for each forecast', () => {
    const rounds = record(6, 5);
    const steps = forecastScoreInSteps(rounds);
    const shares: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(step.value).toEqual(forecastScore(rounds));
    expect(shares).toHaveLength(15);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});

/*
 * Shooters drawn from what the forecasts believe before the first shot, each on twenty visits of three rounds of threes.
 * Seeded, so always the same answer.
 */
describe('the forecasts of a hundred simulated shooters', () => {
  const SHOOTERS = 100;
  let scores: ForecastScore[] = [];
  beforeAll(() => {
    scores = Array.from({ length: SHOOTERS }, (_, at) => forecastScore(record(100 + at, 20)));
  }, 60_000);
  const total = (of: (score: ForecastScore) => number) => scores.reduce((sum, score) => sum + of(score), 0);

  it('hold as many rounds within their span as they promise', () => {
    const rounds = total((score) => score.rounds.length);
    expect(rounds).toBe(60 * SHOOTERS);
    const promised = total((score) => score.expectedInside) / rounds;
    const kept = total((score) => score.inside) / rounds;
    expect(promised).toBeGreaterThan(0.83);
    expect(promised).toBeLessThan(0.89);
    // Three standard errors are 1.4 points, and rounds of one day go a little together.
    expect(Math.abs(kept - promised)).toBeLessThan(0.02);
  });
  it('are missed above as often as below', () => {
    const below = total((score) => score.below);
    const above = total((score) => score.above);
    // Rounds of a day go together, which widens a difference of counts.
    expect(Math.abs(below - above)).toBeLessThan(4 * Math.sqrt(below + above));
  });
  it('are called wrong for at most one shooter in twenty', () => {
    const wrong = scores.filter(({ reading }) => reading !== 'fits');
    expect(wrong.length).toBeLessThanOrEqual(5);
  });
  it('beat a plain guess from the bare percentage, and are hardly ever found worse', () => {
    expect(total((score) => score.plain?.ours ?? NaN)).toBeLessThan(
      total((score) => score.plain?.rival ?? NaN) * 0.98,
    );
    const readings = scores.map(({ plain }) => plain?.reading);
    expect(readings.filter((reading) => reading === 'better').length).toBeGreaterThan(10);
    expect(readings.filter((reading) => reading === 'worse').length).toBeLessThanOrEqual(5);
  });
});

it('a shooter who suddenly shoots far worse is forecast too hopefully', () => {
  const rng = rngFromSeed(9);
  const rounds = Array.from({ length: 26 }, (_, visit) => {
    const shooter = { rate: () => (visit < 14 ? 0.4 : -1.2), pressureCost: 0, daySd: 0.2 };
    return dayOf(addDays(FIRST, 2 * visit), shooter, THREES, PLAN, rng);
  })
    .flat()
    .map((round, at) => ({ ...round, id: `round ${at}`, label: String((at % 3) + 1), startedAt: at }));
  const { reading, below, above } = forecastScore(rounds, { latest: 36 });
  expect(reading).toBe('too hopeful');
  expect(below).toBeGreaterThan(above + 5);
});
