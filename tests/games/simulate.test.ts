import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { makeRate, simulateCard, simulateDay, type SimulatedShooter } from '../../renderer/games/simulate.ts';

const SHOOTER: SimulatedShooter = {
  rate: (spot) => (spot === 'free-throw' ? 1 : 0),
  pressureCost: 0.4,
  daySd: 0.25,
};
const TOP = { spot: 'top', shot: 'catch', attempts: 5 } as const;
const LINE = { spot: 'free-throw', shot: 'free-throw', attempts: 5 } as const;

describe('a simulated shooter', () => {
  it('makes half at log-odds 0, and 1 / (1 + e^0.4) of them under pressure', () => {
    expect(makeRate(SHOOTER, TOP, false, { shift: 0 })).toBe(0.5);
    expect(makeRate(SHOOTER, TOP, true, { shift: 0 })).toBeCloseTo(1 / (1 + Math.exp(0.4)), 12);
    expect(makeRate(SHOOTER, TOP, false, { shift: 0.3 })).toBeCloseTo(1 / (1 + Math.exp(-0.3)), 12);
  });
  it('plays a card out in order, the same for the same seed', () => {
    const play = () => simulateCard(SHOOTER, [TOP, LINE], false, { shift: 0 }, rngFromSeed(5));
    expect(play()).toHaveLength(10);
    expect(play()).toEqual(play());
  });
  it('makes as many as the truth says, spot by spot', () => {
    const rng = rngFromSeed(9);
    const makes = [0, 0];
    const n = 4000;
    for (let round = 0; round < n; round += 1) {
      for (const [at, made] of simulateCard(SHOOTER, [TOP, LINE], true, { shift: 0 }, rng).entries()) {
        if (made) makes[at < 5 ? 0 : 1] = (makes[at < 5 ? 0 : 1] ?? 0) + 1;
      }
    }
    for (const [at, stop] of [TOP, LINE].entries()) {
      const p = makeRate(SHOOTER, stop, true, { shift: 0 });
      // Five standard deviations.
      expect(Math.abs((makes[at] ?? 0) / (5 * n) - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / (5 * n)));
    }
  });
  it('has good and bad days around none', () => {
    const rng = rngFromSeed(4);
    const n = 10_000;
    const shifts = Array.from({ length: n }, () => simulateDay(SHOOTER, rng).shift);
    const mean = shifts.reduce((sum, shift) => sum + shift, 0) / n;
    const sd = Math.sqrt(shifts.reduce((sum, shift) => sum + (shift - mean) ** 2, 0) / n);
    expect(Math.abs(mean)).toBeLessThan((5 * 0.25) / Math.sqrt(n));
    expect(sd).toBeCloseTo(0.25, 1);
  });
});
