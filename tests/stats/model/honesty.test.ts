import { describe, expect, it } from 'vitest';

import { present } from '../../../renderer/basics/invariant.ts';
import { honestyOf, SCENARIOS } from '../../bench/modelCoverage.ts';

/*
 * A small seeded run of the simulations in tests/bench/modelCoverage.ts, which has the figures over many more shooters. The
 * bounds leave three standard errors of chance around what those found.
 */

function scenario(name: string) {
  return present(
    SCENARIOS.find((one) => one.name === name),
    name,
  );
}

describe('the index of simulated shooters', () => {
  it('holds the truth as often as it says, where the truth comes from the prior', () => {
    const { cover, bias, squares } = honestyOf(scenario('truth from the prior, 4 weeks'), 80, 50_000);
    expect(cover).toBeGreaterThan(0.8);
    expect(cover).toBeLessThan(1);
    expect(Math.abs(bias)).toBeLessThan(1.2);
    expect(squares).toBeLessThan(1.5);
  });

  it('is not fooled by pressured rounds that come last and lean to free throws', () => {
    const { cover, bias, calls } = honestyOf(scenario('casual, 4 weeks, drop 0'), 30, 60_000);
    // All shots thrown together are 5.8 points off here.
    expect(Math.abs(bias)).toBeLessThan(1.8);
    expect(cover).toBeGreaterThan(0.75);
    expect(calls).toBeLessThan(0.2);
  });
});
