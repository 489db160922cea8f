import { describe, expect, it } from 'vitest';

import { clockFor, lastShotStart } from '../../renderer/games/clocks.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { onCourt } from '../log/diary.ts';
import { gameSetup, shoot } from './onCourt.ts';

const plan = (from: number, to: number) => ({ family: 'last shot', needed: 1, from, to }) as const;

describe('the start of a last shot', () => {
  it('is any tenth from one moment to the other, each about as often', () => {
    const seen = new Map<number, number>();
    for (let seed = 0; seed < 3000; seed += 1) {
      const start = lastShotStart(plan(0.3, 0.7), seed, 0);
      seen.set(start, (seen.get(start) ?? 0) + 1);
    }
    expect([...seen.keys()].toSorted((a, b) => a - b)).toEqual([0.3, 0.4, 0.5, 0.6, 0.7]);
    // Five standard errors of 600 in 3000.
    for (const times of seen.values()) expect(Math.abs(times - 600)).toBeLessThan(110);
  });
  it('is drawn anew for every turn, and the same again for the same turn', () => {
    const starts = Array.from({ length: 40 }, (_, turn) => lastShotStart(plan(1, 6), 3, turn));
    expect(new Set(starts).size).toBeGreaterThan(15);
    expect(Array.from({ length: 40 }, (_, turn) => lastShotStart(plan(1, 6), 3, turn))).toEqual(starts);
    expect(starts).not.toEqual(Array.from({ length: 40 }, (_, turn) => lastShotStart(plan(1, 6), 4, turn)));
  });
  it('is that moment where both are the same, and never nothing', () => {
    expect(lastShotStart(plan(2.5, 2.5), 1, 9)).toBe(2.5);
    expect(lastShotStart(plan(0, 0), 1, 0)).toBe(0.1);
    expect(lastShotStart(plan(5, 4), 1, 0)).toBeGreaterThanOrEqual(4);
  });
});

describe('the clock of the next turn', () => {
  const open = (game: GamePlan, clock: { kind: 'round' | 'shot'; seconds: number } | null) =>
    onCourt(gameSetup(game, { clock }));
  const clockOf = (log: ReturnType<typeof open>) => {
    const round = log.book().open;
    return round && clockFor(round);
  };
  it('is the one that was set', () => {
    const clock = { kind: 'round', seconds: 60 } as const;
    expect(clockOf(open({ family: 'reach', needed: 1 }, clock))).toEqual(clock);
    expect(clockOf(open({ family: 'reach', needed: 1 }, null))).toBeNull();
    expect(clockOf(onCourt())).toBeNull();
  });
  it('of a last shot goes with the turn', () => {
    const game = plan(1, 6);
    const log = open(game, { kind: 'shot', seconds: 24 });
    expect(clockOf(log)).toEqual({ kind: 'shot', seconds: lastShotStart(game, 7, 0) });
    shoot(log, true);
    expect(clockOf(log)).toEqual({ kind: 'shot', seconds: lastShotStart(game, 7, 1) });
  });
});
