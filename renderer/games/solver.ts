import { invariant, present } from '../basics/invariant.ts';
import type { Probability } from '../basics/units.ts';
import { lengthOf, type Length } from './length.ts';
import { levelsOf, type Level } from './levels.ts';
import type { Rule, TurnResult } from './rule.ts';

/**
 * What is known of the shooter: a few possible days, each with a weight and with a make rate for every shot of the
 * game, as the rule counts them. The weights sum to 1.
 */
export interface Ability {
  readonly weights: readonly number[];
  /** Day × shot. */
  readonly rates: readonly (readonly Probability[])[];
}

/** How a round stands. */
export interface Standing {
  /** Chance of winning from here. */
  readonly chance: Probability;
  /** Chance after a make minus chance after a miss; 0 when the round is over. */
  readonly leverage: Probability;
}

/** The next shot as it could be foreseen before the round, for wherever the game might come to stand. */
export interface Foreseen {
  readonly rate: Probability;
  /** Chance after a make minus chance after a miss. */
  readonly leverage: Probability;
}

/** A game solved for one shooter; asking costs a few steps, not a new solution. */
export interface Solved<State = unknown> {
  /** @param results every turn so far, in order */
  standing(results: readonly TurnResult[]): Standing;
  /**
   * The next shot with the days weighed as they were before the round: the turns so far say where the game stands, and
   * nothing of the shooter. Null when the round is over.
   */
  foreseen(results: readonly TurnResult[]): Foreseen | null;
  /** Where the game stands: that state, or another of the same key. */
  state(results: readonly TurnResult[]): State;
  /** How many more turns it takes from here. */
  length(results: readonly TurnResult[]): Length;
}

/** For each turn of the game, the chance that there is still time for it once there was time for the one before. */
export type TimeLeft = readonly Probability[];

/**
 * Solves a rule by backward induction, W(s) = p·W(make) + (1 − p)·W(miss), once for each possible day. Uncertain
 * ability is integrated over the days; after each shot the days are weighed anew by the shots seen, which is exact.
 *
 * @param time chances that time lasts; without it there is time enough
 * @throws InvariantError where the ability does not cover the shots of the game, or the game does not end in time
 */
export function solve<State>(rule: Rule<State>, ability: Ability, time?: TimeLeft): Solved<State> {
  const days = ability.weights.length;
  const levels = levelsOf(rule);
  const shots = levels.reduce((most, { shot }) => Math.max(most, ...shot.map((one) => one + 1)), 0);
  invariant(
    ability.rates.length === days && ability.rates.every((rates) => rates.length >= shots),
    'a make rate for every day and shot',
  );
  const wins = levels.map(({ states }) => new Float64Array(states.length * days));
  const byShot = ratesByShot(ability, shots);
  for (let turn = levels.length - 1; turn >= 0; turn -= 1) {
    fillLevel(rule, byShot, days, present(levels[turn], 'a turn'), wins, turn, time?.[turn] ?? 1);
  }

  /** Where the turns so far have led; turns after the end change nothing. */
  function walk(results: readonly TurnResult[]): { turn: number; at: number; weights: number[] } {
    const logs = ability.weights.map((weight) => Math.log(weight));
    let [turn, at] = [0, 0];
    for (const result of results) {
      const level = present(levels[turn], 'a turn of the round');
      const to = (result === 'make' ? level.make : level.miss)[at] ?? -1;
      if (to === -1) break;
      const shot = level.shot[at] ?? 0;
      // Worked in logs, so that a long round does not underflow.
      if (result !== 'lost') {
        for (const [day, rates] of ability.rates.entries()) {
          const p = rates[shot] ?? 0;
          logs[day] = (logs[day] ?? 0) + (result === 'make' ? Math.log(p) : Math.log1p(-p));
        }
      }
      at = to;
      turn += 1;
    }
    const most = Math.max(...logs);
    return { turn, at, weights: normalised(logs.map((log) => Math.exp(log - most))) };
  }

  return {
    state: (results) => {
      const { turn, at } = walk(results);
      return present(levels[turn]?.states[at], 'a state of the round');
    },
    length: (results) => lengthOf(levels, ability.rates, walk(results), time),
    standing: (results) => {
      const { turn, at, weights } = walk(results);
      const level = present(levels[turn], 'a turn of the round');
      const chance = mean(weights, present(wins[turn], 'a turn'), at);
      const make = level.make[at] ?? -1;
      const miss = level.miss[at] ?? -1;
      const next = wins[turn + 1];
      if (!next || make === -1) return { chance, leverage: 0 };
      const rates = ability.rates.map((day) => day[level.shot[at] ?? 0] ?? 0);
      const afterMake = mean(normalised(weights.map((w, day) => w * (rates[day] ?? 0))), next, make);
      const afterMiss = mean(normalised(weights.map((w, day) => w * (1 - (rates[day] ?? 0)))), next, miss);
      return { chance, leverage: afterMake - afterMiss };
    },
    foreseen: (results) => {
      const { turn, at } = walk(results);
      const level = present(levels[turn], 'a turn of the round');
      const make = level.make[at] ?? -1;
      const miss = level.miss[at] ?? -1;
      const next = wins[turn + 1];
      if (!next || make === -1) return null;
      const { weights } = ability;
      const shot = level.shot[at] ?? 0;
      return {
        rate: weights.reduce((sum, weight, day) => sum + weight * (ability.rates[day]?.[shot] ?? 0), 0),
        leverage: mean(weights, next, make) - mean(weights, next, miss),
      };
    },
  };
}

/** Shot × day in one row, so that the rates of one shot lie side by side. */
function ratesByShot({ weights, rates }: Ability, shots: number): Float64Array {
  const days = weights.length;
  const byShot = new Float64Array(shots * days);
  for (const [day, ofDay] of rates.entries()) {
    for (let shot = 0; shot < shots; shot += 1) byShot[shot * days + day] = ofDay[shot] as number;
  }
  return byShot;
}

function fillLevel<State>(
  rule: Rule<State>,
  rates: Float64Array,
  days: number,
  { states, shot, make, miss }: Level<State>,
  wins: readonly Float64Array[],
  turn: number,
  lasts: Probability,
): void {
  const win = present(wins[turn], 'a turn of the round');
  const next = wins[turn + 1];
  for (let at = 0; at < states.length; at += 1) {
    const up = make[at] as number;
    const over = up === -1 || !next;
    // Where time lasts, what it stands at now does not matter.
    const here = (over || lasts < 1) && rule.won(states[at] as State) ? 1 : 0;
    const from = at * days;
    if (over) {
      win.fill(here, from, from + days);
      continue;
    }
    const [p, a, b] = [(shot[at] as number) * days, up * days, (miss[at] as number) * days];
    for (let day = 0; day < days; day += 1) {
      const rate = rates[p + day] as number;
      const onward = rate * (next[a + day] as number) + (1 - rate) * (next[b + day] as number);
      win[from + day] = lasts * onward + (1 - lasts) * here;
    }
  }
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
