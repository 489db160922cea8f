import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { climb } from '../../renderer/games/climb.ts';
import { duel } from '../../renderer/games/duel.ts';
import { lives } from '../../renderer/games/lives.ts';
import { race } from '../../renderer/games/race.ts';
import { lastBallDouble, racks } from '../../renderer/games/racks.ts';
import { reach } from '../../renderer/games/reach.ts';
import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import { solve, type Ability } from '../../renderer/games/solver.ts';
import { streak } from '../../renderer/games/streak.ts';
import { trips } from '../../renderer/games/trips.ts';
import { TRIP_KINDS } from '../../renderer/pressure/gamePlan.ts';
import { chanceByEnumeration, lengthByEnumeration, steady } from './enumerate.ts';

/** Shots of their own that a small game may have. */
const SHOTS = 10;
const rate = fc.double({ min: 0.02, max: 0.98, noNaN: true });
const ability: fc.Arbitrary<Ability> = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.array(rate, { minLength: SHOTS, maxLength: SHOTS })), {
    minLength: 1,
    maxLength: 3,
  })
  .map((days) => {
    const sum = days.reduce((total, [weight]) => total + weight, 0);
    return { weights: days.map(([weight]) => weight / sum), rates: days.map(([, rates]) => rates) };
  });

const int = (min: number, max: number) => fc.integer({ min, max });
/** Small games of every family, each a rule with its state hidden. */
const FAMILIES: Readonly<Record<string, fc.Arbitrary<Rule<unknown>>>> = {
  reach: int(1, 8).chain((turns) => int(0, turns).map((needed) => hidden(reach(needed, turns)))),
  streak: fc
    .tuple(int(1, 4), int(0, 6), int(1, 5))
    .map(([row, more, card]) => hidden(streak(row, row + more, card))),
  race: fc
    .record({
      to: int(1, 4),
      up: int(1, 2),
      down: int(0, 2),
      floor: fc.constantFrom(null, 0, -1),
      lost: fc.constantFrom(null, -2),
      most: int(4, 9),
    })
    .filter(({ floor, lost }) => floor === null || lost === null)
    .map((game) => hidden(race(game, 3))),
  lives: fc
    .tuple(int(1, 5), int(1, 4), int(1, 5))
    .map(([needed, left, card]) => hidden(lives(needed, left, card))),
  trips: fc
    .tuple(fc.constantFrom(...TRIP_KINDS), int(1, 3), int(1, 6))
    .map(([kind, count, needed]) => hidden(trips(kind, count, Math.min(needed, 2 * count)))),
  racks: int(1, 4).map((needed) => hidden(racks(lastBallDouble(2, 4), needed))),
  climb: fc
    .tuple(
      fc.array(
        int(1, 3).chain((shots) => int(1, shots).map((makes) => ({ makes, shots }))),
        {
          minLength: 1,
          maxLength: 3,
        },
      ),
      int(0, 2),
    )
    .map(([steps, back]) => hidden(climb(steps, back, 10))),
  duel: fc
    .record({ shots: int(1, 4), headStart: int(-1, 1), extraPairs: int(0, 1) })
    .map((game) => hidden(duel(game))),
};

function hidden<State>(rule: Rule<State>): Rule<unknown> {
  return rule;
}

const results = fc.array(fc.constantFrom<TurnResult>('make', 'miss', 'lost'), { maxLength: 10 });
const time = fc.option(
  fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }),
  {
    nil: undefined,
  },
);

/** The turns of a game that were really taken: what comes after its end is cut off. */
function taken(rule: Rule<unknown>, all: readonly TurnResult[]): TurnResult[] {
  let state = rule.start;
  const kept: TurnResult[] = [];
  for (const result of all) {
    if (rule.finished(state)) break;
    state = rule.step(state, result === 'make');
    kept.push(result);
  }
  return kept;
}

