import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { reach, type ReachState } from '../../renderer/games/reach.ts';
import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import { solve, type Ability } from '../../renderer/games/solver.ts';
import { betaBinomialAtLeast } from '../stats/betaBinomial.ts';
import { chanceByEnumeration, steady } from './enumerate.ts';

const MOST_TURNS = 9;
const rate = fc.double({ min: 0.001, max: 0.999, noNaN: true });
/** Days with make rates of their own for every turn, as corners and free throws have. */
const ability: fc.Arbitrary<Ability> = fc
  .array(
    fc.tuple(
      fc.integer({ min: 1, max: 100 }),
      fc.array(rate, { minLength: MOST_TURNS, maxLength: MOST_TURNS }),
    ),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((days) => {
    const sum = days.reduce((total, [weight]) => total + weight, 0);
    return { weights: days.map(([weight]) => weight / sum), rates: days.map(([, rates]) => rates) };
  });
const game = fc
  .integer({ min: 1, max: MOST_TURNS })
  .chain((turns) => fc.tuple(fc.integer({ min: 0, max: turns }), fc.constant(turns)));
const result = fc.constantFrom<TurnResult>('make', 'miss', 'lost');
const results = fc.array(result, { maxLength: MOST_TURNS });

describe('the solver', () => {
  it('agrees with every one of the 2^n ways a round can go, on days and spots of any kind', () => {
    fc.assert(
      fc.property(ability, game, results, (known, [needed, turns], taken) => {
        const given = taken.slice(0, turns);
        const rule = reach(needed, turns);
        const { chance, leverage } = solve(rule, known).standing(given);
        expect(chance).toBeCloseTo(chanceByEnumeration(rule, known, given), 9);
        const after = (next: TurnResult) => chanceByEnumeration(rule, known, [...given, next]);
        const expected = given.length === turns ? 0 : after('make') - after('miss');
        expect(leverage).toBeCloseTo(expected, 9);
      }),
      { numRuns: 300 },
    );
  });
  it('is a martingale: the chance now is what it will be, make or miss, on average', () => {
    fc.assert(
      fc.property(ability, game, results, (known, [needed, turns], taken) => {
        const given = taken.slice(0, turns - 1);
        const solved = solve(reach(needed, turns), known);
        // The chance that the next one goes in, over the days as they look by now.
        const next = chanceByEnumeration(nextGoesIn(given.length), known, given);
        const make = solved.standing([...given, 'make']).chance;
        const miss = solved.standing([...given, 'miss']).chance;
        expect(next * make + (1 - next) * miss).toBeCloseTo(solved.standing(given).chance, 9);
      }),
      { numRuns: 300 },
    );
  });
  it('never asks for more makes and gives a better chance', () => {
    fc.assert(
      fc.property(ability, fc.integer({ min: 1, max: MOST_TURNS }), (known, turns) => {
        let before = 1;
        for (let needed = 0; needed <= turns; needed += 1) {
          const { chance } = solve(reach(needed, turns), known).standing([]);
          expect(chance).toBeLessThanOrEqual(before + 1e-12);
          before = chance;
        }
      }),
    );
  });
  it('never rates a make below a miss: leverage is 0 or more, and at most 1', () => {
    // Every day has one make rate throughout, so a make can only speak well of the day.
    fc.assert(
      fc.property(
        fc.array(rate, { minLength: 1, maxLength: 4 }),
        game,
        results,
        (rates, [needed, turns], taken) => {
          const known: Ability = {
            weights: rates.map(() => 1 / rates.length),
            rates: rates.map((p) => Array.from({ length: turns }, () => p)),
          };
          const { leverage } = solve(reach(needed, turns), known).standing(taken.slice(0, turns));
          expect(leverage).toBeGreaterThanOrEqual(-1e-12);
          expect(leverage).toBeLessThanOrEqual(1 + 1e-12);
        },
      ),
      { numRuns: 300 },
    );
  });
  it('holds its numbers on a round of a hundred', () => {
    const { chance } = solve(reach(70, 100), steady(0.7, 100)).standing([]);
    // The normal approximation with continuity, (70 − 0.5 − 70) / √21, gives .5434.
    expect(chance).toBeCloseTo(0.5434, 1);
    const after = solve(reach(70, 100), steady(0.7, 100)).standing(Array.from({ length: 100 }, () => 'make'));
    expect(after).toEqual({ chance: 1, leverage: 0 });
  });
  it('takes a turn the clock took for a miss in the game, and for nothing else', () => {
    const known: Ability = { weights: [0.5, 0.5], rates: [Array(4).fill(0.2), Array(4).fill(0.8)] };
    const solved = solve(reach(2, 4), known);
    const lost = solved.standing(['lost']).chance;
    const miss = solved.standing(['miss']).chance;
    // After a real miss the bad day is the likelier one.
    expect(lost).toBeGreaterThan(miss);
    expect(lost).toBeCloseTo(chanceByEnumeration(reach(2, 3), known), 12);
  });
  it.each([
    [0, 0],
    [1, 1],
  ])('knows what a shooter who makes %d of 1 will do', (p, chance) => {
    const solved = solve(reach(2, 4), steady(p, 4));
    expect(solved.standing([]).chance).toBe(chance);
    // What cannot happen to such a shooter still leaves a number.
    const impossible = solved.standing([p === 0 ? 'make' : 'miss']);
    expect(impossible.chance).toBe(chance);
    expect(Number.isFinite(impossible.leverage)).toBe(true);
  });
  it('foresees a shot by the days as they were before the round, wherever the game stands', () => {
    fc.assert(
      fc.property(ability, game, results, (known, [needed, turns], taken) => {
        const given = taken.slice(0, turns - 1);
        const rule = reach(needed, turns);
        // A day by itself cannot be weighed anew.
        const hangs = known.weights.reduce((sum, weight, day) => {
          const alone: Ability = { weights: [1], rates: [known.rates[day] ?? []] };
          const after = (next: TurnResult) => chanceByEnumeration(rule, alone, [...given, next]);
          return sum + weight * (after('make') - after('miss'));
        }, 0);
        const foreseen = solve(rule, known).foreseen(given);
        expect(foreseen?.leverage).toBeCloseTo(hangs, 9);
        const rates = known.rates.map((day) => day[given.length] ?? NaN);
        const expected = rates.reduce((sum, p, day) => sum + p * (known.weights[day] ?? NaN), 0);
        expect(foreseen?.rate).toBeCloseTo(expected, 12);
      }),
    );
  });
  it('foresees what it sees where the shooter is known, and nothing once the round is over', () => {
    const solved = solve(reach(2, 3), steady(0.4, 3));
    expect(solved.foreseen(['make'])?.leverage).toBeCloseTo(solved.standing(['make']).leverage, 12);
    expect(solved.foreseen(['make', 'miss', 'make'])).toBeNull();
    const days: Ability = { weights: [0.5, 0.5], rates: [Array(3).fill(0.1), Array(3).fill(0.9)] };
    const unsure = solve(reach(2, 3), days);
    // After a make the good day is the likelier one, but that was not known before.
    expect(unsure.foreseen(['make'])?.rate).toBeCloseTo(0.5, 12);
    // On either day 2pq = .18 hangs on the first shot; a make also tells which day it is, and that is left out.
    expect(unsure.foreseen([])?.leverage).toBeCloseTo(0.18, 12);
    expect(unsure.standing([]).leverage).toBeCloseTo(0.82, 12);
  });
  it('refuses an ability that does not cover the round', () => {
    expect(() => solve(reach(3, 5), steady(0.5, 4))).toThrow(/a make rate for every day and shot/);
    expect(() => solve(reach(3, 5), { weights: [0.5, 0.5], rates: [Array(5).fill(0.5)] })).toThrow(
      /every day and shot/,
    );
  });
  it('refuses a game that does not end when it said it would', () => {
    const endless: Rule<number> = {
      start: 0,
      step: (state) => state + 1,
      finished: () => false,
      won: () => false,
      shot: () => 0,
      key: (state) => state,
      longest: 3,
    };
    expect(() => solve(endless, steady(0.5, 3))).toThrow(/a game that ends/);
  });
});

describe('published values', () => {
  // Worked out for this project by literal enumeration, an urn or quadrature, before the solver was written.
  it('reach 6 of 10 at .55: chance .5044045917, leverage of the first shot .2600363418', () => {
    const { chance, leverage } = solve(reach(6, 10), steady(0.55, 10)).standing([]);
    expect(chance).toBeCloseTo(0.5044045917, 9);
    expect(leverage).toBeCloseTo(0.2600363418, 9);
  });
  it('at least 18 of 25 at .7: .5118485440', () => {
    expect(solve(reach(18, 25), steady(0.7, 25)).standing([]).chance).toBeCloseTo(0.511848544, 9);
  });
  it('leverage is C(r − 1, k − 1) p^(k−1) q^(r−k) all along a round of known ability', () => {
    const [p, needed, turns] = [0.6, 4, 7];
    const solved = solve(reach(needed, turns), steady(p, turns));
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
    const given: TurnResult[] = [];
    for (const next of ['make', 'miss', 'make', 'miss', 'make', 'miss'] as const) {
      const [k, r] = [needed - given.filter((one) => one === 'make').length, turns - given.length];
      const expected = k < 1 || k > r ? 0 : choose(r - 1, k - 1) * p ** (k - 1) * (1 - p) ** (r - k);
      expect(solved.standing(given).leverage).toBeCloseTo(expected, 12);
      given.push(next);
    }
  });
  it('under a beta distribution the chance is beta-binomial, before the round and after any shots', () => {
    const shape = fc.integer({ min: 2, max: 30 });
    fc.assert(
      fc.property(shape, shape, game, results, (a, b, [needed, turns], taken) => {
        const given = taken.slice(0, turns);
        const [makes, misses] = ['make', 'miss'].map((one) => given.filter((now) => now === one).length);
        const { chance } = solve(reach(needed, turns), betaDays(a, b, turns)).standing(given);
        const left = { attempts: turns - given.length, a: a + (makes ?? NaN), b: b + (misses ?? NaN) };
        expect(chance).toBeCloseTo(betaBinomialAtLeast(left, needed - (makes ?? NaN)), 5);
      }),
    );
  });
  it('at least 6 of 10 under Beta(7, 5): .5750178614; after a make .7164801143, after a miss .3769707073', () => {
    const solved = solve(reach(6, 10), betaDays(7, 5, 10));
    expect(solved.standing([]).chance).toBeCloseTo(0.5750178614, 6);
    expect(solved.standing(['make']).chance).toBeCloseTo(0.7164801143, 6);
    expect(solved.standing(['miss']).chance).toBeCloseTo(0.3769707073, 6);
    expect(solved.standing([]).leverage).toBeCloseTo(0.7164801143 - 0.3769707073, 6);
  });
});

/** One turn: won where the next shot goes in. Turns before it pass. */
function nextGoesIn(after: number): Rule<{ readonly turn: number; readonly made: boolean }> {
  return {
    start: { turn: 0, made: false },
    step: ({ turn }, made) => ({ turn: turn + 1, made }),
    finished: ({ turn }) => turn === after + 1,
    won: ({ made }) => made,
    shot: ({ turn }) => Math.min(turn, after),
    key: ({ turn, made }) => `${turn} ${made}`,
    longest: after + 1,
  };
}

/** A beta distribution as a fine grid of days, by the midpoint rule. */
function betaDays(a: number, b: number, turns: number, grid = 2000): Ability {
  const points = Array.from({ length: grid }, (_, at) => (at + 0.5) / grid);
  const heights = points.map((p) => p ** (a - 1) * (1 - p) ** (b - 1));
  const sum = heights.reduce((total, height) => total + height, 0);
  return {
    weights: heights.map((height) => height / sum),
    rates: points.map((p) => Array.from({ length: turns }, () => p)),
  };
}

describe('reach', () => {
  const state: fc.Arbitrary<readonly [Rule<ReachState>, ReachState]> = game.chain(([needed, turns]) =>
    fc.array(fc.boolean(), { maxLength: turns }).map((shots) => {
      const rule = reach(needed, turns);
      return [rule, shots.reduce((at, made) => rule.step(at, made), rule.start)] as const;
    }),
  );

  it('is over after its turns and not before, whatever falls', () => {
    fc.assert(
      fc.property(
        game,
        fc.array(fc.boolean(), { minLength: MOST_TURNS, maxLength: MOST_TURNS }),
        ([needed, turns], shots) => {
          const rule = reach(needed, turns);
          let at = rule.start;
          for (const made of shots.slice(0, turns)) {
            expect(rule.finished(at)).toBe(false);
            at = rule.step(at, made);
          }
          expect(rule.finished(at)).toBe(true);
          expect(rule.won(at)).toBe(shots.slice(0, turns).filter(Boolean).length >= needed);
        },
      ),
    );
  });
  it('gives equal keys to equal states alone', () => {
    fc.assert(
      fc.property(state, fc.array(fc.boolean(), { maxLength: MOST_TURNS }), ([rule, one], shots) => {
        const other = shots.slice(0, rule.longest).reduce((at, made) => rule.step(at, made), rule.start);
        expect(rule.key(one) === rule.key(other)).toBe(
          one.taken === other.taken && one.makes === other.makes,
        );
      }),
    );
  });
  it('refuses a mark that no card can hold', () => {
    expect(() => reach(6, 5)).toThrow(/between 0 and 5/);
    expect(() => reach(-1, 5)).toThrow(/between 0 and 5/);
  });
});
