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
    const rate = (at: State) => rates[day]?.[rule.shot(at)] ?? 0;
    let state = rule.start;
    let seen = weight;
    for (const result of given) {
      if (rule.finished(state)) break;
      if (result === 'make') seen *= rate(state);
      if (result === 'miss') seen *= 1 - rate(state);
      state = rule.step(state, result === 'make');
    }
    const walk = (from: State, p: number): void => {
      if (rule.finished(from)) {
        all += p;
        if (rule.won(from)) won += p;
        return;
      }
      walk(rule.step(from, true), p * rate(from));
      walk(rule.step(from, false), p * (1 - rate(from)));
    };
    walk(state, seen);
  }
  return won / all;
}

/** Every day the same: one make rate for every turn. */
export function steady(p: number, turns: number): Ability {
  return { weights: [1], rates: [Array.from({ length: turns }, () => p)] };
}
