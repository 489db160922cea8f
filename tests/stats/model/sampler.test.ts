import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { present } from '../../../renderer/basics/invariant.ts';
import { designOf } from '../../../renderer/stats/model/design.ts';
import { fitDrop } from '../../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { referenceOf } from '../../../renderer/stats/model/reference.ts';
import { standardise } from '../../../renderer/stats/model/standardise.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';
import { sample } from './sampler.ts';

/** Two weeks, four sessions, 320 shots at two places: small enough for a slow sampler. */
const data = modelData(
  [
    ['2026-03-02', 9, 14, 6, 12],
    ['2026-03-05', 11, 17, 7, 13],
    ['2026-03-10', 8, 15, 7, 14],
    ['2026-03-13', 12, 16, 9, 11],
  ].flatMap(([date, a, b, c, d]) => [
    roundOf('relaxed', [three('top', Number(a), 20), freeThrows(Number(b), 20)], { date: String(date) }),
    roundOf('pressured', [three('top', Number(c), 20), freeThrows(Number(d), 20)], { date: String(date) }),
  ]),
);

describe('against an independent sampler', () => {
  it('agrees on drop, week and ratio within the sampler’s own error', () => {
    const { index } = fitDrop(data, { draws: 8000, seed: 1 });
    if (index.kind === 'none') throw new Error(index.reason);
    const design = designOf(data);
    const states: { shared: Float64Array; weeks: Float64Array }[] = [];
    sample(design, 20_000, rngFromSeed(7), (state) => {
      states.push({ shared: state.shared, weeks: state.weeks });
    });
    const once = new Uint32Array(states.length).fill(1);
    const reference = present(referenceOf(data, 'relaxed'), 'a mix');
    const drawn = { draws: states, counts: once, effective: null, missed: null };
    const { relaxed, pressured, draws, weeks } = standardise(data, design, drawn, reference);
    const drop = (draw: number, week: number): number =>
      100 * ((relaxed[week * draws + draw] ?? NaN) - (pressured[week * draws + draw] ?? NaN));
    const all = Array.from({ length: draws }, (_, draw) => (drop(draw, 0) + drop(draw, weeks - 1)) / weeks);
    const [mean, sd] = momentsOf(all);
    // 27,000 dependent draws are worth about 2,000: errors of 0.022 sd on the mean, 1.6 % on the sd, twice of them allowed.
    expect(Math.abs(index.overall.points - mean) / sd).toBeLessThan(0.06);
    expect(Math.abs(index.overall.sd / sd - 1)).toBeLessThan(0.04);
    expect(Math.abs(index.overall.probability - all.filter((one) => one > 0).length / draws)).toBeLessThan(
      0.02,
    );
    const [last, lastSd] = momentsOf(Array.from({ length: draws }, (_, draw) => drop(draw, weeks - 1)));
    expect(Math.abs((index.weeks[1]?.points ?? NaN) - last) / lastSd).toBeLessThan(0.06);
    expect(Math.abs((index.weeks[1]?.sd ?? NaN) / lastSd - 1)).toBeLessThan(0.04);
  });
});

function momentsOf(values: readonly number[]): [mean: number, sd: number] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return [mean, Math.sqrt(square)];
}
