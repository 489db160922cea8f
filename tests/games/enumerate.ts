import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import type { Ability } from '../../renderer/games/solver.ts';

/**
 * The chance of winning by brute force: every one of the 2^n ways the rest of a round can go, each weighed by its
 * probability, over every possible day. The solver must agree with this.
 *
 * @param given turns already taken; a turn the clock took counts as a miss in the game and says nothing of the shooter
 */
export function chanceByEnumeration<State>(
  rule: Rule<State>,
  { weights, rates }: Ability,
  given: readonly TurnResult[] = [],
): number {
  let won = 0;
  let all = 0;
  for (const [day, weight] of weights.entries()) {
    const rate = (turn: number) => rates[day]?.[turn] ?? 0;
    let state = rule.start;
    let seen = weight;
    for (const [turn, result] of given.entries()) {
      if (result === 'make') seen *= rate(turn);
      if (result === 'miss') seen *= 1 - rate(turn);
      state = rule.step(state, result === 'make');
    }
    const walk = (from: State, turn: number, p: number): void => {
      if (rule.finished(from)) {
        all += p;
        if (rule.won(from)) won += p;
        return;
      }
      walk(rule.step(from, true), turn + 1, p * rate(turn));
      walk(rule.step(from, false), turn + 1, p * (1 - rate(turn)));
    };
    walk(state, given.length, seen);
  }
  return won / all;
}

/** Every day the same: one make rate for every turn. */
export function steady(p: number, turns: number): Ability {
  return { weights: [1], rates: [Array.from({ length: turns }, () => p)] };
}
