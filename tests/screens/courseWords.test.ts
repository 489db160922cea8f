import { describe, expect, it } from 'vitest';

import type { Course } from '../../renderer/games/simulateGame.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { courseEnd, coursePoints, courseTurn } from '../../renderer/screens/games/courseWords.ts';

const REACH: GamePlan = { family: 'reach', needed: 2 };
const DUEL: GamePlan = {
  family: 'duel',
  against: { kind: 'drawn', rate: 0.5 },
  headStart: 0,
  extraPairs: 0,
};
const step = (chance: number, leverage: number, made: boolean) => ({ shot: 0, chance, leverage, made });
const course = (change: Partial<Course> = {}): Course => ({
  steps: [step(0.5, 0.4, true), step(0.7, 0.6, false), step(0.4, 1, true)],
  won: true,
  timeUp: false,
  ...change,
});

describe('a game that played itself', () => {
  it('has after each shot the chance before the next, and at its end how it ended', () => {
    expect(coursePoints(course(), REACH).map(({ after }) => after)).toEqual([0.7, 0.4, 1]);
    expect(coursePoints(course({ won: false }), REACH).at(-1)?.after).toBe(0);
    expect(coursePoints(course({ steps: [] }), REACH)).toEqual([]);
  });

  it('shows of a duel the shooter’s own shots, each with the other’s answer', () => {
    const steps = [step(0.5, 0.4, true), step(0.7, -0.4, true), step(0.5, 0.5, false), step(0.2, -0.3, true)];
    const points = coursePoints(course({ steps, won: false }), DUEL);
    expect(points).toEqual([
      { made: true, leverage: 0.4, after: 0.5 },
      { made: false, leverage: 0.5, after: 0 },
    ]);
  });

  it.each<readonly [Partial<Course>, number, string]>([
    [{}, 37, 'Won after 37 shots.'],
    [{ won: false }, 1, 'Lost after 1 shot.'],
    [{ won: false, timeUp: true }, 9, 'Lost: the clock ran out after 9 shots.'],
    [{ timeUp: true }, 9, 'Won: the clock ran out after 9 shots, and it was enough.'],
  ])('%j after %d', (change, shots, words) => {
    expect(courseEnd(course(change), shots)).toBe(words);
  });

  it('names the shot on which most hung', () => {
    const points = coursePoints(course(), REACH);
    expect(courseTurn(points)).toBe(
      'Most hung on shot 3, a make: there a make was worth 100 points of the chance more than a miss.',
    );
    expect(courseTurn(points.slice(0, 2))).toMatch(/^Most hung on shot 2, a miss: .* 60 points/);
    expect(courseTurn(points.map((point) => ({ ...point, leverage: 0.01 })))).toBeNull();
    expect(courseTurn([])).toBeNull();
  });
});
