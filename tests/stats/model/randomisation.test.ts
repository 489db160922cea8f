import { describe, expect, it } from 'vitest';

import { signFlipTest } from '../../../renderer/stats/model/signFlip.ts';

/*
 * A second way to the p values of the coin: write out every way it could have fallen. Complete randomisation draws which k
 * of m rounds are the pressured ones; pairs toss a coin for each two. The app only pairs; the other design is here to
 * check the idea, and to show what a coin for each pair costs. Values of this project's own study.
 */

/** Every way to choose k of these. */
function choices<T>(items: readonly T[], k: number): T[][] {
  if (k === 0) return [[]];
  const [first, ...rest] = items;
  if (first === undefined || items.length < k) return [];
  return [...choices(rest, k - 1).map((chosen) => [first, ...chosen]), ...choices(rest, k)];
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Share of the ways to choose the pressured rounds that leave them as few makes as were seen, or fewer. */
function completeP(relaxed: readonly number[], pressured: readonly number[]): number {
  const rounds = [...relaxed, ...pressured];
  const ways = choices([...rounds.keys()], pressured.length);
  const seen = sumOf(pressured);
  const asFew = ways.filter((way) => sumOf(way.map((at) => rounds[at] ?? NaN)) <= seen);
  return asFew.length / ways.length;
}

describe('p values of chance alone, by writing it out', () => {
  it('15, 16, 14 relaxed against 11, 12, 10 of 25 pressured: 1 of the 20 ways to choose three of six', () => {
    expect(completeP([15, 16, 14], [11, 12, 10])).toBe(1 / 20);
    // Had they been three pairs, the same makes could not have said more than 1 in 8.
    expect(signFlipTest([4, 4, 4]).oneSided).toBe(1 / 8);
  });

  it('cannot be smaller than one over the number of ways', () => {
    expect(completeP([9, 9, 9], [1, 1, 1])).toBe(1 / 20);
    expect(completeP([9, 9, 9, 9], [1, 1, 1, 1])).toBeCloseTo(0.014, 3);
    // One coin for a whole session, relaxed-pressured-pressured-relaxed or the other way round.
    expect(signFlipTest([9 + 9 - 1 - 1]).oneSided).toBe(1 / 2);
    // Five pairs: 0.031.
    expect(signFlipTest([9, 9, 9, 9, 9]).oneSided).toBe(2 ** -5);
  });

  it('is the sign-flip test where the choice is one of each pair', () => {
    const pairs = [
      [14, 11],
      [9, 10],
      [15, 11],
      [12, 10],
      [8, 8],
    ] as const;
    const ways = pairs.reduce<number[][]>(
      (so, pair) => so.flatMap((chosen) => pair.map((makes) => [...chosen, makes])),
      [[]],
    );
    const seen = sumOf(pairs.map(([, pressured]) => pressured));
    const asFew = ways.filter((way) => sumOf(way) <= seen);
    const test = signFlipTest(pairs.map(([relaxed, pressured]) => relaxed - pressured));
    expect(test.oneSided).toBeCloseTo(asFew.length / ways.length, 14);
  });
});
