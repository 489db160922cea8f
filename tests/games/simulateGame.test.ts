import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { simulateGame, type Course } from '../../renderer/games/simulateGame.ts';
import { solve, type Ability } from '../../renderer/games/solver.ts';

const PLAYS = 400;

/** Good and bad days around 72 in 100 at the line and 42 in 100 elsewhere; an opponent has no days. */
function abilityFor({ plan, stops }: (typeof CATALOGUE)[number], shots: readonly number[]): Ability {
  const rates = [-0.12, 0, 0.12].map((day) =>
    shots.map((stop, at) => {
      if (plan.family === 'duel' && at >= shots.length / 2) return 0.5;
      return (stops[stop]?.shot === 'free-throw' ? 0.72 : 0.42) + day;
    }),
  );
  return { weights: [0.25, 0.5, 0.25], rates };
}

const games = CATALOGUE.map((one) => [one.id, one] as const);

describe.each(games)('%s played by a shooter of known truth', (_, one) => {
  const { rule, stops } = ruleOf(one.plan, one.stops, 4);
  const ability = abilityFor(one, stops);
  // Time that may run out, as it does on a round clock.
  const time = one.clock?.kind === 'round' ? stops.map((__, turn) => (turn < 6 ? 1 : 0.97)) : undefined;
  const solved = solve(rule, ability, time);
  const rng = rngFromSeed(8);
  const courses: Course[] = Array.from({ length: PLAYS }, () =>
    simulateGame({ rule, solved, ability, time }, rng),
  );

  it('is won and lasts as the solver says', () => {
    const { chance } = solved.standing([]);
    const won = courses.filter((course) => course.won).length;
    // Four and a half standard deviations.
    const room = 4.5 * Math.sqrt((chance * (1 - chance)) / PLAYS);
    expect(Math.abs(won / PLAYS - chance)).toBeLessThan(room);
    const { mean, most, ninetieth } = solved.length([]);
    const lengths = courses.map(({ steps }) => steps.length);
    const average = lengths.reduce((sum, n) => sum + n, 0) / PLAYS;
    const squares = lengths.reduce((sum, n) => sum + (n - average) ** 2, 0) / PLAYS;
    expect(Math.abs(average - mean)).toBeLessThan(4.5 * Math.sqrt(squares / PLAYS) + 1e-9);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(most);
    const beyond = lengths.filter((n) => n > ninetieth).length / PLAYS;
    expect(beyond).toBeLessThan(0.1 + 4.5 * Math.sqrt(0.09 / PLAYS));
  });

  it('has a chance that moves by no more than what hung on the shot', () => {
    for (const course of courses.slice(0, 40)) {
      for (const [at, { chance, leverage, made }] of course.steps.entries()) {
        const after = course.steps[at + 1]?.chance;
        // With time to run out, the next chance is that of having got there.
        if (after === undefined || time !== undefined) continue;
        expect(made ? after - chance : chance - after).toBeLessThanOrEqual(Math.abs(leverage) + 1e-9);
      }
    }
  });
});

describe('a game that plays itself', () => {
  const line = CATALOGUE.find(({ id }) => id === 'racks-minute');
  if (!line) throw new Error('no such game');
  const { rule } = ruleOf(line.plan, line.stops, 4);
  const ability: Ability = { weights: [1], rates: [Array.from({ length: 25 }, () => 0.4)] };
  const play = (time: readonly number[] | undefined, seed = 3) =>
    simulateGame({ rule, solved: solve(rule, ability, time), ability, time }, rngFromSeed(seed));

  it('goes the same way for the same seed', () => {
    expect(play(undefined)).toEqual(play(undefined));
    expect(play(undefined, 4)).not.toEqual(play(undefined));
  });
  it('says whether the clock ended it', () => {
    expect(play(undefined).timeUp).toBe(false);
    const cut = play(Array.from({ length: 25 }, (_, turn) => (turn < 5 ? 1 : 0)));
    expect(cut.timeUp).toBe(true);
    expect(cut.steps).toHaveLength(5);
  });
});