describe.each(Object.entries(FAMILIES))('%s', (_, rules) => {
  it('is solved as literal enumeration solves it, at every point, with time enough or not', () => {
    fc.assert(
      fc.property(rules, ability, results, time, (rule, known, all, lasts) => {
        const given = taken(rule, all);
        const solved = solve(rule, known, lasts);
        const chance = (more: readonly TurnResult[]) => chanceByEnumeration(rule, known, more, lasts);
        const { chance: now, leverage } = solved.standing(given);
        expect(now).toBeCloseTo(chance(given), 9);
        const over = rule.finished(solved.state(given));
        const makeOrMiss = over ? 0 : chance([...given, 'make']) - chance([...given, 'miss']);
        expect(leverage).toBeCloseTo(makeOrMiss, 9);
        const length = solved.length(given);
        const literal = lengthByEnumeration(rule, known, given, lasts);
        expect(length.mean).toBeCloseTo(literal.mean, 9);
        expect(length.ninetieth).toBe(literal.ninetieth);
      }),
      { numRuns: 60 },
    );
  });

  it('ends within its longest play, and a finished game stays as it is', () => {
    fc.assert(
      fc.property(rules, fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }), (rule, shots) => {
        let state = rule.start;
        let turns = 0;
        while (!rule.finished(state)) {
          state = rule.step(state, shots[turns % shots.length] ?? false);
          turns += 1;
          expect(turns).toBeLessThanOrEqual(rule.longest);
        }
        const given = shots.map((made): TurnResult => (made ? 'make' : 'miss'));
        const solved = solve(rule, steady(0.5, SHOTS));
        const whole = taken(rule, [...given, ...given]);
        expect(solved.standing([...whole, 'make'])).toEqual(solved.standing(whole));
        expect(solved.state([...whole, 'miss'])).toEqual(solved.state(whole));
      }),
    );
  });

  it('is a martingale: the chance now is what it will be on average', () => {
    fc.assert(
      fc.property(rules, rate, results, (rule, p, all) => {
        const given = taken(rule, all);
        const solved = solve(rule, steady(p, SHOTS));
        if (rule.finished(solved.state(given))) return;
        const make = solved.standing([...given, 'make']).chance;
        const miss = solved.standing([...given, 'miss']).chance;
        expect(p * make + (1 - p) * miss).toBeCloseTo(solved.standing(given).chance, 9);
      }),
    );
  });
});

