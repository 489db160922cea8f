import { describe, expect, it } from 'vitest';

import { gaussHermite } from '../../../renderer/stats/quadrature.ts';
import { expit } from '../../../renderer/stats/special.ts';
import type { ChokeIndex } from '../../../renderer/stats/model/chokeIndex.ts';
import { designOf, type DesignOptions } from '../../../renderer/stats/model/design.ts';
import { fitDrop, type FitOptions } from '../../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { fitterOf } from '../../../renderer/stats/model/newton.ts';
import { roundOf, three } from '../rounds.ts';

/*
 * The smallest case: one session, top of the key, 15 of 25 relaxed and 10 of 25 pressured, order and trend switched off.
 * Mode and evidence were found by an independent prototype of the model; the posterior is worked here by quadrature.
 */

const PLAIN: Partial<DesignOptions> = {
  warmTired: false,
  knots: false,
  trendWeeks: null,
  ingredients: false,
};
const SPREADS = { skill: 0.08, day: 0.25, week: 0.15, dayPressure: 0.15 };
const data = modelData([
  roundOf('relaxed', [three('top', 15, 25)]),
  roundOf('pressured', [three('top', 10, 25)]),
]);

function indexOf(options: FitOptions): ChokeIndex {
  const { index } = fitDrop(data, options);
  if (index.kind === 'none') throw new Error(index.reason);
  return index;
}

describe('the smallest case', () => {
  it('has the known mode and evidence', () => {
    const design = designOf(data, PLAIN);
    const { state, logEvidence } = fitterOf(design).fit(SPREADS, undefined, 1e-10);
    const known = {
      level: 0.113394,
      spot: 0.018143,
      kind: 0.004536,
      pressure: -0.19341,
      'spot-pressure': -0.022736,
    };
    for (const [name, value] of Object.entries(known)) {
      const column = design.columns.findIndex(({ term }) => term.term === name);
      expect(state.shared[column], name).toBeCloseTo(value, 6);
    }
    expect([...state.weeks, ...state.days].map((value) => Math.round(1e6 * value))).toEqual([
      323, -35_524, 3150, -35_524,
    ]);
    expect(logEvidence).toBeCloseTo(-36.311479, 6);
  });

  it('has the exact posterior, by quadrature over all four unknowns', () => {
    const exact = byQuadrature();
    expect(exact.mean).toBeCloseTo(0.0609, 4);
    expect(exact.sd).toBeCloseTo(0.0791, 4);
    expect(exact.above).toBeCloseTo(0.779, 2);
    const { overall } = indexOf({ design: PLAIN, hyper: SPREADS, draws: 40_000, seed: 1 });
    expect(Math.abs(overall.points / 100 - exact.mean)).toBeLessThan(0.001);
    expect(Math.abs(overall.sd / 100 - exact.sd)).toBeLessThan(0.001);
    expect(overall.probability).toBeCloseTo(exact.above, 2);
  });

  it('leans on its prior, as it must with 50 shots', () => {
    // Drop in points and P(drop > 0) from the prototype, spreads integrated.
    for (const [pressureSd, points, probability] of [
      [0.2, 3.6, 0.72],
      [0.35, 6.2, 0.78],
      [0.7, 11.8, 0.86],
    ] as const) {
      const { overall } = indexOf({ design: { ...PLAIN, pressureSd }, draws: 10_000, seed: 2 });
      expect(Math.abs(overall.points - points)).toBeLessThan(0.3);
      expect(Math.abs(overall.probability - probability)).toBeLessThan(0.015);
    }
  });
});

/**
 * Skill L ~ N(0, 1.5² + 0.6² + 0.3² + 0.08²) with the day's b on top, answer A ~ N(0, 0.35² + 0.12² + 0.15²) with the
 * day's c on top. The likelihood knows only L + b and A + c; given these, L and A are normal.
 */
function byQuadrature(): { mean: number; sd: number; above: number } {
  const skill = 1.5 ** 2 + 0.6 ** 2 + 0.3 ** 2 + 0.08 ** 2;
  const answer = 0.35 ** 2 + 0.12 ** 2 + 0.15 ** 2;
  const [b, c] = [0.25 ** 2, 0.15 ** 2];
  const inner = gaussHermite(9);
  const steps = 90;
  let [mass, first, second, above] = [0, 0, 0, 0];
  for (let i = -steps; i <= steps; i += 1) {
    const level = 0.4 + (1.6 * i) / steps;
    for (let j = -steps; j <= steps; j += 1) {
      const press = (2.6 * j) / steps;
      const eta = level + press;
      const log =
        15 * level -
        25 * Math.log1p(Math.exp(level)) +
        10 * eta -
        25 * Math.log1p(Math.exp(eta)) -
        level ** 2 / (2 * (skill + b)) -
        press ** 2 / (2 * (answer + c));
      const weight = Math.exp(log + 34);
      // L given L + b, and A given A + c.
      const [l, lSd] = [(level * skill) / (skill + b), Math.sqrt((skill * b) / (skill + b))];
      const [a, aSd] = [(press * answer) / (answer + c), Math.sqrt((answer * c) / (answer + c))];
      for (const [m, z] of inner.nodes.entries()) {
        for (const [n, y] of inner.nodes.entries()) {
          const share = weight * (inner.weights[m] ?? NaN) * (inner.weights[n] ?? NaN);
          const calm = l + lSd * z;
          const change = a + aSd * y;
          const drop = expit(calm) - expit(calm + change);
          mass += share;
          first += share * drop;
          second += share * drop * drop;
        }
      }
      // A is below 0 with a chance known exactly.
      above += weight * normalBelow(-a / aSd);
    }
  }
  const mean = first / mass;
  return { mean, sd: Math.sqrt(second / mass - mean ** 2), above: above / mass };
}

/** Φ by the midpoint rule over the density, good to 1e-6. */
function normalBelow(x: number): number {
  const steps = 400;
  const width = (Math.max(x, -8) + 8) / steps;
  let sum = 0;
  for (let k = 0; k < steps; k += 1) sum += Math.exp(-((-8 + (k + 0.5) * width) ** 2) / 2);
  return (sum * width) / Math.sqrt(2 * Math.PI);
}
