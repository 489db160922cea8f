import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Round } from '../../renderer/log/book.ts';
import { couldHaveShown } from '../../renderer/stats/hindsight.ts';
import type { NoIndex } from '../../renderer/stats/model/chokeIndex.ts';
import { fitDrop } from '../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { soFarOf } from '../../renderer/stats/planning.ts';
import { evidenceOf } from '../../renderer/stats/reading.ts';
import { PLAIN, play, pressureFor, RELAXED_MIX, type World } from '../bench/modelWorld.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

const NONE: NoIndex = { kind: 'none', reason: 'no pressured shot', seen: 0 };
const DATE = '2026-03-02';

function session(relaxed: number, pressured: number, date = DATE): Round[] {
  return [
    roundOf('relaxed', [three('top', relaxed / 2, relaxed)], { date }),
    roundOf('pressured', [three('top', pressured / 2, pressured)], { date }),
  ];
}

function indexOf(weeks: number) {
  const world = { ...PLAIN, weeks, pressuredMix: RELAXED_MIX };
  const { rounds } = play(world, rngFromSeed(8));
  const { index } = fitDrop(modelData(rounds));
  if (index.kind === 'none') throw new Error(index.reason);
  return { rounds, index };
}

describe('the latest session by itself', () => {
  it('of 25 and 25 shots could have shown no drop that there is', () => {
    expect(couldHaveShown(session(25, 25), NONE)).toEqual({
      soFar: null,
      latest: { date: DATE, shots: { relaxed: 25, pressured: 25 }, points: null },
    });
  });
  it('could have shown smaller drops the longer it was, but good and bad days set a limit', () => {
    const shown = [100, 200, 1000, 100_000].map(
      (each) => couldHaveShown(session(each, each), NONE).latest?.points ?? NaN,
    );
    expect(shown).toEqual(shown.toSorted((a, b) => b - a));
    expect(shown[0]).toBeLessThan(30);
    expect(shown.at(-1)).toBeGreaterThan(5);
  });
  it('is the one begun last, on the last day', () => {
    const late = session(30, 10).map((round) => ({ ...round, session: 'late', startedAt: 5 }));
    const rounds = [...late, ...session(40, 20), ...session(80, 80, '2026-03-01')];
    expect(couldHaveShown(rounds, NONE).latest?.shots).toEqual({ relaxed: 30, pressured: 10 });
  });
  it('counts only like with like', () => {
    const rounds = [
      roundOf('relaxed', [three('top', 50, 100), freeThrows(80, 100)]),
      roundOf('pressured', [three('top', 50, 100), three('left-wing', 50, 100)]),
    ];
    const { latest } = couldHaveShown(rounds, NONE);
    expect(latest?.shots).toEqual({ relaxed: 100, pressured: 100 });
    expect(latest?.points).toBe(couldHaveShown(session(100, 100), NONE).latest?.points);
  });
  it('of one condition shows nothing, and without a shot there is none', () => {
    const calm = couldHaveShown([roundOf('relaxed', [freeThrows(60, 100)])], NONE);
    expect(calm.latest).toMatchObject({ shots: { relaxed: 0, pressured: 0 }, points: null });
    expect(couldHaveShown([roundOf('relaxed', [])], NONE)).toEqual({ soFar: null, latest: null });
  });
});

describe('everything shot so far', () => {
  const four = indexOf(4);
  const twelve = indexOf(12);
  it('could have shown less the longer the record', () => {
    const of = ({ rounds, index }: typeof four): number => couldHaveShown(rounds, index).soFar ?? NaN;
    expect(of(twelve)).toBeLessThan(of(four));
  });
  it('counts pressured shots and sessions with both', () => {
    const { rounds, index } = twelve;
    const { pressured, sessions } = soFarOf(index, evidenceOf(rounds));
    expect({ pressured, sessions }).toEqual({ pressured: 12 * 4 * 50, sessions: 48 });
  });
  it('is worth nothing where the index has learnt nothing', () => {
    const { rounds, index } = four;
    const vague = { ...index, logit: { ...index.logit, sd: 1 } };
    expect(soFarOf(vague, evidenceOf(rounds)).variance).toBe(Infinity);
    expect(couldHaveShown(rounds, vague).soFar).toBeNull();
  });
});

/*
 * By simulation: of shooters with the very drop that is told, about four in five should have been told of it, and of those
 * with half of it far fewer. 60 shooters each leave a chance error of about 5 points.
 */
describe('a drop that could have shown', () => {
  const coins = (pairs: number) => (rng: Rng) =>
    Array.from({ length: pairs }, () =>
      rng.chance(0.5) ? (['relaxed', 'pressured'] as const) : (['pressured', 'relaxed'] as const),
    ).flat();
  const paired = (weeks: number, sessions: number, pairs: number): World => ({
    ...PLAIN,
    weeks,
    sessions,
    pressuredMix: RELAXED_MIX,
    plan: coins(pairs),
  });
  const indexOn = (rounds: readonly Round[]) => {
    const { index } = fitDrop(modelData(rounds));
    if (index.kind === 'none') throw new Error(index.reason);
    return index;
  };

  it.each([
    ['in four weeks of pairs', paired(4, 4, 2), 'soFar'],
    ['in a single session of eight pairs', paired(1, 1, 8), 'latest'],
  ] as const)('would have shown in four cases of five: %s', (_, world, which) => {
    const told = [1, 2, 3].map((seed) => {
      const { rounds } = play(world, rngFromSeed(seed));
      const { soFar, latest } = couldHaveShown(rounds, which === 'soFar' ? indexOn(rounds) : NONE);
      return present(which === 'soFar' ? soFar : (latest?.points ?? null), 'a drop');
    });
    const points = present(told.toSorted((a, b) => a - b)[1], 'the middle one');
    const shownOf = (drop: number): number => {
      const pressure = (week: number): number => pressureFor(drop, (PLAIN.skillRise * week) / 26);
      const shown = Array.from({ length: 60 }, (__, shooter) => {
        const { rounds } = play({ ...world, pressure }, rngFromSeed(3000 + shooter));
        return indexOn(rounds).overall.probability > 0.95;
      });
      return shown.filter(Boolean).length / shown.length;
    };
    const share = shownOf(points);
    expect(share).toBeGreaterThan(0.68);
    expect(share).toBeLessThan(0.96);
    expect(shownOf(points / 2)).toBeLessThan(0.6);
  });
});