describe.each(Object.entries(FAMILIES).filter(([family]) => family !== 'duel'))('%s', (_, rules) => {
  it('never rates a make below a miss', () => {
    fc.assert(
      fc.property(rules, rate, results, (rule, p, all) => {
        const { leverage } = solve(rule, steady(p, SHOTS)).standing(taken(rule, all));
        expect(leverage).toBeGreaterThanOrEqual(-1e-12);
        expect(leverage).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });
});

describe('values worked out by literal enumeration before the solver was written', () => {
  it('four in a row within 14 at .6', () => {
    const solved = solve(streak(4, 14, 1), steady(0.6, 1));
    expect(solved.standing([]).chance).toBeCloseTo(0.5677267172, 9);
    expect(solved.standing([]).leverage).toBeCloseTo(0.0533881553, 9);
    // Three in a row, with five left, and with one left.
    const misses = (count: number) => Array.from({ length: count }, () => 'miss' as const);
    expect(solved.standing([...misses(6), 'make', 'make', 'make']).leverage).toBeCloseTo(0.8704, 9);
    expect(solved.standing([...misses(10), 'make', 'make', 'make']).leverage).toBeCloseTo(1, 9);
  });
  it.each([
    [0.5, 0.0901699437],
    [0.6, 0.3772863304],
    [0.7, 1],
  ])('a race to 5, one up and two down, without an end, at %d', (p, chance) => {
    // So long a game, and so low a score to come back from, are as good as no end.
    const solved = solve(
      race({ to: 5, up: 1, down: 2, floor: null, lost: -150, most: 4000 }, 1),
      steady(p, 1),
    );
    expect(solved.standing([]).chance).toBeCloseTo(chance, 6);
  });
  it('eight makes before three misses at .7', () => {
    const { chance, leverage } = solve(lives(8, 3, 1), steady(0.7, 1)).standing([]);
    expect(chance).toBeCloseTo(0.3827827864, 9);
    expect(leverage).toBeCloseTo(0.266827932, 9);
  });
  it('six points in five one-and-one trips at .75', () => {
    const solved = solve(trips('one-and-one', 5, 6), steady(0.75, 1));
    expect(solved.standing([]).chance).toBeCloseTo(0.7237329483, 9);
    expect(solved.standing([]).leverage).toBeCloseTo(0.3272209167, 9);
    expect(solved.standing(['make']).leverage).toBeCloseTo(0.1792144775, 9);
  });
});

describe('success runs', () => {
  // Feller, An Introduction to Probability Theory and Its Applications, vol. 1, 3rd ed. 1968, XIII.7, table p. 300.
  it.each([
    [5, 3, 8 / 32],
    [8, 3, 107 / 256],
    [8, 4, 48 / 256],
    [8, 8, 1 / 256],
  ])('in %d fair shots, %d in a row', (shots, row, chance) => {
    expect(solve(streak(row, shots, 1), steady(0.5, 1)).standing([]).chance).toBeCloseTo(chance, 12);
  });
  // By an independent recurrence.
  it.each([
    [10, 3, 0.7, 0.858591],
    [20, 5, 0.7, 0.730795],
    [25, 10, 0.8, 0.413356],
    [50, 10, 0.8, 0.71711],
    [100, 10, 0.8, 0.934203],
    [100, 20, 0.9, 0.775299],
    [100, 5, 0.5, 0.81011],
  ])('in %d shots, %d in a row at %d', (shots, row, p, chance) => {
    expect(solve(streak(row, shots, 1), steady(p, 1)).standing([]).chance).toBeCloseTo(chance, 6);
  });
  // (1 − p^r) / ((1 − p) p^r): Feller XIII.7, from memory; the standard deviation nearly equals the mean.
  it.each([
    [0.5, 2, 6],
    [0.7, 5, 16.4997],
    [0.8, 10, 41.566],
    [0.9, 10, 18.68],
    [0.75, 3, 5.4815],
  ])('at %d, the mean wait for %d in a row is %d shots', (p, row, mean) => {
    const { mean: found, ninetieth } = solve(streak(row, 1500, 1), steady(p, 1)).length([]);
    expect(Math.abs(found - mean)).toBeLessThan(0.0006);
    expect(ninetieth).toBeGreaterThan(mean * 1.4);
  });
});

describe("the gambler's ruin", () => {
  // Feller XIV.2 and 3, table from memory: chance of success and mean duration from z of a, up one and down one.
  it.each([
    [0.5, 9, 10, 0.9, 9],
    [0.45, 9, 10, 0.79, 11],
  ])('at %d from %d of %d: %d, %d steps', (p, z, a, success, duration) => {
    const game = race({ to: a - z, up: 1, down: 1, floor: null, lost: -z, most: 3000 }, 1);
    const solved = solve(game, steady(p, 1));
    expect(solved.standing([]).chance).toBeCloseTo(success, 3);
    expect(solved.length([]).mean).toBeCloseTo(duration, 1);
  });
});

describe('one up, two down', () => {
  // Worked out independently from the linear equations of the walk.
  it.each([
    [0.6, 7, 52.897],
    [0.7, 10, 42.524],
    [0.8, 10, 21.295],
    [0.9, 21, 29.388],
  ])('at %d with a floor at 0 it takes to %d about %d shots', (p, to, mean) => {
    const game = race({ to, up: 1, down: 2, floor: 0, lost: null, most: 3000 }, 1);
    expect(solve(game, steady(p, 1)).length([]).mean).toBeCloseTo(mean, 2);
  });
  it.each([
    [0.6, 0.10521, 23.12],
    [0.7, 0.5861, 32.48],
    [0.8, 0.94059, 22.584],
  ])('at %d lost at −6, won at 10: %d, %d shots', (p, chance, mean) => {
    const solved = solve(
      race({ to: 10, up: 1, down: 2, floor: null, lost: -6, most: 2000 }, 1),
      steady(p, 1),
    );
    expect(solved.standing([]).chance).toBeCloseTo(chance, 5);
    expect(solved.length([]).mean).toBeCloseTo(mean, 2);
  });
});

describe('makes before misses', () => {
  // P(A before B) = P(Bin(A + B − 1, p) ≥ A); worked out independently.
  it.each([
    [10, 3, 0.7, 0.252815, 8.6865],
    [10, 4, 0.75, 0.584253, 11.0866],
    [5, 3, 0.6, 0.419904, 5.6726],
    [3, 3, 0.5, 0.5, 4.125],
    [4, 2, 0.5, 0.1875, 3.5],
  ])('%d before %d at %d', (needed, left, p, chance, mean) => {
    const solved = solve(lives(needed, left, 1), steady(p, 1));
    expect(solved.standing([]).chance).toBeCloseTo(chance, 6);
    expect(solved.length([]).mean).toBeCloseTo(mean, 4);
  });
});

describe('trips and racks', () => {
  // One-and-one pays 0, 1, 2 points with 1 − p, p(1 − p), p².
  it.each([0.5, 0.6, 0.75, 0.9])('one trip at %d', (p) => {
    const atLeast = (points: number) =>
      solve(trips('one-and-one', 1, points), steady(p, 1)).standing([]).chance;
    expect(atLeast(1)).toBeCloseTo(p, 12);
    expect(atLeast(2)).toBeCloseTo(p * p, 12);
  });
  it('five racks of five with the last ball double hold 30 points, and half of them at .5', () => {
    const worth = lastBallDouble(5, 5);
    expect(worth.reduce((sum, points) => sum + points, 0)).toBe(30);
    const chance = (needed: number) => solve(racks(worth, needed), steady(0.5, 25)).standing([]).chance;
    const expected = Array.from({ length: 30 }, (_, at) => chance(at + 1)).reduce((sum, one) => sum + one, 0);
    expect(expected).toBeCloseTo(15, 9);
  });
});

describe('the duel', () => {
  const DUEL = { shots: 5, headStart: 0, extraPairs: 200 };
  const rates = (a: number, b: number): Ability => ({
    weights: [1],
    rates: [[...Array(5).fill(a), ...Array(5).fill(b)]],
  });
  it('is even between equals', () => {
    expect(solve(duel(DUEL), rates(0.6, 0.6)).standing([]).chance).toBeCloseTo(0.5, 9);
  });
  it('level after regulation, goes a(1 − b) / (a(1 − b) + b(1 − a)) to the first', () => {
    const [a, b] = [0.7, 0.6];
    const level = Array.from({ length: 10 }, (): TurnResult => 'make');
    expect(solve(duel(DUEL), rates(a, b)).standing(level).chance).toBeCloseTo(
      (a * (1 - b)) / (a * (1 - b) + b * (1 - a)),
      9,
    );
  });
  it('is over once the other cannot be caught', () => {
    const rule = duel(DUEL);
    // Three to none after three pairs, two left for each.
    const state = [true, false, true, false, true, false].reduce(
      (at, made) => rule.step(at, made),
      rule.start,
    );
    expect(rule.finished(state)).toBe(true);
    expect(rule.won(state)).toBe(true);
  });
  it('rates a make of the other shooter as bad news', () => {
    expect(solve(duel(DUEL), rates(0.6, 0.6)).standing(['make']).leverage).toBeLessThan(0);
  });
});

describe('games that cannot be', () => {
  it.each([
    ['a run longer than the shots', 'a run of 1 to 5 shots', () => streak(6, 5, 1)],
    [
      'a score out of reach',
      'at most 10 points can be made',
      () => race({ to: 11, up: 1, down: 1, floor: 0, lost: null, most: 10 }, 1),
    ],
    [
      'a floor above where it is lost',
      'a score below 0 at which it is lost',
      () => race({ to: 3, up: 1, down: 1, floor: 0, lost: -1, most: 9 }, 1),
    ],
    ['no life', 'a life to be lost', () => lives(3, 0, 1)],
    ['more points than free throws', '1 to 4 points', () => trips('two shots', 2, 5)],
    ['more points than the balls hold', '1 to 2 points', () => racks([1, 1], 3)],
    [
      'a step that cannot be climbed',
      'steps that can be climbed',
      () => climb([{ makes: 3, shots: 2 }], 1, 20),
    ],
    ['a top that is too far', 'at least 3 shots to the top', () => climb([{ makes: 3, shots: 4 }], 1, 2)],
    [
      'a head start beyond the shots',
      'a head start of at most 3',
      () => duel({ shots: 3, headStart: 4, extraPairs: 0 }),
    ],
  ])('are refused: %s', (_, why, make) => {
    expect(make).toThrow(why);
  });
});
