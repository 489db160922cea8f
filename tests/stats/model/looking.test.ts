import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../../renderer/basics/chance.ts';
import { CLEAR_EVIDENCE, conditionalEvidence, type Stratum } from '../../../renderer/stats/model/evidence.ts';
import { signFlipTest } from '../../../renderer/stats/model/signFlip.ts';
import { expit } from '../../../renderer/stats/special.ts';

/*
 * What looking every day does, and what a number of pairs can show, by simulation. The figures to compare with come from an
 * independent prototype with 1,000 (looking) and 300 (pairs) simulated shooters; bounds leave three standard errors.
 */

function makesOf(attempts: number, eta: number, rng: Rng): number {
  let makes = 0;
  for (let shot = 0; shot < attempts; shot += 1) if (rng.chance(expit(eta))) makes += 1;
  return makes;
}

/** Days of 60 relaxed and 20 pressured shots, until the conditional bet reaches 20; null if it never does. */
function dayOfCall(slope: number, days: number, rng: Rng): number | null {
  const strata: Stratum[][] = Array.from({ length: days }, () => [
    {
      relaxed: { makes: makesOf(60, 0.2, rng), attempts: 60 },
      pressured: { makes: makesOf(20, 0.2 + slope, rng), attempts: 20 },
    },
  ]);
  if (conditionalEvidence(strata).highest < CLEAR_EVIDENCE) return null;
  let [low, high] = [1, days];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (conditionalEvidence(strata.slice(0, middle)).highest >= CLEAR_EVIDENCE) high = middle;
    else low = middle + 1;
  }
  return low;
}

describe('looking every day for 90 days', () => {
  it('calls a drop that is not there in one case of twenty at most', () => {
    const rng = rngFromSeed(31);
    const shooters = 300;
    let called = 0;
    for (let shooter = 0; shooter < shooters; shooter += 1) if (dayOfCall(0, 90, rng) !== null) called += 1;
    // 2.7 % in the prototype.
    expect(called / shooters).toBeLessThan(0.056);
  });

  it('finds a drop of 10 points in about 11 days', () => {
    const rng = rngFromSeed(32);
    const days = Array.from({ length: 101 }, () => dayOfCall(-0.4, 90, rng) ?? Infinity).toSorted(
      (a, b) => a - b,
    );
    expect(days[50]).toBeGreaterThanOrEqual(8);
    expect(days[50]).toBeLessThanOrEqual(15);
  });
});

/** Share of simulated shooters whose pairs reach p ≤ 5 %; every round has luck of its own, sd 0.2. */
function shareCalled(pairs: number, shots: number, slope: number, shooters: number, rng: Rng): number {
  let reached = 0;
  for (let shooter = 0; shooter < shooters; shooter += 1) {
    const differences = Array.from({ length: pairs }, () => {
      const round = (eta: number): number => makesOf(shots, eta + 0.2 * rng.normal(), rng);
      return round(0.2) - round(0.2 + slope);
    });
    if (signFlipTest(differences).oneSided <= 0.05) reached += 1;
  }
  return reached / shooters;
}

describe('coin-ordered pairs', () => {
  it('call a drop that is not there in one case of twenty at most', () => {
    expect(shareCalled(16, 25, 0, 1000, rngFromSeed(33))).toBeLessThan(0.07);
  });

  it.each([
    [16, 25, 0.74],
    [32, 25, 0.96],
    [32, 10, 0.72],
    [64, 10, 0.95],
  ])('show 10 points with %d pairs of %d shots in a share of cases of %d', (pairs, shots, share) => {
    const error = Math.sqrt(share * (1 - share) * (1 / 500 + 1 / 300));
    expect(Math.abs(shareCalled(pairs, shots, -0.4, 500, rngFromSeed(34)) - share)).toBeLessThan(3 * error);
  });
});
