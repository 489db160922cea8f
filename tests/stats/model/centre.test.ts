import { describe, expect, it } from 'vitest';

import { addDays } from '../../../renderer/basics/days.ts';
import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { present } from '../../../renderer/basics/invariant.ts';
import { at } from '../../../renderer/stats/matrix.ts';
import { centred, centreShift } from '../../../renderer/stats/model/centre.ts';
import { designOf } from '../../../renderer/stats/model/design.ts';
import { drawStates } from '../../../renderer/stats/model/draws.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { fitterOf } from '../../../renderer/stats/model/newton.ts';
import { gaussHermite } from '../../../renderer/stats/quadrature.ts';
import { expit } from '../../../renderer/stats/special.ts';
import { PLAIN, play } from '../../bench/modelWorld.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

describe('the middle of the posterior', () => {
  it('is the exact mean, by quadrature: 1 of 12 from one spot', () => {
    const data = modelData([roundOf('relaxed', [three('top', 1, 12)])]);
    const design = designOf(data, { warmTired: false, knots: false, trendWeeks: null, ingredients: false });
    const spreads = { skill: 0.1, day: 0.4, week: 0.1, dayPressure: 0.1 };
    const mode = fitterOf(design).fit(spreads, undefined, 1e-10);
    const level = design.columns.findIndex(({ term }) => term.term === 'level');
    const top = at(mode.state.shared, level);
    const shift = at(centreShift(design, mode, 4000, rngFromSeed(1)).shared, level);
    // The log-odds of these shots are one sum of level, spot, kind, week and day; the level has a fixed share of it.
    const variance = 1.5 ** 2 + 0.6 ** 2 + 0.3 ** 2 + 0.1 ** 2 + 0.4 ** 2;
    let [mass, first] = [0, 0];
    const { nodes, weights } = gaussHermite(64);
    for (const [i, node] of nodes.entries()) {
      const eta = Math.sqrt(variance) * node;
      const likely = at(weights, i) * expit(eta) * expit(-eta) ** 11;
      mass += likely;
      first += likely * eta;
    }
    const exact = ((1.5 ** 2 / variance) * first) / mass;
    expect(top - exact).toBeGreaterThan(0.12);
    expect(Math.abs(top + shift - exact)).toBeLessThan(0.015);
  });

  it('is where weighed draws have their mean, with days and weeks', () => {
    // A shooter far from 50 %, whose posterior leans.
    const rounds = [0, 1, 0, 0, 1, 0].flatMap((makes, week) => {
      const date = addDays('2026-03-02', 7 * week);
      return [
        roundOf('relaxed', [three('top', 2 + makes, 15), freeThrows(2, 10)], { date }),
        roundOf('pressured', [three('top', makes, 15), freeThrows(0, 10)], { date }),
      ];
    });
    const design = designOf(modelData(rounds));
    const spreads = { skill: 0.07, day: 0.25, week: 0.12, dayPressure: 0.1 };
    const mode = fitterOf(design).fit(spreads, undefined, 1e-9);
    const { draws, counts } = drawStates(design, [{ mode, weight: 1 }], 40_000, rngFromSeed(2));
    const { shared } = centreShift(design, mode, 400, rngFromSeed(3));
    const wayOf = (name: 'level' | 'pressure'): { exact: number; gone: number } => {
      const column = design.columns.findIndex(({ term }) => term.term === name);
      const mean = draws.reduce((sum, draw, i) => sum + at(counts, i) * at(draw.shared, column), 0) / 40_000;
      return { exact: mean - at(mode.state.shared, column), gone: at(shared, column) };
    };
    const level = wayOf('level');
    expect(level.exact).toBeLessThan(-0.04);
    expect(Math.abs(level.gone - level.exact)).toBeLessThan(0.006);
    const pressure = wayOf('pressure');
    expect(pressure.exact).toBeLessThan(-0.008);
    expect(Math.abs(pressure.gone - pressure.exact)).toBeLessThan(0.004);
  });

  it('moves every fit the same way, and not its spread', () => {
    const { rounds } = play({ ...PLAIN, weeks: 6, pressure: () => -0.5 }, rngFromSeed(5));
    const design = designOf(modelData(rounds));
    const fitter = fitterOf(design);
    const nodes = [0.1, 0.2].map((day) => ({
      mode: fitter.fit({ skill: 0.07, day, week: 0.12, dayPressure: 0.1 }),
      weight: 0.5,
    }));
    const mean = { skill: 0.07, day: 0.15, week: 0.12, dayPressure: 0.1 };
    const moved = centred(design, fitter, { nodes, mean }, rngFromSeed(1));
    const pressure = design.columns.findIndex(({ term }) => term.term === 'pressure');
    const ways = nodes.map(({ mode }, i) => {
      const to = present(moved[i], 'a fit for every fit');
      expect(to.weight).toBe(0.5);
      expect(to.mode.factors).toBe(mode.factors);
      return at(to.mode.state.shared, pressure) - at(mode.state.shared, pressure);
    });
    // More pressure effect than at the top: rates under pressure are below a half.
    expect(ways[0]).toBeLessThan(-0.0005);
    expect(ways[1]).toBeCloseTo(ways[0] ?? NaN, 12);
  });
});
