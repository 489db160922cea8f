import { attemptsOn, type Stop } from '../court/cards.ts';
import { surePoints } from './gameFault.ts';
import type { GameFamily, GamePlan } from '../pressure/gamePlan.ts';

/* Games in the making: a first plan of each family, and a plan made to fit another card. */

/** A plan of a family to begin with: about half of what the card holds. */
export function freshPlan(family: GameFamily, card: readonly Stop[]): GamePlan {
  const half = Math.max(1, Math.ceil(attemptsOn(card) / 2));
  switch (family) {
    case 'reach':
      return { family, needed: half };
    case 'streak':
      return { family, row: 3, most: 40 };
    case 'race':
      return { family, to: 10, up: 1, down: 1, floor: 0, lost: null, most: 60 };
    case 'lives':
      return { family, needed: 5, lives: 3 };
    case 'trips':
      return { family, kind: 'two shots', trips: 3, needed: 4, scene: null };
    case 'racks':
      return { family, double: 'last', needed: half };
    case 'last shot':
      return { family, needed: half, from: 2, to: 6 };
    case 'climb': {
      const makes = card.map(({ attempts }) => Math.ceil(attempts / 2));
      const least = makes.reduce((sum, one) => sum + one, 0);
      return { family, makes, back: 1, most: Math.max(least, Math.min(4 * attemptsOn(card), 100)) };
    }
    case 'duel':
      return { family, against: { kind: 'drawn', rate: 0.5 }, headStart: 0, extraPairs: 5 };
  }
}

/** The same plan on another card: what the new card has no room for is cut, nothing else changes. */
export function fitted(plan: GamePlan, card: readonly Stop[]): GamePlan {
  const shots = Math.max(1, attemptsOn(card));
  switch (plan.family) {
    case 'reach':
    case 'last shot':
      return { ...plan, needed: Math.min(plan.needed, shots) };
    case 'racks':
      return { ...plan, needed: Math.min(plan.needed, surePoints(card, plan.double)) };
    case 'climb': {
      const makes = card.map(({ attempts }, step) =>
        Math.min(attempts, plan.makes[step] ?? Math.ceil(attempts / 2)),
      );
      const least = makes.reduce((sum, one) => sum + one, 0);
      return { ...plan, makes, most: Math.max(plan.most, least) };
    }
    case 'duel': {
      const headStart = Math.min(Math.max(plan.headStart, -shots), shots);
      return { ...plan, headStart };
    }
    case 'streak':
    case 'race':
    case 'lives':
    case 'trips':
      return plan;
  }
}
