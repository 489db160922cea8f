import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { GamePlan, PlayedGame } from '../pressure/gamePlan.ts';
import type { ClockSetting } from '../pressure/ingredients.ts';
import type { ListedGame } from './gameActions.ts';
import type { GamePrices, Price } from './gamePrices.ts';

/** How hard a game is wanted: as it is, or with about this chance of winning. */
export type HowHard = 'as it is' | Probability;

/** A game as it is about to be played. */
export interface GameToPlay {
  readonly played: PlayedGame;
  readonly price: Price;
}

/**
 * @param clock as it stands in the form; it may differ from the game's own
 * @param seed of the round, which decides what a coin decides
 */
export function gameToPlay(
  prices: GamePrices,
  { name, plan: listed, stops }: ListedGame,
  hard: HowHard,
  clock: ClockSetting | null,
  seed: number,
): GameToPlay {
  const game = { plan: listed, stops, clock };
  const plan = hard === 'as it is' ? listed : prices.fair(game, hard, seed).plan;
  const price = prices.price({ ...game, plan }, seed);
  return { played: { name: playedName(name, listed, plan, stops), plan, chance: price.chance }, price };
}

/** The name says what was played: a game that was made harder or easier is told apart from itself. */
export function playedName(name: string, listed: GamePlan, plan: GamePlan, stops: readonly Stop[]): string {
  const [was, is] = [numberOf(listed, stops), numberOf(plan, stops)];
  return was === is ? name : `${name}: ${is}`;
}

/** The number by which a game is made harder or easier, in words: `7 in a row`. */
function numberOf(plan: GamePlan, stops: readonly Stop[]): string {
  switch (plan.family) {
    case 'reach':
    case 'last shot':
      return `${plan.needed} of ${stops.reduce((sum, { attempts }) => sum + attempts, 0)}`;
    case 'streak':
      return `${plan.row} in a row`;
    case 'race':
      return `to ${plan.to}`;
    case 'lives':
      return plan.lives === 1 ? '1 life' : `${plan.lives} lives`;
    case 'trips':
    case 'racks':
      return plan.needed === 1 ? '1 point' : `${plan.needed} points`;
    case 'climb':
      return `steps of ${plan.makes.join(', ')}`;
    case 'duel':
      return plan.headStart === 0
        ? 'level'
        : `${Math.abs(plan.headStart)} ${plan.headStart > 0 ? 'ahead' : 'behind'}`;
  }
}
