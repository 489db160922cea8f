import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../../renderer/basics/chance.ts';
import type { Round } from '../../../renderer/log/book.ts';
import type { Condition } from '../../../renderer/log/events.ts';
import { conditionInPair, pairOrderFor } from '../../../renderer/log/begin.ts';
import { pairResult, playedPairs } from '../../../renderer/stats/model/pairs.ts';
import { expit } from '../../../renderer/stats/special.ts';
import { PLAIN, play, RELAXED_MIX } from '../../bench/modelWorld.ts';
import { freeThrows, roundOf } from '../rounds.ts';

/*
 * What the order of a session's rounds does to the drop of a shooter whom pressure costs nothing: 8 rounds of 25 shots, a
 * make at one half where warm and fresh. Figures of this project's own study, worked out once by an independent prototype.
 */

const SHOTS = 25;

/** Chance of shot i of a session. */
type Curve = (shot: number) => number;

/** Cold at first, and tiring by so much for each 100 shots beyond the first 100. */
const tiring =
  (perHundred: number, alreadyShot: number): Curve =>
  (shot) => {
    const i = shot + alreadyShot;
    return expit(-0.4 * Math.exp(-i / 15) - (perHundred * Math.max(0, i - 100)) / 100);
  };

const CURVES = {
  cold: tiring(0.2, 0),
  warmedUp: tiring(0.2, 15),
  warmedUpTiring: tiring(0.6, 15),
} as const;

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Expected relaxed minus pressured make percentage of a plan, R = relaxed round, P = pressured round. */
function biasOf(plan: string, curve: Curve): number {
  const rate = (condition: string): number => {
    const chances = plan
      .split('')
      .flatMap((one, round) =>
        one === condition ? Array.from({ length: SHOTS }, (_, shot) => curve(round * SHOTS + shot)) : [],
      );
    return sumOf(chances) / chances.length;
  };
  return 100 * (rate('R') - rate('P'));
}

describe('the order of rounds, true drop 0', () => {
  it.each([
    ['RRRRRRPP', 2.28, 3.39, 10.64],
    ['PPRRRRRR', 1.29, -1.09, -5.34],
    ['RPRPRPRP', -0.43, 0.29, 1.56],
    ['RPPRRPPR', -0.98, -0.41, -0.47],
    ['PRRPPRRP', 0.98, 0.41, 0.47],
  ])('%s: a bias of %d points cold, %d after a warm-up, %d tiring fast', (plan, cold, warmedUp, tired) => {
    expect(biasOf(plan, CURVES.cold)).toBeCloseTo(cold, 2);
    expect(biasOf(plan, CURVES.warmedUp)).toBeCloseTo(warmedUp, 2);
    expect(biasOf(plan, CURVES.warmedUpTiring)).toBeCloseTo(tired, 2);
  });

  it('is 0 on average where a coin orders each pair, whatever the curve', () => {
    const plans = Array.from({ length: 16 }, (_, coins) =>
      [0, 1, 2, 3].map((pair) => ((coins >> pair) & 1 ? 'RP' : 'PR')).join(''),
    );
    const odd: Curve = (shot) => (shot < 60 ? 0.9 : 0.1);
    for (const curve of [...Object.values(CURVES), odd]) {
      expect(sumOf(plans.map((plan) => biasOf(plan, curve)))).toBeCloseTo(0, 10);
    }
    // What the coin leaves in one session.
    const sd = (curve: Curve) => Math.sqrt(sumOf(plans.map((plan) => biasOf(plan, curve) ** 2)) / 16);
    expect(sd(CURVES.cold)).toBeCloseTo(1.1, 2);
    expect(sd(CURVES.warmedUp)).toBeCloseTo(0.58, 2);
  });
});

