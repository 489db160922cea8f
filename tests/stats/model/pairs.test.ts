import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Round } from '../../../renderer/log/book.ts';
import type { GamePlan } from '../../../renderer/pressure/gamePlan.ts';
import { disagree, fewStopped, pairResult, playedPairs } from '../../../renderer/stats/model/pairs.ts';
import { signFlipTest } from '../../../renderer/stats/model/signFlip.ts';
import { PRESSURE } from '../../log/diary.ts';
import { roundOf, three } from '../rounds.ts';

function member(
  pair: string,
  condition: 'relaxed' | 'pressured',
  makes: number,
  attempts = 10,
  at = 0,
): Round {
  return {
    ...roundOf(condition, [three('top', makes, attempts)]),
    pair: { id: pair, place: condition === 'relaxed' ? 1 : 2 },
    startedAt: at,
  };
}

/** P(Σ ±|d| ≥ Σ d), one coin after the other. */
function pairByPair(differences: readonly number[]): number {
  let chances = new Map([[0, 1]]);
  for (const d of differences) {
    const next = new Map<number, number>();
    for (const [sum, chance] of chances) {
      for (const moved of [sum + d, sum - d]) next.set(moved, (next.get(moved) ?? 0) + chance / 2);
    }
    chances = next;
  }
  const sum = differences.reduce((total, d) => total + d, 0);
  const reached = [...chances].filter(([moved]) => moved >= sum).map(([, chance]) => chance);
  return reached.toSorted((a, b) => a - b).reduce((total, chance) => total + chance, 0);
}

describe('the sign-flip test', () => {
  it('has the enumerated p of eight pairs', () => {
    // 16 of 256 sign patterns reach 14.
    const test = signFlipTest([3, -1, 4, 2, 0, 5, -2, 3]);
    expect(test).toEqual({ sum: 14, oneSided: 0.0625, twoSided: 0.125 });
  });

  it('is the share of all sign patterns that reach as far', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { maxLength: 8 }), (differences) => {
        const sum = differences.reduce((total, d) => total + d, 0);
        let [reached, far] = [0, 0];
        const patterns = 2 ** differences.length;
        for (let coins = 0; coins < patterns; coins += 1) {
          const t = differences.reduce((total, d, i) => total + ((coins >> i) & 1 ? d : -d), 0);
          if (t >= sum) reached += 1;
          if (Math.abs(t) >= Math.abs(sum)) far += 1;
        }
        const test = signFlipTest(differences);
        expect(test.oneSided).toBeCloseTo(reached / patterns, 12);
        expect(test.twoSided).toBeCloseTo(far / patterns, 12);
      }),
      { numRuns: 100 },
    );
  });

  it('cannot be significant with a few pairs: 2^-k at best', () => {
    expect(signFlipTest([9]).oneSided).toBe(0.5);
    expect(signFlipTest([9, 9, 9, 9, 9]).oneSided).toBe(0.03125);
  });

  it('is what tossing one pair after the other comes to, over thousands of pairs and far into the tail', () => {
    // The order of the sums is another, so the last digits may differ.
    for (const [pairs, most, lean] of [
      [1300, 1, 0],
      [1300, 1, 0.6],
      [600, 7, 0.1],
      [2000, 5, 0.5],
    ] as const) {
      const up = (i: number): boolean => i % 2 === 0 || i % 10 < 10 * lean;
      const differences = Array.from({ length: pairs }, (_, i) => (up(i) ? 1 : -1) * (i % (most + 1)));
      const { oneSided } = signFlipTest(differences);
      expect(oneSided / pairByPair(differences)).toBeCloseTo(1, 11);
    }
  });

  it('wants whole makes', () => {
    expect(() => signFlipTest([0.5])).toThrow(RangeError);
  });
});

describe('coin-ordered pairs', () => {
  it('gives the mean difference in points with its error', () => {
    const rounds = [
      member('a', 'relaxed', 6, 10, 1),
      member('a', 'pressured', 4, 10, 2),
      member('b', 'pressured', 5, 10, 3),
      member('b', 'relaxed', 5, 10, 4),
    ];
    const pairs = playedPairs(rounds.toReversed());
    expect(pairs.played).toEqual([
      { id: 'a', difference: 2, attempts: 10 },
      { id: 'b', difference: 0, attempts: 10 },
    ]);
    // Differences of 20 and 0 points: mean 10, standard deviation 14.14, error 10.
    expect(pairResult(pairs)).toEqual({
      n: 2,
      mean: 10,
      se: expect.closeTo(10, 10),
      p: 0.5,
      leftOut: 0,
      stopped: 0,
    });
  });

  it('leaves out pairs that are not whole, and says how many', () => {
    const pairs = playedPairs([
      member('short', 'relaxed', 3, 10),
      member('short', 'pressured', 3, 7),
      member('alone', 'relaxed', 3),
      roundOf('relaxed', [three('top', 5, 10)]),
    ]);
    expect(pairs).toEqual({ played: [], leftOut: ['alone', 'short'], stopped: [] });
    expect(pairResult(pairs)).toEqual({ n: 0, mean: null, se: null, p: null, leftOut: 2, stopped: 0 });
  });

  it('leaves out pairs of a game that makes and misses end: only the unlucky ones are as long as the relaxed round', () => {
    const game = (plan: GamePlan) => ({
      ...PRESSURE,
      mark: null,
      game: { name: 'A game', plan, chance: null },
    });
    const pair = (plan: GamePlan) => [
      member('a', 'relaxed', 6),
      { ...member('a', 'pressured', 4), pressure: game(plan) },
    ];
    expect(playedPairs(pair({ family: 'streak', row: 4, most: 10 })).leftOut).toEqual(['a']);
    expect(playedPairs(pair({ family: 'racks', double: 'none', needed: 5 })).played).toHaveLength(1);
  });

  it('no longer counts as fair once more than a tenth was ended early', () => {
    const whole = Array.from({ length: 18 }, (_, at) => [
      member(`w${at}`, 'relaxed', 5, 10, at),
      member(`w${at}`, 'pressured', 5, 10, at),
    ]).flat();
    const early = (id: string): Round[] => [
      member(id, 'relaxed', 5),
      { ...member(id, 'pressured', 1, 4), ending: 'stopped' },
    ];
    expect(fewStopped(playedPairs([...whole, ...early('a'), ...early('b')]))).toBe(true);
    const pairs = playedPairs([...whole, ...early('a'), ...early('b'), ...early('c')]);
    expect(pairs.stopped).toEqual(['a', 'b', 'c']);
    expect(fewStopped(pairs)).toBe(false);
    expect(fewStopped(playedPairs([]))).toBe(true);
  });

  it('disagrees with a model that is more than three errors away, from sixteen pairs on', () => {
    const pairs = { n: 20, mean: 8, se: 2, p: 0.01, leftOut: 0, stopped: 0 };
    expect(disagree(pairs, 1.9)).toBe(true);
    expect(disagree(pairs, 2.1)).toBe(false);
    expect(disagree({ ...pairs, n: 15 }, 0)).toBe(false);
  });
});
