import { rngFromSeed } from '../basics/chance.ts';
import type { GroupId } from '../basics/ids.ts';
import { oncePer } from '../basics/remembered.ts';
import type { Book, Round } from '../log/book.ts';
import { nextTurn } from '../log/roundCells.ts';
import type { GamePlan, Opponent } from '../pressure/gamePlan.ts';
import { turnResults } from './turnResults.ts';
import type { Rule, TurnResult } from './rule.ts';
import { wonBySecond } from './duel.ts';
import { ruleOf, type Game } from './ruleOf.ts';

/** A round's game, and how it stands. Rounds without a game of their own are shot card by card and have none. */
export interface GameOn extends Game {
  readonly plan: GamePlan;
  /** Every turn of the game so far: in a duel the other's turns are among them. */
  readonly results: readonly TurnResult[];
  readonly state: unknown;
  readonly over: boolean;
  /** Won as it stands, for the shooter of the round. */
  readonly won: boolean;
}

const games = new WeakMap<Round['stops'], Map<string, Game>>();

/**
 * The game of a round as it stands.
 *
 * @param others the other rounds of its group, in any order
 */
export function gameOn(round: Round, others: readonly Round[] = []): GameOn | null {
  const plan = round.pressure?.game?.plan;
  if (!plan) return null;
  const game = gameFor(plan, round);
  const results = resultsOf(plan, round, others);
  let state = game.rule.start;
  for (const result of results) {
    if (game.rule.finished(state)) break;
    state = game.rule.step(state, result === 'make');
  }
  const over = game.rule.finished(state);
  return { ...game, plan, results, state, over, won: wonBy(plan, round, game.rule, over, state) };
}

/** The stop the next shot of a round is taken at; null where its game or its card is over. */
export function nextStop(round: Round, others: readonly Round[] = []): number | null {
  const on = gameOn(round, others);
  if (!on) return nextTurn(round)?.stop ?? null;
  return on.over ? null : (on.stops[on.rule.shot(on.state)] ?? null);
}

/** The others among the rounds of a group. */
export function restOf(round: Pick<Round, 'id'>, all: readonly Round[]): Round[] {
  return all.filter(({ id }) => id !== round.id);
}

/** The other rounds of a round's group, over or not. */
export function othersIn({ open, waiting, rounds }: Book, round: Round): Round[] {
  const { group } = round;
  if (group === null) return [];
  const all = [...(open ? [open] : []), ...waiting.values(), ...(groupsIn(rounds).get(group.id) ?? [])];
  return all.filter((other) => other.group?.id === group.id && other.id !== round.id);
}

/** The rounds of each group; of years of rounds nobody wants to look through all for every single one. */
const groupsIn = oncePer((rounds: Book['rounds']): ReadonlyMap<GroupId, readonly Round[]> => {
  const groups = new Map<GroupId, Round[]>();
  for (const round of rounds.values()) {
    if (round.group === null) continue;
    const group = groups.get(round.group.id);
    if (group) group.push(round);
    else groups.set(round.group.id, [round]);
  }
  return groups;
});

/** Whether both shooters play one game; elsewhere each of a group has their own. */
export function sharesGame({ pressure }: Round): boolean {
  const plan = pressure?.game?.plan;
  return plan?.family === 'duel' && plan.against.kind === 'shooter';
}

/** Rules cost more to set up than to ask, and a round asks after every tap. */
function gameFor(plan: GamePlan, { stops, pressure }: Round): Game {
  const seed = pressure?.seed ?? 0;
  const key = `${JSON.stringify(plan)} ${seed}`;
  const known = games.get(stops) ?? new Map<string, Game>();
  games.set(stops, known);
  let game = known.get(key);
  if (!game) {
    game = ruleOf(plan, stops, seed);
    known.set(key, game);
  }
  return game;
}

/** Makes cannot be lost again, but a lead can: a duel is won only once it is over, or time is up. */
function wonBy(plan: GamePlan, round: Round, rule: Rule<unknown>, over: boolean, state: unknown): boolean {
  if (plan.family !== 'duel') return rule.won(state);
  if (!over && round.ending !== 'time-up') return false;
  const second = plan.against.kind === 'shooter' && round.group?.place === 2;
  return (second ? wonBySecond(rule) : rule).won(state);
}

function resultsOf(plan: GamePlan, round: Round, others: readonly Round[]): TurnResult[] {
  const own = turnResults(round);
  if (plan.family !== 'duel') return own;
  if (plan.against.kind !== 'shooter') {
    const made = opponentShots(plan.against, round.pressure?.seed ?? 0, own.length);
    return own.flatMap((result, at) => [result, made[at] ? 'make' : 'miss'] as const);
  }
  const [other] = others;
  const theirs = other ? turnResults(other) : [];
  const [first, second] = round.group?.place === 2 ? [theirs, own] : [own, theirs];
  return first.flatMap((result, at) => {
    const answer = second[at];
    return answer ? [result, answer] : [result];
  });
}

/** What an opponent who is not on court makes of so many shots; beyond an earlier round's end it misses. */
export function opponentShots(against: Opponent, seed: number, count: number): boolean[] {
  switch (against.kind) {
    case 'own round':
      return Array.from({ length: count }, (_, at) => against.made[at] ?? false);
    case 'drawn': {
      // Beside the coin of a pair and the double balls, which use the seed as it is.
      const rng = rngFromSeed(seed + 1);
      return Array.from({ length: count }, () => rng.chance(against.rate));
    }
    case 'shooter':
      return [];
  }
}
