import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../../renderer/basics/chance.ts';
import { addDays } from '../../../renderer/basics/days.ts';
import type { Round } from '../../../renderer/log/book.ts';
import type { Condition } from '../../../renderer/log/events.ts';
import type { Ingredient } from '../../../renderer/pressure/ingredients.ts';
import type { ChokeIndex } from '../../../renderer/stats/model/chokeIndex.ts';
import { sharesOfMost } from '../../../renderer/stats/model/dearest.ts';
import { fitDrop } from '../../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { SURE_ENOUGH } from '../../../renderer/store/fixedNumbers.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

describe('the chance of being the largest', () => {
  it('is the share of the draws in which a row is', () => {
    const rows = [Float64Array.of(1, 5, 2, 0), Float64Array.of(3, 4, 1, -1), Float64Array.of(2, 6, 0, -2)];
    expect(sharesOfMost(rows)).toEqual([0.5, 0.25, 0.25]);
  });
  it('is shared by rows that are the largest together, so that neither is named for standing first', () => {
    const same = Float64Array.of(1, 2, 3);
    expect(sharesOfMost([same, same])).toEqual([0.5, 0.5]);
    const [first, second, third] = sharesOfMost([
      Float64Array.of(4, 0),
      Float64Array.of(4, 0),
      Float64Array.of(1, 9),
    ]);
    expect([first, second, third]).toEqual([0.25, 0.25, 0.5]);
  });
  it('is 1 for a row alone, and of no row there is none', () => {
    expect(sharesOfMost([Float64Array.of(-1, -2)])).toEqual([1]);
    expect(sharesOfMost([])).toEqual([]);
  });
});

/** Make rates of threes, mid-range and free throws. */
const RATES = { threes: 0.4, midRange: 0.5, line: 0.75 };
const SESSIONS = 24;
const RECORDS = 60;

function made(shots: number, rate: number, rng: Rng): number {
  return Array.from({ length: shots }, () => rng.chance(rate)).filter(Boolean).length;
}

/** 24 sessions of two relaxed rounds and a pressured one; pressure costs `lost` from every place, or from each its own. */
function record(rng: Rng, lost: number | typeof RATES, ingredients: readonly Ingredient[] = []): Round[] {
  return Array.from({ length: SESSIONS }, (_, session) => {
    const date = addDays('2026-01-05', 2 * session);
    const round = (condition: Condition, first: number): Round => {
      const calm = condition === 'relaxed';
      const less = (place: keyof typeof RATES): number =>
        calm ? 0 : typeof lost === 'number' ? lost : lost[place];
      const cells = [
        three('top', made(10, RATES.threes - less('threes'), rng), 10),
        three('left-elbow', made(8, RATES.midRange - less('midRange'), rng), 8),
        freeThrows(made(10, RATES.line - less('line'), rng), 10),
      ];
      const plain = {
        ...roundOf(condition, cells, { date }),
        id: `${date} ${first}`,
        first,
        startedAt: first,
      };
      if (condition === 'relaxed' || ingredients.length === 0) return plain;
      return { ...plain, pressure: { ...PLAIN, ingredients: ingredients.filter(() => rng.chance(0.5)) } };
    };
    const tense = rng.below(3);
    return [0, 1, 2].map((place) => round(place === tense ? 'pressured' : 'relaxed', 28 * place));
  }).flat();
}

const PLAIN = { stake: null, mark: null, clock: null, crowd: false, showChance: false, seed: 1 };

function indexOf(rounds: readonly Round[]): ChokeIndex {
  const { index } = fitDrop(modelData(rounds));
  if (index.kind === 'none') throw new Error(index.reason);
  return index;
}

/** Share of records in which something is named that costs most. */
function namedIn(records: readonly (readonly { readonly dearest: number }[])[]): number {
  return (
    records.filter((parts) => parts.some(({ dearest }) => dearest > SURE_ENOUGH)).length / records.length
  );
}

const seeds = Array.from({ length: RECORDS }, (_, seed) => seed);

describe('what costs most, where everything costs alike', () => {
  it.each([0, 0.08])('is seldom a place: %d lost from each', (lost) => {
    const groups = seeds.map((seed) => indexOf(record(rngFromSeed(400 + seed), lost)).groups);
    expect(groups.every((parts) => parts.length === 3)).toBe(true);
    expect(namedIn(groups)).toBeLessThan(0.1);
  });

  it('is seldom an ingredient', () => {
    const parts = seeds.map(
      (seed) => indexOf(record(rngFromSeed(800 + seed), 0.08, ['clock', 'crowd', 'watchers'])).ingredients,
    );
    expect(parts.every((own) => own.length === 3)).toBe(true);
    expect(namedIn(parts)).toBeLessThan(0.1);
  });
});

describe('what costs most', () => {
  it('is named where it is so, and no other place is', () => {
    const line = { threes: 0, midRange: 0, line: 0.3 };
    const groups = seeds.slice(0, 15).map((seed) => indexOf(record(rngFromSeed(900 + seed), line)).groups);
    expect(namedIn(groups)).toBeGreaterThan(0.6);
    for (const parts of groups) {
      expect(parts.find(({ dearest }) => dearest > SURE_ENOUGH)?.group ?? 'free-throws').toBe('free-throws');
    }
  });

  it('of one place or ingredient is that one, with nothing to be compared with', () => {
    const rounds = record(rngFromSeed(1), 0, ['crowd']).map((round) => ({
      ...round,
      entries: round.entries.slice(0, 1),
    }));
    const { groups, ingredients } = indexOf(rounds);
    expect(groups).toMatchObject([{ group: 'threes', dearest: 1 }]);
    expect(ingredients).toMatchObject([{ ingredient: 'crowd', dearest: 1 }]);
  });
});
