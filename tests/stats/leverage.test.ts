import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { leverageDrop, type LeverageShot } from '../../renderer/stats/leverage.ts';
import { expit } from '../../renderer/stats/special.ts';
import { leverageBias } from '../bench/leverageBias.ts';
import { byRound, playLeverage, scaleFor } from '../bench/leverageWorld.ts';

const told = (shots: readonly LeverageShot[], level?: number) =>
  present(leverageDrop(shots, level), 'a drop');
const played = (perSd: number, rounds: number, seed = 3): LeverageShot[] =>
  playLeverage(
    { game: 'reach', rounds, perSd, roundSd: 0.3 },
    scaleFor('reach', rngFromSeed(5)),
    rngFromSeed(seed),
  );

describe('what leverage takes off', () => {
  it('says nothing of the shooter before there are shots: an even chance, about 6 points to each side', () => {
    const { perSd, probability } = told(played(0, 1).slice(0, 4));
    expect(probability).toBeCloseTo(0.5, 1);
    expect(perSd.high).toBeGreaterThan(5);
    expect(perSd.high).toBeLessThan(7);
    expect(perSd.low).toBeLessThan(-5);
  });
  it('is nothing where the same hangs on every shot', () => {
    expect(leverageDrop([])).toBeNull();
    expect(leverageDrop(played(0, 3).map((shot) => ({ ...shot, leverage: 0.1 + 0.2 })))).toBeNull();
    expect(leverageDrop(played(0, 1).slice(0, 1))).toBeNull();
  });
  it('has a narrower interval at a lower level, around the same points', () => {
    const shots = played(0.25, 20);
    const [narrow, wide] = [told(shots, 0.5), told(shots, 0.95)];
    expect(narrow.perSd.points).toBe(wide.perSd.points);
    expect(narrow.perSd.low).toBeGreaterThan(wide.perSd.low);
    expect(narrow.mostAgainstLeast.high).toBeLessThan(wide.mostAgainstLeast.high);
    expect(told(shots)).toEqual(told(shots, 0.9));
  });
  it('tells the third on which most hangs from the third on which least hangs', () => {
    const shots = played(0.4, 60);
    const { perSd, mostAgainstLeast, least, most, sd, shots: n, rounds } = told(shots);
    const sorted = shots.map(({ leverage }) => leverage).toSorted((a, b) => a - b);
    expect(least).toBeLessThan(sorted[Math.floor(n / 3)] ?? NaN);
    expect(most).toBeGreaterThan(sorted[Math.ceil((2 * n) / 3) - 1] ?? NaN);
    expect([n, rounds]).toEqual([1500, 60]);
    // Near one half the rate is straight, so the two are as far apart as their leverages.
    expect(mostAgainstLeast.points / perSd.points / ((most - least) / sd)).toBeCloseTo(1, 1);
  });
  it('does not know the order of the rounds nor the unit of leverage', () => {
    const shots = played(0.25, 12);
    const there = told(shots);
    const back = told(byRound(shots).toReversed().flat());
    const scaled = told(shots.map((shot) => ({ ...shot, leverage: 0.3 + shot.leverage / 7 })));
    for (const other of [back, scaled]) {
      expect(other.perSd.points).toBeCloseTo(there.perSd.points, 3);
      expect(other.perSd.low).toBeCloseTo(there.perSd.low, 3);
      expect(other.probability).toBeCloseTo(there.probability, 4);
    }
  });
  it('turns its sign when makes and misses change places', () => {
    const shots = played(0.3, 12);
    const turned = told(shots.map((shot) => ({ ...shot, made: !shot.made, rate: 1 - shot.rate })));
    const there = told(shots);
    expect(turned.perSd.points).toBeCloseTo(-there.perSd.points, 2);
    expect(turned.perSd.low).toBeCloseTo(-there.perSd.high, 2);
    expect(turned.probability).toBeCloseTo(1 - there.probability, 3);
  });
  it('asks for rates between 0 and 1', () => {
    expect(() => leverageDrop(played(0, 1).map((shot) => ({ ...shot, rate: 1 })))).toThrow(RangeError);
  });
  it('holds its own estimate whatever is shot', () => {
    const shot = fc.record({
      round: fc.constantFrom('1', '2', '3'),
      place: fc.constantFrom('corner', 'line'),
      made: fc.boolean(),
      leverage: fc.double({ min: 0, max: 1, noNaN: true }),
      rate: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(shot, { minLength: 2, maxLength: 40 }), (shots) => {
        const drop = leverageDrop(shots);
        for (const { low, points, high } of drop ? [drop.perSd, drop.mostAgainstLeast] : []) {
          expect(low).toBeLessThanOrEqual(points);
          expect(points).toBeLessThanOrEqual(high);
          expect(Math.abs(low) + Math.abs(high)).toBeLessThan(200);
        }
      }),
      { numRuns: 40 },
    );
  });
});

