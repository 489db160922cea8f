import { invariant, present } from '../basics/invariant.ts';
import type { Probability } from '../basics/units.ts';
import type { Rule, TurnResult } from './rule.ts';

/**
 * What is known of the shooter: a few possible days, each with a weight and with a make rate for every turn of the
 * round in order. The weights sum to 1.
 */
export interface Ability {
  readonly weights: readonly number[];
  /** Day × turn. */
  readonly rates: readonly (readonly Probability[])[];
}

/** How a round stands. */
export interface Standing {
  /** Chance of winning from here. */
  readonly chance: Probability;
  /** Chance after a make minus chance after a miss; 0 when the round is over. */
  readonly leverage: Probability;
}

/** A game solved for one shooter; asking costs a few steps, not a new solution. */
export interface Solved {
  /** @param results every turn so far, in order */
  standing(results: readonly TurnResult[]): Standing;
}

interface Level<State> {
  readonly states: readonly State[];
  /** Index in the next level after a make and after a miss; −1 for a finished state. */
  readonly make: readonly number[];
  readonly miss: readonly number[];
  /** State × day. */
  readonly win: Float64Array;
}

/**
 * Solves a rule by backward induction, W(s) = p·W(make) + (1 − p)·W(miss), once for each possible day. Uncertain
 * ability is integrated over the days; after each shot the days are weighed anew by the shots seen, which is exact.
 *
 * @throws InvariantError where the ability does not cover the rule's longest play
 */
export function solve<State>(rule: Rule<State>, ability: Ability): Solved {
  const days = ability.weights.length;
  invariant(
    ability.rates.length === days && ability.rates.every((rates) => rates.length >= rule.longest),
    'a make rate for every day and turn',
  );
  const levels = reachable(rule).map((level) => ({
    ...level,
    win: new Float64Array(level.states.length * days),
  }));
  for (let turn = levels.length - 1; turn >= 0; turn -= 1) fillLevel(rule, ability, levels, turn);

  return {
    standing(results) {
      const weights = weighed(ability, results);
      let state = 0;
      let turn = 0;
      for (const result of results) {
        const level = present(levels[turn], 'a turn of the round');
        const to = (result === 'make' ? level.make : level.miss)[state] ?? -1;
        if (to === -1) break;
        state = to;
        turn += 1;
      }
      const level = present(levels[turn], 'a turn of the round');
      const chance = mean(weights, level.win, state);
      const make = level.make[state] ?? -1;
      const miss = level.miss[state] ?? -1;
      const next = levels[turn + 1];
      if (!next || make === -1) return { chance, leverage: 0 };
      const rates = ability.rates.map((day) => day[turn] ?? 0);
      const afterMake = mean(normalised(weights.map((w, day) => w * (rates[day] ?? 0))), next.win, make);
      const afterMiss = mean(
        normalised(weights.map((w, day) => w * (1 - (rates[day] ?? 0)))),
        next.win,
        miss,
      );
      return { chance, leverage: afterMake - afterMiss };
    },
  };
}

/** All states that can be reached, by turn. */
function reachable<State>(rule: Rule<State>): Omit<Level<State>, 'win'>[] {
  const levels: Omit<Level<State>, 'win'>[] = [];
  let states = [rule.start];
  while (states.length > 0) {
    const next: State[] = [];
    const nextIndex = new Map<number | string, number>();
    const place = (state: State): number => {
      const key = rule.key(state);
      const known = nextIndex.get(key);
      if (known !== undefined) return known;
      nextIndex.set(key, next.length);
      next.push(state);
      return next.length - 1;
    };
    const live = states.map((state) => !rule.finished(state));
    const make = states.map((state, at) => (live[at] ? place(rule.step(state, true)) : -1));
    const miss = states.map((state, at) => (live[at] ? place(rule.step(state, false)) : -1));
    levels.push({ states, make, miss });
    invariant(levels.length <= rule.longest + 1, 'a game that ends');
    states = next;
  }
  return levels;
}

function fillLevel<State>(
  rule: Rule<State>,
  { weights, rates }: Ability,
  levels: readonly Level<State>[],
  turn: number,
): void {
  const days = weights.length;
  const { states, make, miss, win } = present(levels[turn], 'a turn of the round');
  const next = levels[turn + 1]?.win;
  for (const [at, state] of states.entries()) {
    const up = make[at] ?? -1;
    const down = miss[at] ?? -1;
    for (let day = 0; day < days; day += 1) {
      if (up === -1 || !next) {
        win[at * days + day] = rule.won(state) ? 1 : 0;
        continue;
      }
      const p = rates[day]?.[turn] ?? 0;
      win[at * days + day] = p * (next[up * days + day] ?? 0) + (1 - p) * (next[down * days + day] ?? 0);
    }
  }
}

/** The days' weights after the shots seen. Worked in logs, so that a long round does not underflow. */
function weighed({ weights, rates }: Ability, results: readonly TurnResult[]): number[] {
  const logs = weights.map((weight, day) => {
    let log = Math.log(weight);
    for (const [turn, result] of results.entries()) {
      const p = rates[day]?.[turn] ?? 0;
      if (result === 'make') log += Math.log(p);
      else if (result === 'miss') log += Math.log1p(-p);
    }
    return log;
  });
  const most = Math.max(...logs);
  return normalised(logs.map((log) => Math.exp(log - most)));
}

function normalised(weights: readonly number[]): number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return sum > 0 ? weights.map((weight) => weight / sum) : weights.map(() => 1 / weights.length);
}

function mean(weights: readonly number[], win: Float64Array, state: number): Probability {
  const days = weights.length;
  let sum = 0;
  for (let day = 0; day < days; day += 1) sum += (weights[day] ?? 0) * (win[state * days + day] ?? 0);
  return sum;
}
