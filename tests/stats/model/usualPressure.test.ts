import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { addDays } from '../../../renderer/basics/days.ts';
import { present } from '../../../renderer/basics/invariant.ts';
import type { Round } from '../../../renderer/log/book.ts';
import { INGREDIENTS, type Ingredient, type UsualPressure } from '../../../renderer/pressure/ingredients.ts';
import { at } from '../../../renderer/stats/matrix.ts';
import type { ChokeIndex } from '../../../renderer/stats/model/chokeIndex.ts';
import { type Column, designOf } from '../../../renderer/stats/model/design.ts';
import { fitDrop } from '../../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { referenceOf } from '../../../renderer/stats/model/reference.ts';
import { type Posterior, standardise } from '../../../renderer/stats/model/standardise.ts';
import { stepsOfDose, usualPressure } from '../../../renderer/stats/model/usualPressure.ts';
import { expit } from '../../../renderer/stats/special.ts';
import { freeThrows, roundOf } from '../rounds.ts';

/** A pressured round of free throws; `null` = nobody noted what was on. */
function pressured(on: readonly Ingredient[] | null, makes: number, attempts: number, date: string): Round {
  const round = roundOf('pressured', [freeThrows(makes, attempts)], { date });
  const setup = { stake: null, mark: null, clock: null, crowd: false, showChance: true, seed: 1 };
  return { ...round, pressure: on && { ...setup, ingredients: on } };
}

const relaxed = (makes: number, attempts: number, date: string): Round =>
  roundOf('relaxed', [freeThrows(makes, attempts)], { date });

describe('pressure as it is usually met', () => {
  const data = modelData([
    relaxed(7, 10, '2026-03-02'),
    pressured(['clock'], 5, 30, '2026-03-03'),
    pressured(['clock', 'crowd', 'stake'], 5, 10, '2026-03-04'),
    pressured(null, 5, 20, '2026-03-05'),
  ]);

  it('is the mean level of the pressured shots, a half where it was not noted', () => {
    expect(usualPressure(data).dose).toBeCloseTo((30 * 0.2 + 10 * 0.6 + 20 * 0.5) / 60, 12);
  });
  it('has the share of each ingredient among shots of which it is known', () => {
    expect(usualPressure(data).ingredients).toEqual({ clock: 1, crowd: 0.25, stake: 0.25 });
  });
  it('without a pressured shot is in the middle', () => {
    expect(usualPressure(modelData([relaxed(1, 2, '2026-03-02')]))).toEqual({ dose: 0.5, ingredients: {} });
  });
});

describe('one ingredient more', () => {
  const steps = (on: readonly Ingredient[]): number[] =>
    stepsOfDose(modelData([relaxed(5, 10, '2026-03-02'), pressured(on, 5, 10, '2026-03-02')]));

  it('raises the level by one of five', () => {
    expect(steps(['clock', 'crowd'])).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.2, 12)]);
  });
  it('raises it no further than to the fifth', () => {
    expect(steps(INGREDIENTS.slice(0, 5))).toEqual(Array(5).fill(expect.closeTo(0.2, 12)));
    expect(steps(INGREDIENTS.slice(0, 6))).toEqual(Array(6).fill(0));
  });
  it('is counted over the shots', () => {
    const data = modelData([
      pressured(['clock'], 5, 10, '2026-03-02'),
      pressured(INGREDIENTS.slice(0, 6), 5, 30, '2026-03-03'),
    ]);
    expect(stepsOfDose(data)).toEqual(Array(6).fill(expect.closeTo(0.05, 12)));
  });
});

/** A shooter of whom everything is known: log-odds of 0 but for the columns of these terms. */
function known(
  rounds: readonly Round[],
  value: (column: Column) => number,
  pressure?: UsualPressure,
): Posterior {
  const data = modelData(rounds);
  const reference = present(referenceOf(data, 'relaxed', pressure), 'a mix');
  const design = designOf(data, {}, reference.pressure);
  const truth = {
    shared: Float64Array.from(design.columns, value),
    weeks: new Float64Array(2 * design.weeks),
    days: new Float64Array(2 * design.sessions.count),
  };
  const drawn = { draws: [truth], counts: Uint32Array.of(1), effective: null, missed: null };
  return standardise(data, design, drawn, reference);
}