/** Two places, of which the harder has more hanging on it, and rates before the round that were off at both. */
it('does not take a place that was rated wrongly for leverage', () => {
  const rng = rngFromSeed(8);
  const records = Array.from({ length: 30 }, () =>
    Array.from({ length: 60 }, (_, round) => {
      const luck = 0.2 * rng.normal();
      return Array.from({ length: 20 }, (): LeverageShot => {
        const corner = rng.chance(0.5);
        const leverage = (corner ? 0.15 : 0.05) + 0.1 * rng.next();
        const made = rng.chance(expit((corner ? -0.6 : 1.1) + luck));
        return {
          round: `${round}`,
          place: corner ? 'corner' : 'line',
          made,
          leverage,
          rate: corner ? 0.45 : 0.7,
        };
      });
    }).flat(),
  );
  const mean = (of: (shots: readonly LeverageShot[]) => number): number =>
    records.reduce((sum, shots) => sum + of(shots), 0) / records.length;
  expect(Math.abs(mean((shots) => told(shots).perSd.points))).toBeLessThan(1.5);
  const blind = mean((shots) => told(shots.map((shot) => ({ ...shot, place: 'anywhere' }))).perSd.points);
  expect(blind).toBeGreaterThan(4);
});

/*
 * Simulated shooters of known truth, 120 rounds each; tests/bench/leverageBias.ts prints more worlds, more ways and more data
 * sets. One data set has a standard deviation of about 1 point, so twelve know their mean within 0.6 (two standard errors).
 */
describe('simulated games', () => {
  const SETS = 12;

  it.each([
    ['reach', 0, 0],
    ['streak', 0.3, 0],
    ['streak', 0.3, 0.3],
  ] as const)(
    '%s, rounds that differ by %d, tired by %d: nothing where nothing is',
    (game, roundSd, tires) => {
      const { ours, cover } = leverageBias({ game, rounds: 120, perSd: 0, roundSd, tires }, SETS, 21);
      expect(Math.abs(ours)).toBeLessThan(0.9);
      expect(cover).toBeGreaterThan(0.6);
    },
  );
  it.each(['reach', 'streak'] as const)('%s: what is there, a tenth less for the prior', (game) => {
    const one = leverageBias({ game, rounds: 120, perSd: 0.25, roundSd: 0.3 }, SETS, 22);
    expect(one.truth).toBeGreaterThan(5);
    expect(Math.abs(one.bare - one.truth)).toBeLessThan(0.9);
    expect(Math.abs(one.ours - 0.93 * one.truth)).toBeLessThan(0.9);
    expect(one.calls).toBe(1);
    expect(one.cover).toBeGreaterThan(0.6);
    expect(one.claimed / one.sd).toBeGreaterThan(0.6);
  });
  it('is needed: effects fixed for each round, and means inside it, read loss where nothing is', () => {
    const { fixedEffects, withinRounds } = leverageBias(
      { game: 'streak', rounds: 120, perSd: 0, roundSd: 0.3 },
      SETS,
      23,
    );
    expect(fixedEffects).toBeGreaterThan(2);
    expect(withinRounds).toBeGreaterThan(1);
  });
});
