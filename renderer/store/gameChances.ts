import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { Length } from '../games/length.ts';
import { ruleOf, type Game } from '../games/ruleOf.ts';
import { solve, type Ability } from '../games/solver.ts';
import type { Moment } from '../log/begin.ts';
import type { Book } from '../log/book.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { abilityNow } from './forecast.ts';

/* What a game is worth to a shooter who starts it now. After every shot of it: liveChance.ts. */

/** A game as it would be for a shooter who starts it now. */
export interface PricedGame {
  readonly chance: Probability;
  readonly length: Length;
}

/**
 * @param second the other shooter of a duel on this court
 * @throws InvariantError where the game cannot be won, cannot end or does not fit the card; the message says why
 */
export function priceGame(
  book: Book,
  shooter: ShooterId,
  plan: GamePlan,
  card: readonly Stop[],
  now: Pick<Moment, 'at' | 'zone'>,
  second: ShooterId = shooter,
): PricedGame {
  const game = ruleOf(plan, card, 0);
  const on = isoDateAt(now.at, now.zone);
  const of = (who: ShooterId) => (stops: readonly Stop[]) => abilityNow(book, who, 'pressured', stops, on);
  const solved = solve(game.rule, gameAbility(plan, game, card, of(shooter), of(second)));
  return { chance: solved.standing([]).chance, length: solved.length([]) };
}

type AbilityFor = (stops: readonly Stop[]) => Ability;

/** Make rates for every shot of a game: of one shooter, or of both sides of a duel. */
export function gameAbility(
  plan: GamePlan,
  { stops }: Game,
  card: readonly Stop[],
  first: AbilityFor,
  second: AbilityFor,
): Ability {
  const shots = stops.flatMap((stop): Stop[] => {
    const place = card[stop];
    return place ? [{ ...place, attempts: 1 }] : [];
  });
  if (plan.family !== 'duel') return first(shots);
  const half = shots.slice(0, shots.length / 2);
  const { against } = plan;
  switch (against.kind) {
    case 'shooter':
      return together(first(half), second(half));
    case 'drawn':
      return together(first(half), sure(half.map(() => against.rate)));
    case 'own round':
      return together(first(half), sure(half.map((_, at) => (against.made[at] ? 1 : 0))));
  }
}

/** Every day of one side with every day of the other. */
function together(one: Ability, other: Ability): Ability {
  return {
    weights: one.weights.flatMap((weight) => other.weights.map((theirs) => weight * theirs)),
    rates: one.rates.flatMap((rates) => other.rates.map((theirs) => [...rates, ...theirs])),
  };
}

function sure(rates: readonly Probability[]): Ability {
  return { weights: [1], rates: [rates] };
}