describe('the drop of a known shooter', () => {
  const rounds = [
    relaxed(5, 10, '2026-03-02'),
    pressured(['clock'], 5, 10, '2026-03-02'),
    pressured(['clock', 'crowd', 'stake'], 5, 30, '2026-03-02'),
  ];
  const byDose = ({ term }: Column): number => (term.term === 'dose' ? -1 : 0);
  const byCrowd = ({ term }: Column): number =>
    term.term === 'ingredient' && term.ingredient === 'crowd' ? -1 : 0;

  it('is asked at the mean level of the pressured shots', () => {
    const { relaxed: calm, pressured: tense } = known(rounds, byDose);
    expect(at(calm, 0)).toBeCloseTo(0.5, 12);
    // (10 · 0.2 + 30 · 0.6) / 40 = 0.5, and one step above.
    expect(at(tense, 0)).toBeCloseTo(0.5, 12);
    const higher = known([...rounds.slice(0, 1), ...rounds.slice(2)], byDose);
    expect(at(higher.pressured, 0)).toBeCloseTo(expit(-0.1), 12);
  });
  it('is asked at the level that was kept, where one was', () => {
    const { pressured: tense } = known(rounds, byDose, { dose: 0.9, ingredients: {} });
    expect(at(tense, 0)).toBeCloseTo(expit(-0.4), 12);
  });
  it('has each ingredient cost its own effect and one step of the level', () => {
    const both = (column: Column): number => byDose(column) + byCrowd(column);
    const { ingredientCost } = known(rounds, both);
    // Crowd is the second of three, on in three shots of four; one more of five is a step of 0.2.
    const lost = 1 + 0.2;
    expect(at(ingredientCost, 1)).toBeCloseTo(expit(0.75 * lost) - expit(-0.25 * lost), 12);
  });
});

/** Twelve weeks; from the seventh on level 5 in place of level 1, which costs five times as much. */
function raised(seed: number): Round[] {
  const rng = rngFromSeed(seed);
  const shoot = (shots: number, rate: number): number =>
    Array.from({ length: shots }, () => rng.chance(rate)).filter(Boolean).length;
  return Array.from({ length: 36 }, (_, session) => {
    const date = addDays('2026-01-05', Math.floor((7 * session) / 3));
    const high = session >= 18;
    return [
      relaxed(shoot(50, 0.7), 50, date),
      pressured(high ? INGREDIENTS.slice(0, 5) : ['clock'], shoot(50, high ? 0.45 : 0.65), 50, date),
    ];
  }).flat();
}

describe('a shooter who raises the pressure', () => {
  const indexOf = (rounds: readonly Round[], pressure?: UsualPressure): ChokeIndex => {
    const { index } = fitDrop(modelData(rounds), pressure ? { pressure } : {});
    if (index.kind === 'none') throw new Error(index.reason);
    return index;
  };
  const records = [1, 2, 3].map(raised);
  const first = ({ weeks }: ChokeIndex): number => present(weeks[0], 'a week').points;

  it('keeps the drop of the first week about where it was, once the pressure is kept', () => {
    let [moved, kept] = [0, 0];
    for (const rounds of records) {
      const before = indexOf(rounds.slice(0, 36));
      moved += first(indexOf(rounds)) - first(before);
      kept += first(indexOf(rounds, before.usual)) - first(before);
    }
    expect(moved / 3).toBeGreaterThan(2);
    expect(Math.abs(kept)).toBeLessThan(Math.abs(moved) / 2);
  });

  it('has the index tell the pressure of the whole record, whatever it was asked under', () => {
    const [rounds] = records;
    const usual = usualPressure(modelData(rounds ?? []));
    expect(usual.dose).toBeCloseTo(0.6, 12);
    const plain = indexOf(rounds ?? []);
    expect(plain.usual).toEqual(usual);
    expect(indexOf(rounds ?? [], usual)).toEqual(plain);
    expect(indexOf(rounds ?? [], { dose: 0.2, ingredients: { clock: 1 } }).usual).toEqual(usual);
  });
});
