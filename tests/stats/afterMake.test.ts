import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Entry, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { afterMake, type AfterMakeSplit } from '../../renderer/stats/afterMake.ts';
import { zFor } from '../../renderer/stats/proportion.ts';
import { READING_LEVEL } from '../../renderer/stats/reading.ts';
import { PRESSURE } from '../log/diary.ts';
import { freeThrows, roundOf } from './rounds.ts';

/** A round noted shot by shot: one word of makes (o), misses (x) and turns the clock took (–) for each stop. */
function shot(words: readonly string[], condition: Condition = 'relaxed'): Round {
  const entries = words.flatMap((word, stop) =>
    word
      .split('')
      .map((one): Entry =>
        one === '–'
          ? { kind: 'expired', id: '', at: 0, stop }
          : { kind: 'shot', id: '', at: 0, stop, made: one === 'o', side: null },
      ),
  );
  return {
    ...roundOf(
      condition,
      words.map((word) => freeThrows(0, word.length)),
    ),
    entry: 'each-shot',
    entries,
  };
}

function split(...words: readonly string[]): AfterMakeSplit {
  return present(afterMake([shot(words)]).relaxed, 'a split');
}

/** Every order of makes and misses. */
function allWords(n: number): string[] {
  return n === 0 ? [''] : allWords(n - 1).flatMap((word) => [`${word}o`, `${word}x`]);
}

const makesOf = (word: string): number => word.split('o').length - 1;

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The rates after a make and after a miss as they stand, in one word; NaN without such a shot. */
function rates(word: string): { afterMake: number; afterMiss: number } {
  // Beside a stretch that says something, so that there always is a split; it has 1 of 4 after a make, 2 of 3 after a miss.
  const { afterMake: made, afterMiss: missed } = split(word, 'ooxxoxox');
  return {
    afterMake: (made.makes - 1) / (made.attempts - 4),
    afterMiss: (missed.makes - 2) / (missed.attempts - 3),
  };
}

/*
 * Miller & Sanjurjo, Econometrica 86:2019-2047 (2018): the mean share of makes right after a make in n shots of which each
 * goes in with a chance of one half, where there is such a shot. 5/12 for three shots is theirs; the others computed by
 * enumeration.
 */
describe('the rate after a make as it stands, by enumeration', () => {
  it.each([
    [3, 5 / 12],
    [4, 17 / 42],
    [5, 49 / 120],
    [6, 129 / 310],
    [10, 4097 / 9198],
  ])('of %d shots is %d on average, though each goes in by one half', (n, mean) => {
    const made = allWords(n)
      .map((word) => rates(word).afterMake)
      .filter((rate) => !Number.isNaN(rate));
    expect(meanOf(made)).toBeCloseTo(mean, 12);
  });

  it.each([
    // Computed exactly from the same definition.
    [100, 0.5, 0.49495, 4000],
    [25, 0.7, 0.6875, 8000],
  ])('of %d shots at %d is %d on average, by simulation', (n, p, mean, rounds) => {
    const rng = rngFromSeed(n);
    const made = Array.from({ length: rounds }, () => rates(chain(n, p, 0, rng)).afterMake);
    const error = Math.sqrt(meanOf(made.map((rate) => (rate - mean) ** 2)) / rounds);
    expect(Math.abs(meanOf(made) - mean)).toBeLessThan(3 * error);
    // And that is clearly not p.
    expect(p - meanOf(made)).toBeGreaterThan(3 * error);
  });

  // Rinott & Bar-Hillel's difference, as quoted by Miller & Sanjurjo; from memory, and here by enumeration.
  it.each([4, 5, 6, 7])('of %d shots is 1/(n − 1) below the rate after a miss, however many go in', (n) => {
    for (let makes = 1; makes < n; makes += 1) {
      const both = allWords(n)
        .filter((word) => makesOf(word) === makes)
        .map(rates)
        .map(({ afterMake: made, afterMiss: missed }) => made - missed)
        .filter((one) => !Number.isNaN(one));
      expect(meanOf(both)).toBeCloseTo(-1 / (n - 1), 12);
    }
  });
});

