import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import { gameOn } from '../games/gameOn.ts';
import type { Length } from '../games/length.ts';
import { reach } from '../games/reach.ts';
import { ruleOf, type Game } from '../games/ruleOf.ts';
import { solve, type Ability, type Solved, type Standing } from '../games/solver.ts';
import { turnResults } from '../games/turnResults.ts';
import type { Moment } from '../log/begin.ts';
import type { Book, Round } from '../log/book.ts';
import { turnsOf } from '../log/roundCells.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { abilityBefore, abilityNow } from './forecast.ts';

/* What a game is worth to a shooter, before it and after every shot. */

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

/**
 * A round's game, solved; ask it for the standing after every shot. Null for a round without a mark or a game.
 *
 * @param others the other rounds of its group
 */
export function solvedGame(book: Book, round: Round, others: readonly Round[] = []): Solved | null {
  const on = gameOn(round, others);
  if (on) {
    const [other] = others;
    const [first, second] = round.group?.place === 2 ? [other ?? round, round] : [round, other ?? round];
    const of = (who: Round) => (stops: readonly Stop[]) => abilityBefore(book, who, stops);
    return solve(on.rule, gameAbility(on.plan, on, round.stops, of(first), of(second)));
  }
  const mark = round.pressure?.mark;
  return mark ? solve(reach(mark.makes, turnsOf(round).all), abilityBefore(book, round)) : null;
}

/** The standing of a round in its solved game, for its own shooter. */
export function standingOf(solved: Solved, round: Round, others: readonly Round[] = []): Standing {
  const on = gameOn(round, others);
  const standing = solved.standing(on ? on.results : turnResults(round));
  // The game is told from the first shooter's side.
  const second = on?.plan.family === 'duel' && round.group?.place === 2;
  return second ? { chance: 1 - standing.chance, leverage: -standing.leverage } : standing;
}

type AbilityFor = (stops: readonly Stop[]) => Ability;

/** Make rates for every shot of a game: of one shooter, or of both sides of a duel. */
function gameAbility(
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