describe('pairs as the app tosses, shoots and reads them', () => {
  /** Sessions of four pairs, every shot at the curve's chance, in the order that `orders` gives. */
  function shoot(sessions: number, curve: Curve, first: (pair: number) => Condition): Round[] {
    const rng = rngFromSeed(71);
    return [...Array(sessions).keys()].flatMap((session) =>
      Array.from({ length: 8 }, (_, place): Round => {
        const pair = 4 * session + Math.floor(place / 2);
        const calmFirst = first(pair) === 'relaxed';
        const condition = calmFirst === (place % 2 === 0) ? 'relaxed' : 'pressured';
        let makes = 0;
        for (let shot = 0; shot < SHOTS; shot += 1) makes += rng.chance(curve(place * SHOTS + shot)) ? 1 : 0;
        return {
          ...roundOf(condition, [freeThrows(makes, SHOTS)]),
          id: `${session} ${place}`,
          startedAt: 8 * session + place,
          pair: { id: `pair ${pair}`, place: place % 2 === 0 ? 1 : 2 },
        };
      }),
    );
  }

  it('shows no drop where there is none, though the shooter tires fast', () => {
    const tossed = shoot(400, CURVES.warmedUpTiring, (pair) => conditionInPair(pairOrderFor(pair), 1));
    const { n, mean, se } = pairResult(playedPairs(tossed));
    expect(n).toBe(1600);
    expect(Math.abs(mean ?? NaN)).toBeLessThan(3 * (se ?? NaN));
  });

  it('would show one if the shooter chose to go first relaxed', () => {
    const chosen = shoot(400, CURVES.warmedUpTiring, () => 'relaxed');
    const { mean, se } = pairResult(playedPairs(chosen));
    expect(Math.abs((mean ?? NaN) - 1.56)).toBeLessThan(3 * (se ?? NaN));
    expect(mean).toBeGreaterThan(3 * (se ?? NaN));
  });
});

/*
 * An order curve that no "cold, then tired" can follow; 12 weeks of 4 sessions, two tossed pairs among the eight rounds of
 * each. The pairs alone were 0.2 points off here in the study, with an RMSE of 1.7 and a cover of 84 %, in 100 shooters.
 */
describe('pairs alone, with an odd order curve and good and bad days', () => {
  const odd = (shot: number): number =>
    -0.5 * Math.max(0, 1 - shot / 40) - 0.5 * (Math.max(0, shot - 80) / 100) ** 2;
  const plan = (rng: Rng): Condition[] => {
    const pair = (): Condition[] => (rng.chance(0.5) ? ['relaxed', 'pressured'] : ['pressured', 'relaxed']);
    return ['relaxed', ...pair(), 'relaxed', 'relaxed', ...pair(), 'relaxed'];
  };
  const world = { ...PLAIN, weeks: 12, plan, pressuredMix: RELAXED_MIX, order: odd };
  /** The rounds of a session that are a pair: numbers 2 and 3, 6 and 7. */
  const PAIRED: Readonly<Record<string, string>> = { 2: 'first', 3: 'first', 6: 'second', 7: 'second' };

  it('are unbiased, and ± 1.645 errors hold the truth in nine cases of ten', () => {
    const shooters = 200;
    let [sum, square, held] = [0, 0, 0];
    for (let shooter = 0; shooter < shooters; shooter += 1) {
      const rounds = play(world, rngFromSeed(800 + shooter)).rounds.map((round): Round => {
        const pair = PAIRED[round.label];
        return pair ? { ...round, pair: { id: `${round.session} ${pair}`, place: 1 } } : round;
      });
      const { n, mean, se } = pairResult(playedPairs(rounds));
      expect(n).toBe(96);
      sum += mean ?? NaN;
      square += (mean ?? NaN) ** 2;
      if (Math.abs(mean ?? NaN) < 1.645 * (se ?? NaN)) held += 1;
    }
    const rmse = Math.sqrt(square / shooters);
    expect(Math.abs(sum / shooters)).toBeLessThan((3 * rmse) / Math.sqrt(shooters));
    expect(rmse).toBeLessThan(1.7);
    expect(Math.abs(held / shooters - 0.9)).toBeLessThan(0.064);
  });
});
