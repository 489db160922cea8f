import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import type { Ability } from '../../renderer/games/solver.ts';

/**
 * The chance of winning by brute force: every one of the 2^n ways the rest of a round can go, each weighed by its
 * probability, over every possible day. The solver must agree with this.
 *
 * @param given turns already taken; a turn the clock took counts as a miss in the game and says nothing of the shooter
 * @param time for each turn, the chance that there is still time for it
 */
export function chanceByEnumeration<State>(
  rule: Rule<State>,
  ability: Ability,
  given: readonly TurnResult[] = [],
  time?: readonly number[],
): number {
  let [won, all] = [0, 0];
  everyWay(rule, ability, given, time, (end, _, p) => {
    all += p;
    if (rule.won(end)) won += p;
  });
  return won / all;
}

/** The mean number of turns from here, and the least number within which nine games in ten are over. */
export function lengthByEnumeration<State>(
  rule: Rule<State>,
  ability: Ability,
  given: readonly TurnResult[],
  time?: readonly number[],
): { mean: number; ninetieth: number } {
  const ends = Array.from({ length: rule.longest + 1 }, () => 0);
  everyWay(rule, ability, given, time, (_, turns, p) => {
    ends[turns] = (ends[turns] ?? 0) + p;
  });
  const all = ends.reduce((sum, p) => sum + p, 0);
  let sum = 0;
  const ninetieth = ends.findIndex((p) => {
    sum += p / all;
    return sum >= 0.9 - 1e-9;
  });
  return { mean: ends.reduce((mean, p, turns) => mean + (turns * p) / all, 0), ninetieth };
}

function everyWay<State>(
  rule: Rule<State>,
  { weights, rates }: Ability,
  given: readonly TurnResult[],
  time: readonly number[] | undefined,
  ended: (end: State, turns: number, p: number) => void,
): void {
  for (const [day, weight] of weights.entries()) {
    const rate = (at: State) => rates[day]?.[rule.shot(at)] ?? 0;
    let state = rule.start;
    let seen = weight;
    for (const result of given) {
      if (rule.finished(state)) break;
      if (result === 'make') seen *= rate(state);
      if (result === 'miss') seen *= 1 - rate(state);
      state = rule.step(state, result === 'make');
    }
    const walk = (from: State, turns: number, p: number): void => {
      if (rule.finished(from)) {
        ended(from, turns, p);
        return;
      }
      const lasts = time?.[given.length + turns] ?? 1;
      if (lasts < 1) ended(from, turns, p * (1 - lasts));
      walk(rule.step(from, true), turns + 1, lasts * p * rate(from));
      walk(rule.step(from, false), turns + 1, lasts * p * (1 - rate(from)));
    };
    walk(state, 0, seen);
  }
}

/** Every day the same: one make rate for every turn. */
export function steady(p: number, turns: number): Ability {
  return { weights: [1], rates: [Array.from({ length: turns }, () => p)] };
}
