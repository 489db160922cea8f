import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import { wonBySecond } from '../games/duel.ts';
import { fairest, ladderOf } from '../games/fair.ts';
import { ruleOf } from '../games/ruleOf.ts';
import { solve, type Ability } from '../games/solver.ts';
import type { Moment } from '../log/begin.ts';
import type { Book } from '../log/book.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { abilityNow } from './forecast.ts';
import { gameAbility } from './gameChances.ts';
import { gamePrices } from './gamePrices.ts';
import { playedName } from './gameToPlay.ts';
import type { GroupWish } from './groupWish.ts';

/* What a game of several is worth to each of them. */

/** One shooter's game, and their chance in it. */
export interface Seat {
  readonly shooter: ShooterId;
  /** What the game is called as this shooter plays it. */
  readonly name: string;
  readonly plan: GamePlan;
  readonly chance: Probability;
}

type Now = Pick<Moment, 'at' | 'zone'>;
type Wished = Pick<GroupWish, 'shooters' | 'game' | 'wanted' | 'headStart'>;

/**
 * Everybody's game as the wish has it, in the order they were named: the same for all, or each at the same chance, by
 * their own record. In a duel both have the same game, seen from the one who was named first; with fewer or more than two
 * it has no seats.
 */
export function seatsFor(book: Book, wish: Wished, seed: number, now: Now): Seat[] {
  const { shooters, game, wanted } = wish;
  if (game.plan.family === 'duel') return duelSeats(book, wish, game.plan, now);
  return shooters.map((shooter) => {
    const prices = gamePrices(book, shooter, now);
    const { plan, chance } =
      wanted === null
        ? { plan: game.plan, chance: prices.price(game, seed).chance }
        : prices.fair(game, wanted, seed);
    return { shooter, name: playedName(game.name, game.plan, plan, game.stops), plan, chance };
  });
}

type DuelPlan = Extract<GamePlan, { family: 'duel' }>;

/** Who shoots first does not change who wins: all of both count, and extra shots go in pairs. */
function duelSeats(
  book: Book,
  { shooters, game, wanted, headStart }: Wished,
  plan: DuelPlan,
  now: Now,
): Seat[] {
  const [one, other, ...more] = shooters;
  if (one === undefined || other === undefined || more.length > 0) return [];
  const { stops } = game;
  const on = isoDateAt(now.at, now.zone);
  const of = (who: ShooterId) => (shots: readonly Stop[]) => abilityNow(book, who, 'pressured', shots, on);
  const ability = gameAbility(plan, ruleOf(plan, stops, 0), stops, of(one), of(other));
  const chances = (step: GamePlan) => duelChances(step, stops, ability);
  const level = { ...plan, headStart: headStart ?? 0 };
  const played =
    headStart !== null || wanted === null
      ? level
      : fairest(ladderOf(plan, stops), (step) => evenness(chances(step)), wanted).plan;
  const { first, second } = chances(played);
  return [
    { shooter: one, name: game.name, plan: played, chance: first },
    { shooter: other, name: game.name, plan: played, chance: second },
  ];
}

interface DuelChances {
  readonly first: Probability;
  readonly second: Probability;
}

/** Chances of both; what is left ends level. */
function duelChances(plan: GamePlan, stops: readonly Stop[], ability: Ability): DuelChances {
  const { rule } = ruleOf(plan, stops, 0);
  const chance = (of: typeof rule) => solve(of, ability).standing([]).chance;
  return { first: chance(rule), second: chance(wonBySecond(rule)) };
}

/** A duel that ends level is half a win for each, so that 0.5 favours neither. */
function evenness({ first, second }: DuelChances): Probability {
  return (1 + first - second) / 2;
}
