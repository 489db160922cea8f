import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { fitRounds, type RandomRounds, type RoundShots } from '../../renderer/stats/leverageFit.ts';
import { at } from '../../renderer/stats/matrix.ts';
import { expit, normalDensity } from '../../renderer/stats/special.ts';
import lme4 from '../fixtures/stats/leverage.json' with { type: 'json' };

const FLAT = 1000;

const lme4Rounds: RandomRounds = {
  priorSds: [FLAT, FLAT],
  rounds: lme4.rounds.map(({ leverage, offset, made }): RoundShots => ({
    columns: leverage.map((one) => Float64Array.of(1, one)),
    offsets: Float64Array.from(offset),
    made: Uint8Array.from(made),
  })),
};

// R's lme4, 40 rounds, by tests/fixtures/stats/leverage.R.
describe('against lme4', () => {
  const fit = fitRounds(lme4Rounds, lme4.roundSd, 25);

  it('finds the same estimates and standard errors', () => {
    for (const [i, wanted] of lme4.estimate.entries()) {
      expect(Math.abs(at(fit.beta, i) - wanted)).toBeLessThan(1e-3);
      const se = Math.sqrt(at(fit.covariance.values, 3 * i));
      expect(Math.abs(se / (lme4.se[i] ?? NaN) - 1)).toBeLessThan(0.02);
    }
  });
  it('finds the spread of rounds most likely that lme4 found', () => {
    const around = [-0.05, 0, 0.05].map((off) => fitRounds(lme4Rounds, lme4.roundSd + off, 25).logLikelihood);
    expect(at(around, 1)).toBeGreaterThan(at(around, 0));
    expect(at(around, 1)).toBeGreaterThan(at(around, 2));
    // The top of the parabola through the three.
    const [left, middle, right] = [at(around, 0), at(around, 1), at(around, 2)];
    expect(Math.abs((0.05 * (left - right)) / (2 * (left - 2 * middle + right)))).toBeLessThan(0.003);
  });
  it('needs no more than five nodes', () => {
    const five = fitRounds(lme4Rounds, lme4.roundSd, 5);
    expect(at(five.beta, 1)).toBeCloseTo(at(fit.beta, 1), 5);
    expect(five.logLikelihood).toBeCloseTo(fit.logLikelihood, 4);
  });
});

/** Rounds with three columns, the sizes of which vary. */
function someRounds(seed: number): RandomRounds {
  const rng = rngFromSeed(seed);
  return {
    priorSds: [1, 0.15, 0.3],
    rounds: Array.from({ length: 6 }, () => {
      const shots = 1 + rng.below(12);
      return {
        columns: Array.from({ length: shots }, (_, shot) => Float64Array.of(1, rng.normal(), shot / 25)),
        offsets: Float64Array.from({ length: shots }, () => 0.8 * rng.normal()),
        made: Uint8Array.from({ length: shots }, () => rng.below(2)),
      };
    }),
  };
}

/** ln of likelihood times prior by summing over a fine grid of the round's effect. */
function byHand({ rounds, priorSds }: RandomRounds, beta: readonly number[], tau: number): number {
  let sum = priorSds.reduce((total, sd, i) => total - ((beta[i] ?? NaN) / sd) ** 2 / 2, 0);
  for (const { columns, offsets, made } of rounds) {
    let integral = 0;
    for (let z = -8; z <= 8; z += 0.01) {
      let product = 0.01 * normalDensity(z);
      for (const [j, x] of columns.entries()) {
        const eta = x.reduce((total, one, i) => total + one * (beta[i] ?? NaN), at(offsets, j) + tau * z);
        product *= made[j] === 1 ? expit(eta) : expit(-eta);
      }
      integral += product;
    }
    sum += Math.log(integral);
  }
  return sum;
}

describe('against summing over a grid', () => {
  it.each([1, 2, 3, 4])('set %d', (seed) => {
    const data = someRounds(seed);
    const tau = 0.2 + 0.2 * seed;
    const fit = fitRounds(data, tau, 15);
    const mode = [...fit.beta];
    const here = byHand(data, mode, tau);
    const prior = data.priorSds.reduce((total, sd, i) => total - (at(fit.beta, i) / sd) ** 2 / 2, 0);
    expect(fit.logLikelihood + prior).toBeCloseTo(here, 6);
    const h = 0.02;
    const off = (...moves: readonly (readonly [number, number])[]): number =>
      byHand(
        data,
        mode.map((one, i) => one + moves.reduce((sum, [which, by]) => sum + (which === i ? by : 0), 0)),
        tau,
      );
    // It is the mode, and the covariance is the inverse of the curvature there.
    const curvature = mode.map((_, i) =>
      mode.map(
        (__, j) =>
          -(off([i, h], [j, h]) - off([i, h], [j, -h]) - off([i, -h], [j, h]) + off([i, -h], [j, -h])) /
          (4 * h * h),
      ),
    );
    for (const [i, row] of curvature.entries()) {
      expect(Math.abs(off([i, h]) - off([i, -h])) / (2 * h)).toBeLessThan(5e-3);
      for (const j of mode.keys()) {
        const product = row.reduce((sum, one, k) => sum + one * at(fit.covariance.values, 3 * k + j), 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 2);
      }
    }
  });
});

it('with no spread of rounds is a plain regression, and starts anywhere', () => {
  const together = fitRounds(lme4Rounds, 1e-3, 5);
  const one: RoundShots = {
    columns: lme4Rounds.rounds.flatMap(({ columns }) => columns),
    offsets: Float64Array.from(lme4Rounds.rounds.flatMap(({ offsets }) => [...offsets])),
    made: Uint8Array.from(lme4Rounds.rounds.flatMap(({ made }) => [...made])),
  };
  const plain = fitRounds({ ...lme4Rounds, rounds: [one] }, 1e-3, 5);
  const far = fitRounds(lme4Rounds, 1e-3, 5, Float64Array.of(3, -4));
  for (const i of [0, 1]) {
    expect(at(together.beta, i)).toBeCloseTo(at(plain.beta, i), 4);
    expect(at(far.beta, i)).toBeCloseTo(at(together.beta, i), 4);
  }
});
