import { describe, expect, it } from 'vitest';

import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import {
  lastShotSentence,
  chanceFigure,
  FAMILIES,
  lengthSentence,
  priceWords,
} from '../../renderer/screens/games/priceWords.ts';
import type { Price } from '../../renderer/store/gamePrices.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import type { Pace } from '../../renderer/stats/pace.ts';

const STREAK: GamePlan = { family: 'streak', row: 10, most: 200 };
const DUEL: GamePlan = {
  family: 'duel',
  against: { kind: 'drawn', rate: 0.5 },
  headStart: 0,
  extraPairs: 5,
};
const price = (change: Partial<Price> = {}): Price => ({
  chance: 0.46,
  length: { mean: 42.3, ninetieth: 85, most: 200 },
  inTime: null,
  ...change,
});
const pace = (seconds: number, own = true): Pace => ({ seconds, own, spread: 2, doubt: 1, shots: 40 });

describe('the chance of a game in words', () => {
  it.each([
    [0.46, '46', 'You win this about 46 times in 100.'],
    [0.001, '<1', 'You would hardly ever win this.'],
    [0.999, '>99', 'You would hardly ever lose this.'],
    [0.005, '1', 'You win this about once in 100.'],
    [0.995, '99', 'You win this about 99 times in 100.'],
  ])('%d', (chance, figure, sentence) => {
    expect(chanceFigure(chance)).toBe(figure);
    expect(priceWords(price({ chance }), STREAK)).toContain(sentence);
  });
});

describe('the length of a game in words', () => {
  it.each<readonly [Price['length'], GamePlan, string]>([
    [{ mean: 42.3, ninetieth: 85, most: 200 }, STREAK, '42 shots on average, one time in ten over 85.'],
    [{ mean: 68.4, ninetieth: 100, most: 100 }, STREAK, '68 shots on average, 100 at most.'],
    [{ mean: 10, ninetieth: 10, most: 10 }, { family: 'reach', needed: 8 }, 'Always 10 shots.'],
    [{ mean: 1, ninetieth: 1, most: 1 }, { family: 'reach', needed: 1 }, 'Always 1 shot.'],
    [
      { mean: 1.3, ninetieth: 2, most: 4 },
      { family: 'lives', needed: 4, lives: 1 },
      '1 shot on average, one time in ten over 2.',
    ],
    // In a duel every other turn is the other's.
    [{ mean: 19.2, ninetieth: 24, most: 30 }, DUEL, '10 shots on average, one time in ten over 12.'],
  ])('%j of %j', (length, plan, words) => {
    expect(lengthSentence(price({ length }), plan)).toBe(words);
  });

  it('on a clock that cuts it short says for how many shots there is time, and what the clock costs', () => {
    const inTime = {
      enough: { chance: 0.42, length: { mean: 25, ninetieth: 25, most: 25 } },
      pace: pace(6.9),
    };
    const cut = price({ chance: 0.001, length: { mean: 8.8, ninetieth: 9, most: 25 }, inTime });
    const plan: GamePlan = { family: 'racks', double: 'last', needed: 12 };
    expect(priceWords(cut, plan)).toBe(
      'You would hardly ever win this in that time. At your pace of 7 s a shot time is left for about 9 of 25 shots; with time enough you would win about 42 times in 100.',
    );
    expect(lengthSentence({ ...cut, inTime: { ...inTime, pace: pace(7, false) } }, plan)).toMatch(
      /^At a usual pace of 7 s/,
    );
  });

  it('on a clock that leaves time enough says no more than without one', () => {
    const length = { mean: 24.9, ninetieth: 25, most: 25 };
    const inTime = { enough: { chance: 0.42, length: { mean: 25, ninetieth: 25, most: 25 } }, pace: pace(3) };
    expect(lengthSentence(price({ length, inTime }), { family: 'racks', double: 'none', needed: 12 })).toBe(
      '25 shots on average, 25 at most.',
    );
  });
});

describe('the last moment by the rules', () => {
  it.each([
    ['NFHS', 'Under NFHS rules a catch and a shot need 0.4 s on the clock; with less only a tap can score.'],
    ['FIBA', 'Under FIBA rules a catch and a shot need 0.3 s on the clock; with less only a tap can score.'],
  ] as const)('%s', (rules, words) => {
    expect(lastShotSentence(rules)).toBe(words);
  });
});

it('every family has a place in the list', () => {
  expect(new Set(FAMILIES)).toEqual(new Set(CATALOGUE.map(({ plan }) => plan.family)));
});
