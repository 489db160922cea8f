import type { Stop } from '../../renderer/court/cards.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import type { Ability } from '../../renderer/games/solver.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { gaussHermite } from '../../renderer/stats/quadrature.ts';
import { expit } from '../../renderer/stats/special.ts';

/* Games of any length of every family, and a shooter with so many possible days. */

/** A family at a length, ready to be solved. */
export interface Sized {
  readonly name: string;
  readonly rule: Rule<unknown>;
  readonly ability: Ability;
}

const DAY_SD = 0.3;

/** Possible days around a rate of 0.6 at every shot. */
export function abilityOf(shots: number, nodes: number): Ability {
  const { nodes: days, weights } = gaussHermite(nodes);
  return {
    weights,
    rates: days.map((day) => {
      const rate = expit(0.4 + DAY_SD * day);
      return Array.from({ length: shots }, () => rate);
    }),
  };
}

/** Every family, each with about `n` turns at most; a duel has half of them for each, and its extra pairs. */
export function sizedGames(n: number, nodes: number): Sized[] {
  const card: Stop[] = [{ spot: 'top', shot: 'catch', attempts: n }];
  const steps = Array.from({ length: 5 }, (): Stop => ({ spot: 'top', shot: 'catch', attempts: 5 }));
  const half = Math.ceil(n / 2);
  const halfCard: Stop[] = [{ spot: 'top', shot: 'catch', attempts: half }];
  const plans: readonly (readonly [string, GamePlan, readonly Stop[]])[] = [
    ['reach', { family: 'reach', needed: half }, card],
    ['streak', { family: 'streak', row: Math.min(10, n), most: n }, card],
    ['race', { family: 'race', to: half, up: 1, down: 2, floor: 0, lost: null, most: n }, card],
    ['lives', { family: 'lives', needed: half, lives: n - half + 1 }, card],
    ['trips', { family: 'trips', kind: 'one-and-one', trips: half, needed: half, scene: null }, card],
    ['racks', { family: 'racks', double: 'coin', needed: half }, card],
    ['last shot', { family: 'last shot', needed: half, from: 2, to: 6 }, card],
    ['climb', { family: 'climb', makes: [1, 1, 2, 2, 3], back: 1, most: n }, steps],
    [
      'duel',
      { family: 'duel', against: { kind: 'drawn', rate: 0.6 }, headStart: 0, extraPairs: 5 },
      halfCard,
    ],
  ];
  const games = plans.map(([name, plan, stops]) => {
    const { rule, stops: shots } = ruleOf(plan, stops, 3);
    return { name, rule, ability: abilityOf(shots.length, nodes) };
  });
  return [...games, duelOfTwo(half, nodes)];
}

/** Two real shooters: every day of one with every day of the other. */
function duelOfTwo(n: number, nodes: number): Sized {
  const card: Stop[] = [{ spot: 'top', shot: 'catch', attempts: n }];
  const { rule } = ruleOf(
    { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 5 },
    card,
    3,
  );
  const one = abilityOf(n, nodes);
  const ability = {
    weights: one.weights.flatMap((weight) => one.weights.map((other) => weight * other)),
    rates: one.rates.flatMap((rates) => one.rates.map((others) => [...rates, ...others])),
  };
  return { name: 'duel of two shooters', rule, ability };
}

/** Turns in which the game goes on as long as it can: makes and misses that decide it as late as may be. */
export function longPlay({ rule }: Sized): TurnResult[] {
  const results: TurnResult[] = [];
  let state = rule.start;
  while (!rule.finished(state) && results.length < rule.longest) {
    const [make, miss] = [rule.step(state, true), rule.step(state, false)];
    const made = rule.finished(miss) || (!rule.finished(make) && results.length % 2 === 0);
    results.push(made ? 'make' : 'miss');
    state = made ? make : miss;
  }
  return results;
}

/**
 * The rival: the same chance as one would write it first, by memory and recursion, day by day. @returns the chance before
 * the first shot
 */
export function byRecursion({ rule, ability }: Sized): number {
  let chance = 0;
  for (const [day, weight] of ability.weights.entries()) {
    const rates = ability.rates[day] ?? [];
    const known = new Map<string, number>();
    const win = (state: unknown, turn: number): number => {
      if (rule.finished(state)) return rule.won(state) ? 1 : 0;
      const key = `${turn} ${rule.key(state)}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const p = rates[rule.shot(state)] ?? 0;
      const worth =
        p * win(rule.step(state, true), turn + 1) + (1 - p) * win(rule.step(state, false), turn + 1);
      known.set(key, worth);
      return worth;
    };
    chance += weight * win(rule.start, 0);
  }
  return chance;
}