describe('the corrected difference', () => {
  it('is 0 on average over all orders, with the spread its interval says', () => {
    const z = zFor(READING_LEVEL);
    const groups = new Map<string, AfterMakeSplit[]>();
    for (const word of [4, 5, 6, 8].flatMap(allWords)) {
      const one = afterMake([shot([word])]).relaxed;
      if (!one) continue;
      const alike = `${word.length} ${makesOf(word)} ${word.at(0)} ${word.at(-1)}`;
      groups.set(alike, [...(groups.get(alike) ?? []), one]);
    }
    expect(groups.size).toBeGreaterThan(30);
    for (const [name, splits] of groups) {
      expect(meanOf(splits.map(({ corrected }) => corrected)), name).toBeCloseTo(0, 9);
      const sds = new Set(splits.map(({ low, high }) => ((high - low) / 2 / z).toFixed(9)));
      expect(sds.size, name).toBe(1);
      const spread = Math.sqrt(meanOf(splits.map(({ corrected }) => corrected ** 2)));
      expect(Number([...sds][0]) / spread, name).toBeCloseTo(1, 8);
    }
  });

  it('is the same read backwards, and with makes and misses exchanged', () => {
    const words = fc.array(fc.string({ unit: fc.constantFrom('o', 'x'), minLength: 1, maxLength: 12 }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(words, (stops) => {
        const one = afterMake([shot(stops)]).relaxed;
        const back = afterMake([shot(stops.map((word) => word.split('').toReversed().join('')))]).relaxed;
        const turned = afterMake([
          shot(stops.map((word) => word.replaceAll(/./g, (made) => (made === 'o' ? 'x' : 'o')))),
        ]).relaxed;
        const near = ends(one).map((value) => expect.closeTo(value, 9) as unknown);
        expect(ends(back)).toEqual(near);
        expect(ends(turned)).toEqual(near);
      }),
    );
  });
});

/** Zeros where there is no split: no interval has no width. */
function ends(one: AfterMakeSplit | null): number[] {
  return one ? [one.low, one.corrected, one.high] : [0, 0, 0];
}

/** n shots; the chance is p on average, and by `more` higher after a make than after a miss. */
function chain(n: number, p: number, more: number, rng: Rng): string {
  let before = rng.chance(p);
  let word = before ? 'o' : 'x';
  for (let at = 1; at < n; at += 1) {
    before = rng.chance(p + more * ((before ? 1 : 0) - p));
    word += before ? 'o' : 'x';
  }
  return word;
}

/*
 * Shooters with easy and hard spots, 0.75 and 0.4, and good and bad days of 0.08, of whom the truth is known. 400 shots each.
 */
describe('simulated shooters', () => {
  function simulate(n: number, more: number) {
    const rng = rngFromSeed(1000 * n + 100 * more);
    const shooters = 700;
    const splits = Array.from({ length: shooters }, () =>
      split(
        ...Array.from({ length: 400 / n }, (_, stop) =>
          chain(n, (stop % 2 === 0 ? 0.75 : 0.4) + 0.08 * (rng.chance(0.5) ? 1 : -1), more, rng),
        ),
      ),
    );
    const bias = meanOf(splits.map(({ corrected }) => corrected - 100 * more));
    const error = Math.sqrt(
      meanOf(splits.map(({ corrected }) => (corrected - 100 * more - bias) ** 2)) / shooters,
    );
    const held = splits.filter(({ low, high }) => low <= 100 * more && 100 * more <= high).length;
    return { bias, error, cover: held / shooters, naive: meanOf(splits.map(({ points }) => points)) };
  }

  it.each([5, 10, 25, 50])('finds nothing where nothing is, in stretches of %d', (n) => {
    const { bias, error, cover } = simulate(n, 0);
    expect(Math.abs(bias)).toBeLessThan(3 * error);
    // Three standard errors of a share of 700 at 90 %.
    expect(Math.abs(cover - 0.9)).toBeLessThan(0.034);
  });

  it.each([
    [5, 0.1],
    [25, 0.1],
    [5, -0.1],
    [25, -0.1],
  ])('finds what is there, in stretches of %d', (n, more) => {
    const { bias, error, cover } = simulate(n, more);
    // To first order, so up to one point of ten may be missing.
    expect(Math.abs(bias)).toBeLessThan(1 + 3 * error);
    expect(Math.abs(cover - 0.9)).toBeLessThan(0.05);
  });

  it('is needed: as they stand, long stretches look hot where nothing is, since spots differ', () => {
    expect(simulate(50, 0).naive).toBeGreaterThan(5);
  });
});

describe('which shots count', () => {
  it('keeps relaxed and pressured apart, and counts rounds that say something', () => {
    const { relaxed, pressured } = afterMake([
      shot(['oxxoo', 'oooo']),
      shot(['ooxxx'], 'pressured'),
      shot(['xxxxx'], 'pressured'),
      shot(['oxoxo'], 'pressured'),
    ]);
    expect(relaxed).toMatchObject({
      afterMake: { makes: 4, attempts: 5 },
      afterMiss: { makes: 1, attempts: 2 },
      points: expect.closeTo(30, 9),
      rounds: 1,
    });
    expect(pressured).toMatchObject({ rounds: 2, afterMake: { makes: 1, attempts: 4 } });
  });

  it('goes from no stop to the next: an easy spot is no hot hand', () => {
    expect(afterMake([shot(['oooo', 'xxxx'])]).relaxed).toBeNull();
  });

  it('leaves out counts and stops that were not shot out; a turn the clock took is no shot', () => {
    const whole = shot(['ooxx']);
    const left = { ...whole, stops: [freeThrows(0, 5)] };
    expect(afterMake([left, roundOf('relaxed', [freeThrows(5, 10)])])).toEqual({
      relaxed: null,
      pressured: null,
    });
    // Back at the same stop: two stretches, not one.
    const { stops, entries } = shot(['oo', 'xx']);
    const round = { ...shot(['oo', 'xx']), stops, entries: [...entries, ...entries] };
    expect(afterMake([round]).relaxed).toBeNull();
    expect(split('oo–xx')).toEqual(split('ooxx'));
    expect(split('oo–xx').afterMiss).toEqual({ makes: 0, attempts: 1 });
  });

  it('leaves out games that end with the shots themselves', () => {
    const playing = (plan: GamePlan): Round => ({
      ...shot(['oxxoo'], 'pressured'),
      pressure: { ...PRESSURE, mark: null, game: { name: '', plan, chance: null } },
    });
    expect(afterMake([playing({ family: 'streak', row: 3, most: 5 })]).pressured).toBeNull();
    expect(afterMake([playing({ family: 'lives', needed: 3, lives: 5 })]).pressured).toBeNull();
    expect(afterMake([playing({ family: 'racks', double: 'none', needed: 3 })]).pressured).not.toBeNull();
  });

  it('says nothing of three shots, or of none', () => {
    expect(afterMake([shot(['oxo', 'oxx'])]).relaxed).toBeNull();
    expect(afterMake([])).toEqual({ relaxed: null, pressured: null });
  });

  it('is the same to the last digit whatever order the rounds come in', () => {
    const rng = rngFromSeed(12);
    const rounds = Array.from({ length: 60 }, (_, at) => ({
      ...shot([chain(5 + (at % 7), 0.45, 0.3, rng)]),
      id: `round ${at}`,
    }));
    expect(afterMake(rounds.toReversed())).toEqual(afterMake(rounds));
  });
});
