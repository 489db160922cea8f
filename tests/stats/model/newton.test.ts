import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { at, cholesky, inverseOf, logDeterminant } from '../../../renderer/stats/matrix.ts';
import { designOf } from '../../../renderer/stats/model/design.ts';
import { drawStates } from '../../../renderer/stats/model/draws.ts';
import { logJoint } from '../../../renderer/stats/model/logJoint.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { fitterOf } from '../../../renderer/stats/model/newton.ts';
import type { Spreads } from '../../../renderer/stats/model/priors.ts';
import { PLAIN, play } from '../../bench/modelWorld.ts';
import { denseHessian, densePrior, denseRows, flat, unflat } from './dense.ts';

const SPREADS: Spreads = { skill: 0.07, day: 0.25, week: 0.12, dayPressure: 0.1 };

/** Three weeks with the trend, knots and everything else on. */
function threeWeeks() {
  const { rounds } = play({ ...PLAIN, weeks: 3, singly: true, pressure: () => -0.4 }, rngFromSeed(3));
  return designOf(modelData(rounds), { trendWeeks: 1 });
}

describe('Newton with days and weeks eliminated', () => {
  const design = threeWeeks();
  const mode = fitterOf(design).fit(SPREADS, undefined, 1e-9);

  it('uses every part of the model', () => {
    const terms = new Set(design.columns.map(({ term }) => term.term));
    for (const term of ['spot', 'kind', 'order', 'dose', 'spot-pressure', 'level', 'pressure', 'trend']) {
      expect(terms).toContain(term);
    }
    expect(design.columns.filter(({ term }) => term.term === 'trend')).toHaveLength(2);
  });

  it('stops where the log joint density is flat, by finite differences', () => {
    const values = flat(mode.state);
    for (const i of values.keys()) {
      const beside = (by: number): number => {
        const moved = values.slice();
        moved[i] = at(moved, i) + by;
        return logJoint(design, SPREADS, unflat(design, moved));
      };
      const step = 1e-4;
      expect(Math.abs((beside(step) - beside(-step)) / (2 * step))).toBeLessThan(1e-4);
    }
  });

  it('stops where the dense gradient is 0: 2.7e-12 at most in the study, in another record', () => {
    const values = flat(mode.state);
    const prior = densePrior(design, SPREADS);
    const off = values.map((value, i) => value - (design.columns[i]?.prior.mean ?? 0));
    const gradient = off.map(
      (_, i) => -off.reduce((sum, value, j) => sum + at(prior.values, i * prior.size + j) * value, 0),
    );
    for (const [cell, row] of denseRows(design).entries()) {
      const eta = row.reduce((sum, value, i) => sum + value * at(values, i), 0);
      const residual = at(design.makes, cell) - at(design.attempts, cell) / (1 + Math.exp(-eta));
      for (const [i, value] of row.entries()) gradient[i] = at(gradient, i) + value * residual;
    }
    expect(Math.max(...gradient.map(Math.abs))).toBeLessThan(1e-10);
  });

  it('has the dense log-determinant and objective', () => {
    const hessian = cholesky(denseHessian(design, SPREADS, mode.state));
    // 1.4e-13 apart in the study.
    expect(mode.logDeterminant).toBeCloseTo(logDeterminant(hessian), 11);
    expect(mode.objective).toBeCloseTo(logJoint(design, SPREADS, mode.state), 9);
    const prior = logDeterminant(cholesky(densePrior(design, SPREADS)));
    expect(mode.logEvidence).toBeCloseTo(
      logJoint(design, SPREADS, mode.state) + prior / 2 - logDeterminant(hessian) / 2,
      9,
    );
  });

  it('has the dense standard errors', () => {
    const block = inverseOf(mode.factors.shared);
    const dense = inverseOf(cholesky(denseHessian(design, SPREADS, mode.state)));
    for (const i of design.columns.keys()) {
      const expected = Math.sqrt(at(dense.values, i * dense.size + i));
      expect(Math.sqrt(at(block.values, i * block.size + i)) / expected).toBeCloseTo(1, 12);
    }
  });

  it('has a dense Hessian that finite differences of the log joint density confirm', () => {
    const dense = denseHessian(design, SPREADS, mode.state);
    const values = flat(mode.state);
    const step = 1e-3;
    const beside = (i: number, by: number, j: number, byJ: number): number => {
      const moved = values.slice();
      moved[i] = at(moved, i) + by;
      moved[j] = at(moved, j) + byJ;
      return logJoint(design, SPREADS, unflat(design, moved));
    };
    for (const i of [0, 9, 12, 20, design.base, design.base + 2, design.columns.length + 3, dense.size - 1]) {
      for (const j of [5, design.base + 1, design.columns.length + 2, dense.size - 2]) {
        const second =
          (beside(i, step, j, step) -
            beside(i, step, j, -step) -
            beside(i, -step, j, step) +
            beside(i, -step, j, -step)) /
          (4 * step * step);
        expect(-second).toBeCloseTo(at(dense.values, i * dense.size + j), 2);
      }
    }
  });

  it('draws with the dense covariance', () => {
    const dense = inverseOf(cholesky(denseHessian(design, SPREADS, mode.state)));
    const few = { ...design, sessions: { ...design.sessions } };
    const count = 40_000;
    const { draws, counts } = drawStates(few, [{ mode, weight: 1 }], count, rngFromSeed(1));
    expect(draws).toHaveLength(count);
    expect(counts.reduce((sum, one) => sum + one, 0)).toBe(count);
    const size = design.columns.length;
    // The draws before weighing: a shared unknown, a week, and how they move together.
    const pressure = design.base + 1;
    const centre = at(mode.state.shared, pressure);
    const week = at(mode.state.weeks, 3);
    let [ss, sw, ww] = [0, 0, 0];
    for (const draw of draws) {
      const s = at(draw.shared, pressure) - centre;
      const w = at(draw.weeks, 3) - week;
      ss += s * s;
      sw += s * w;
      ww += w * w;
    }
    const of = (i: number, j: number): number => at(dense.values, i * dense.size + j);
    expect(ss / count / of(pressure, pressure)).toBeCloseTo(1, 1);
    expect(ww / count / of(size + 3, size + 3)).toBeCloseTo(1, 1);
    const scale = Math.sqrt(of(pressure, pressure) * of(size + 3, size + 3));
    expect((sw / count - of(pressure, size + 3)) / scale).toBeCloseTo(0, 1);
  });
});
