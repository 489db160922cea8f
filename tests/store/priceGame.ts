import { isoDateAt } from '../../renderer/basics/days.ts';
import type { ShooterId } from '../../renderer/basics/ids.ts';
import type { Probability } from '../../renderer/basics/units.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import type { Length } from '../../renderer/games/length.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { solve } from '../../renderer/games/solver.ts';
import type { Moment } from '../../renderer/log/begin.ts';
import type { Book } from '../../renderer/log/book.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { abilityNow } from '../../renderer/store/forecast.ts';
import { gameAbility } from '../../renderer/store/gameChances.ts';

/* One game's price worked out by itself, as a rival for the prices of many that share what they rest on. */

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
