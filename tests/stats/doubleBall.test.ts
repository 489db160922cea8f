import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { newcombe } from '../../renderer/stats/difference.ts';
import { type CoinBall, coinChance, doubleBallDrop } from '../../renderer/stats/doubleBall.ts';

/** So many makes and misses on singles, then on doubles. */
function balls(stop: string, [sx, sm, dx, dm]: readonly [number, number, number, number]): CoinBall[] {
  const some = (count: number, made: boolean, double: boolean): CoinBall[] =>
    Array.from({ length: count }, () => ({ stop, made, double }));
  return [
    ...some(sx, true, false),
    ...some(sm, false, false),
    ...some(dx, true, true),
    ...some(dm, false, true),
  ];
}

describe('the chance of the coin alone', () => {
  it('is Fisher’s for one stop: the lady who told tea poured first in three cups of four', () => {
    // Fisher, The Design of Experiments (1935), chapter II: 17 of 70 ways are so good or better.
    const tea = balls('cups', [1, 3, 3, 1]);
    const turned = tea.map((ball) => ({ ...ball, double: !ball.double }));
    expect(coinChance(turned).worse).toBeCloseTo(17 / 70, 12);
    expect(coinChance(tea).either).toBeCloseTo(34 / 70, 12);
  });
  /*
   * Admissions to six departments at Berkeley (Bickel, Hammel & O'Connell, Science 187:398-404, 1975), men for doubles:
   * thrown together men are admitted far more often, department by department they are not. R 4.2.2,
   * mantelhaen.test(UCBAdmissions, exact = TRUE): p = 0.227762526798, 'less' 0.11599366896; without department A
   * 0.728610588481, 0.654595177585.
   */
  const departments = [
    balls('A', [89, 19, 512, 313]),
    balls('B', [17, 8, 353, 207]),
    balls('C', [202, 391, 120, 205]),
    balls('D', [131, 244, 138, 279]),
    balls('E', [94, 299, 53, 138]),
    balls('F', [24, 317, 22, 351]),
  ];
  it.each([
    ['six departments', departments, 0.227762526798, 0.11599366896],
    ['without A', departments.slice(1), 0.728610588481, 0.654595177585],
    // The same call on counts of our own.
    [
      'three racks',
      [balls('1', [3, 2, 6, 9]), balls('2', [2, 1, 1, 4]), balls('3', [2, 3, 0, 5])],
      0.0755780382328,
      0.0602901248219,
    ],
  ])('is that of R, stop by stop: %s', (_name, stops, either, worse) => {
    const chance = coinChance(stops.flat());
    expect(chance.either).toBeCloseTo(either, 9);
    expect(chance.worse).toBeCloseTo(worse, 9);
  });
  it('sets like beside like where all together mislead', () => {
    const drop = doubleBallDrop(departments.flat());
    expect(drop?.together.points).toBeLessThan(-10);
    expect(Math.abs(drop?.points ?? NaN)).toBeLessThan(5);
  });
  it('is that of all choices of so many balls, counted out', () => {
    const ball = fc.record({ stop: fc.constantFrom('1', '2'), made: fc.boolean(), double: fc.boolean() });
    fc.assert(
      fc.property(fc.array(ball, { maxLength: 10 }), (seen) => {
        const doubles = (all: readonly CoinBall[], stop: string) =>
          all.filter((one) => one.stop === stop && one.double).length;
        const score = (all: readonly CoinBall[]) => all.filter(({ made, double }) => made && double).length;
        const choices = tosses(seen).filter(
          (toss) => doubles(toss, '1') === doubles(seen, '1') && doubles(toss, '2') === doubles(seen, '2'),
        );
        const fewer = choices.filter((toss) => score(toss) <= score(seen)).length;
        expect(coinChance(seen).worse).toBeCloseTo(fewer / choices.length, 9);
      }),
    );
  });
  it('is seldom small where doubling does nothing: over all tosses of a coin of one in five', () => {
    const ball = fc.record({
      stop: fc.constantFrom('1', '2'),
      made: fc.boolean(),
      double: fc.constant(false),
    });
    fc.assert(
      fc.property(fc.array(ball, { minLength: 6, maxLength: 8 }), (seen) => {
        const all = tosses(seen).map((toss) => {
          const doubles = toss.filter(({ double }) => double).length;
          return { weight: 0.2 ** doubles * 0.8 ** (toss.length - doubles), ...coinChance(toss) };
        });
        for (const level of [0.05, 0.1, 0.25, 0.5]) {
          for (const side of ['worse', 'either'] as const) {
            const share = all.reduce((sum, one) => sum + (one[side] <= level ? one.weight : 0), 0);
            expect(share).toBeLessThanOrEqual(level + 1e-9);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
  it('is 1 where there is nothing to tell apart', () => {
    expect(coinChance([])).toEqual({ worse: 1, either: 1 });
    expect(coinChance(balls('1', [3, 0, 2, 0])).either).toBeCloseTo(1, 12);
    expect(coinChance(balls('1', [3, 4, 0, 0])).worse).toBeCloseTo(1, 12);
  });
});

/** Every way in which the coin could have fallen. */
function tosses(seen: readonly CoinBall[]): CoinBall[][] {
  return Array.from({ length: 2 ** seen.length }, (_, toss) =>
    seen.map((ball, at) => ({ ...ball, double: ((toss >> at) & 1) === 1 })),
  );
}

describe('what doubling takes off', () => {
  it('is the plain difference with Newcombe’s interval at one stop', () => {
    const drop = doubleBallDrop(balls('1', [48, 32, 8, 12]), 0.9);
    const plain = newcombe(48, 80, 8, 20, 0.9);
    expect(drop?.points).toBeCloseTo(20, 10);
    expect(drop?.low).toBeCloseTo(100 * plain.low, 9);
    expect(drop?.high).toBeCloseTo(100 * plain.high, 9);
    expect(drop?.together.points).toBeCloseTo(20, 10);
    expect(drop?.rates.single).toBeCloseTo(0.6, 12);
    expect(drop?.rates.double).toBeCloseTo(0.4, 12);
    expect(drop?.shots).toEqual({ single: 80, double: 20 });
  });
  it('leaves out stops without both, and says nothing where no stop had both', () => {
    const both = balls('1', [4, 4, 1, 2]);
    expect(doubleBallDrop([...both, ...balls('2', [5, 1, 0, 0])])?.points).toBeCloseTo(
      doubleBallDrop(both)?.points ?? NaN,
      9,
    );
    expect(doubleBallDrop(balls('1', [4, 4, 0, 0]))).toBeNull();
    expect(doubleBallDrop([...balls('1', [4, 4, 0, 0]), ...balls('2', [0, 0, 1, 0])])).toBeNull();
    expect(doubleBallDrop([])).toBeNull();
  });
});

/*
 * Simulated racks of known truth: five stops of five balls, easier and harder, good and bad rounds (0.3 log-odds), balls
 * late in the round a little worse.
 */
describe('simulated racks with a coin of one in five', () => {
  it.each([
    [0, { least: 0, most: 0.075 }],
    [0.4, { least: 0.6, most: 1 }],
  ])('finds what doubling takes off: %d log-odds', (cost, calls) => {
    const rng = rngFromSeed(41 + 10 * cost);
    const records = 700;
    let [held, small] = [0, 0];
    const off: number[] = [];
    for (let record = 0; record < records; record += 1) {
      const all: CoinBall[] = [];
      const truth = { singles: 0, doubles: 0 };
      for (let round = 0; round < 30; round += 1) {
        const luck = 0.3 * rng.normal();
        for (let ball = 0; ball < 25; ball += 1) {
          const stop = Math.floor(ball / 5);
          const odds = 0.5 - 0.25 * stop + luck - 0.01 * ball;
          const double = rng.chance(0.2);
          const rate = (taken: number) => 1 / (1 + Math.exp(taken - odds));
          truth.singles += rate(0);
          truth.doubles += rate(cost);
          all.push({ stop: `${stop}`, made: rng.chance(double ? rate(cost) : rate(0)), double });
        }
      }
      const drop = doubleBallDrop(all, 0.9);
      const points = (100 * (truth.singles - truth.doubles)) / all.length;
      off.push((drop?.points ?? NaN) - points);
      if ((drop?.low ?? NaN) <= points && points <= (drop?.high ?? NaN)) held += 1;
      if ((drop?.chance.worse ?? NaN) <= 0.05) small += 1;
    }
    const bias = off.reduce((sum, one) => sum + one, 0) / records;
    const error = Math.sqrt(off.reduce((sum, one) => sum + (one - bias) ** 2, 0)) / records;
    expect(Math.abs(bias)).toBeLessThan(3 * error);
    // Three standard errors of a share of 700 at 90 % are 3.4 points.
    expect(Math.abs(held / records - 0.9)).toBeLessThan(0.034);
    // By chance alone at most one in twenty, and what simulation adds.
    expect(small / records).toBeGreaterThanOrEqual(calls.least);
    expect(small / records).toBeLessThanOrEqual(calls.most);
  });
});
