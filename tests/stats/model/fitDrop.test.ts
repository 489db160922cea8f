import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import type { Round } from '../../../renderer/log/book.ts';
import { at } from '../../../renderer/stats/matrix.ts';
import type { ChokeIndex } from '../../../renderer/stats/model/chokeIndex.ts';
import { fitDrop, fitDropInSteps, type FitOptions } from '../../../renderer/stats/model/fitDrop.ts';

import { changeBetween } from '../../../renderer/stats/model/indexOf.ts';
import { modelData } from '../../../renderer/stats/model/modelData.ts';
import { PLAIN, play, RELAXED_MIX } from '../../bench/modelWorld.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

function fitted(rounds: readonly Round[], options: FitOptions = {}): ChokeIndex {
  const { index } = fitDrop(modelData(rounds), options);
  if (index.kind === 'none') throw new Error(index.reason);
  return index;
}

const WORLD = { ...PLAIN, weeks: 6, pressure: () => -0.5 };
const season = play(WORLD, rngFromSeed(5)).rounds;

describe('the choke index', () => {
  const index = fitted(season);

  it('is the same for the same record, in whatever order', () => {
    expect(fitted(season.toReversed())).toEqual(index);
    expect(fitted(season, { seed: index.seed })).toEqual(index);
  });

  it('moves only by chance with another seed', () => {
    const other = fitted(season, { seed: 1 });
    expect(other.overall.points).not.toBe(index.overall.points);
    expect(Math.abs(other.overall.points - index.overall.points)).toBeLessThan(0.15 * index.overall.sd);
  });

  it('adds up: relaxed − pressured, weeks to the whole, places and groups to the whole', () => {
    expect(index.relaxed - index.pressured).toBeCloseTo(index.overall.points, 9);
    const mean = index.weeks.reduce((sum, week) => sum + week.points, 0) / index.weeks.length;
    expect(mean).toBeCloseTo(index.overall.points, 9);
    for (const parts of [index.places, index.groups]) {
      expect(parts.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
      expect(parts.reduce((sum, { weight, points }) => sum + weight * points, 0)).toBeCloseTo(
        index.overall.points,
        9,
      );
    }
    expect(index.groups.map(({ group }) => group)).toEqual(['threes', 'mid-range', 'free-throws']);
  });

  it('finds almost the same at the spreads it has learnt, without learning them again', () => {
    const quick = fitted(season, { hyper: index.hyper.mean });
    expect(Math.abs(quick.overall.points - index.overall.points)).toBeLessThan(0.2 * index.overall.sd);
    expect(quick.overall.sd / index.overall.sd).toBeCloseTo(1, 1);
    expect(quick.hyper.sd).toEqual({ skill: 0, day: 0, week: 0, dayPressure: 0 });
  });

  it('can be asked for free throws alone, or for a mix of one’s own', () => {
    const free = fitted(season, { mix: 'free-throws' });
    expect(free.mix).toEqual([{ spot: 'free-throw', shot: 'free-throw', weight: 1 }]);
    expect(free.relaxed).toBeGreaterThan(index.relaxed);
    expect(fitted(season, { mix: index.mix }).overall.points).toBeCloseTo(index.overall.points, 9);
  });

  it('counts the draws within 3 points of none, and those above 2 points', () => {
    const { index: same, posterior } = fitDrop(modelData(season.slice(0, 8 * 4)));
    if (same.kind === 'none' || !posterior) throw new Error('no index');
    // One week, so that its drops are those of the whole.
    expect(posterior.weeks).toBe(1);
    const drops = posterior.relaxed.map((calm, draw) => 100 * (calm - at(posterior.pressured, draw)));
    const share = (holds: (drop: number) => boolean): number => drops.filter(holds).length / drops.length;
    expect(same.overall.probabilitySame).toBeCloseTo(
      share((drop) => Math.abs(drop) < 3),
      12,
    );
    expect(same.overall.probabilityOver2).toBeCloseTo(
      share((drop) => drop > 2),
      12,
    );
    // The next half points would count others.
    expect(share((drop) => Math.abs(drop) < 2.5)).toBeLessThan(share((drop) => Math.abs(drop) < 3));
  });

  it('tells the change between any two weeks', () => {
    const data = modelData(season);
    const { index: same, posterior } = fitDrop(data);
    if (same.kind === 'none' || !posterior) throw new Error('no index');
    const change = changeBetween(data, posterior, 0, 5);
    expect(change).toEqual(same.change);
    const [first, last] = [same.weeks[0], same.weeks[5]];
    expect(change.points).toBeCloseTo((last?.points ?? NaN) - (first?.points ?? NaN), 9);
    expect(changeBetween(data, posterior, 3, 3).points).toBe(0);
    expect(() => changeBetween(data, posterior, 0, 6)).toThrow('week 6');
  });

  it('tells its progress step by step', () => {
    const seen = [...fitDropInSteps(modelData(season))];
    expect(seen.length).toBeGreaterThan(30);
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    expect(seen.at(-1)).toBeLessThanOrEqual(1);
  });
});

describe('symmetry', () => {
  it('turns the sign when relaxed and pressured trade places', () => {
    // Two rounds of the same mix, one of each condition, in the first and second place in turn.
    const conditions = (session: number) =>
      session % 2 === 0 ? (['relaxed', 'pressured'] as const) : (['pressured', 'relaxed'] as const);
    const { rounds } = play(
      {
        ...PLAIN,
        weeks: 5,
        plan: (_, session) => conditions(session),
        pressuredMix: RELAXED_MIX,
        pressure: () => -0.4,
      },
      rngFromSeed(8),
    );
    const swapped = rounds.map((round): Round => ({
      ...round,
      condition: round.condition === 'relaxed' ? 'pressured' : 'relaxed',
    }));
    // Enough draws to know a standard deviation to a hundredth.
    const options = { seed: 3, draws: 20_000 };
    const [as, so] = [fitted(rounds, options), fitted(swapped, options)];
    expect(as.overall.points).toBeGreaterThan(2);
    // Not to the last digit: spreads belong to pressure, not to both sides alike.
    expect(Math.abs(as.overall.points + so.overall.points)).toBeLessThan(0.25 * as.overall.sd);
    expect(as.overall.sd / so.overall.sd).toBeCloseTo(1, 1);
    expect(as.overall.probability + so.overall.probability).toBeCloseTo(1, 1);
  });
});

describe('records that say little', () => {
  const none = (rounds: readonly Round[], options: FitOptions = {}): unknown =>
    fitDrop(modelData(rounds), options).index;

  it('says why there is no index', () => {
    const relaxed = roundOf('relaxed', [three('top', 5, 10), freeThrows(1, 2)]);
    const pressured = roundOf('pressured', [freeThrows(5, 10)]);
    expect(none([])).toEqual({ kind: 'none', reason: 'no relaxed shot', seen: 0 });
    expect(none([pressured])).toMatchObject({ reason: 'no relaxed shot' });
    expect(none([relaxed])).toMatchObject({ reason: 'no pressured shot' });
    expect(none([relaxed, pressured])).toEqual({
      kind: 'none',
      reason: 'too little of the mix under pressure',
      seen: expect.closeTo(2 / 12, 12),
    });
    const threes = [roundOf('relaxed', [three('top', 5, 10)]), roundOf('pressured', [three('top', 5, 10)])];
    expect(none(threes, { mix: 'free-throws' })).toMatchObject({ reason: 'nothing of the mix' });
    expect(none([relaxed, pressured], { mix: 'free-throws' })).toMatchObject({ kind: 'index', seen: 1 });
  });

  it('needs half of the mix to have been shot under pressure, and no more', () => {
    const pressured = roundOf('pressured', [freeThrows(5, 10)]);
    const of = (threes: number): unknown =>
      none([roundOf('relaxed', [three('top', 40, threes), freeThrows(70, 100)]), pressured]);
    expect(of(100)).toMatchObject({ kind: 'index', seen: 0.5 });
    expect(of(101)).toMatchObject({ kind: 'none', reason: 'too little of the mix under pressure' });
  });

  it('says beside the number that it is pulled towards 0, up to 200 pressured shots, and not again among the notes', () => {
    const of = (shots: number): ChokeIndex =>
      fitted([roundOf('relaxed', [freeThrows(150, 200)]), roundOf('pressured', [freeThrows(100, shots)])]);
    expect(of(199).pulled).toContain('With 199 pressured shots');
    expect(of(199).notes.join(' ')).not.toContain('pulled');
    expect(of(200).pulled).toBeNull();
  });

  it('notes the share of the mix that was shot under pressure only where it is not all of it', () => {
    const said = (pressured: Round): string =>
      fitted([roundOf('relaxed', [three('top', 1, 3), freeThrows(560, 800)]), pressured]).notes.join(' ');
    const all = roundOf('pressured', [three('top', 1, 3), freeThrows(520, 800)]);
    expect(said(all)).not.toContain('ever shot under pressure');
    expect(said(roundOf('pressured', [freeThrows(520, 800)]))).toContain(
      'Over 99 % of the mix was ever shot under pressure; one place is judged by the others.',
    );
  });

  it('hides the ratio of a shooter who makes less than one in five', () => {
    const rounds = [2, 3, 4, 5].flatMap((day) => [
      roundOf('relaxed', [three('top', 3, 50)], { date: `2026-03-0${day}` }),
      roundOf('pressured', [three('top', 2, 50)], { date: `2026-03-0${day}` }),
    ]);
    const index = fitted(rounds);
    expect(index.relaxed).toBeLessThan(20);
    expect(index.ratio).toBeNull();
    expect(index.notes.join(' ')).toContain('no ratio');
  });

  it('stands all made and all missed', () => {
    const index = fitted([
      roundOf('relaxed', [freeThrows(50, 50)]),
      roundOf('pressured', [freeThrows(0, 50)]),
    ]);
    expect(index.overall.points).toBeGreaterThan(10);
    expect(index.overall.high).toBeLessThanOrEqual(100);
    expect(index.change).toBeNull();
  });

  it('widens the band over weeks without a shot, and marks them', () => {
    const on = (date: string): Round[] => [
      roundOf('relaxed', [three('top', 40, 100)], { date }),
      roundOf('pressured', [three('top', 35, 100)], { date }),
    ];
    const rounds = [...on('2026-03-02'), ...on('2026-03-09'), ...on('2026-05-25'), ...on('2026-06-01')];
    // A straight trend is surest in the middle; without it the band is the weeks' own.
    // A thousand draws would not show so small a difference.
    const index = fitted(rounds, { design: { trendWeeks: null }, draws: 20_000 });
    expect(index.weeks).toHaveLength(14);
    expect(index.weeks.filter((week) => week.empty)).toHaveLength(10);
    const sd = (week: number): number => index.weeks[week]?.sd ?? NaN;
    expect(sd(6)).toBeGreaterThan(sd(0));
    expect(index.weeks[6]).toMatchObject({ shots: { relaxed: 0, pressured: 0 }, empty: true });
  });
});

describe('ingredients', () => {
  it('finds the one that costs the most', () => {
    const rng = rngFromSeed(12);
    const rounds: Round[] = [];
    const shoot = (p: number): number =>
      Array.from({ length: 40 }, () => rng.chance(p)).filter(Boolean).length;
    for (let day = 0; day < 28; day += 1) {
      const date = `2026-03-${String(day + 1).padStart(2, '0')}`;
      rounds.push(roundOf('relaxed', [freeThrows(shoot(0.7), 40)], { date }));
      for (const crowd of [true, false]) {
        const pressured = roundOf('pressured', [freeThrows(shoot(crowd ? 0.55 : 0.7), 40)], { date });
        rounds.push({
          ...pressured,
          id: `${date} ${String(crowd)}`,
          label: crowd ? '2' : '3',
          pressure: {
            ingredients: crowd ? ['crowd', 'clock'] : ['clock', 'stake'],
            stake: null,
            mark: null,
            clock: null,
            crowd,
            showChance: true,
            seed: 1,
          },
        });
      }
    }
    const { ingredients } = fitted(rounds);
    // The clock was always on: nothing to compare it with.
    expect(ingredients.map(({ ingredient }) => ingredient)).toEqual(['crowd', 'stake']);
    expect(ingredients[0]).toMatchObject({ shots: { on: 1120, off: 1120 } });
    expect(ingredients[0]?.probability).toBeGreaterThan(0.9);
    expect(ingredients[0]?.points).toBeLessThan(15);
  });
});
