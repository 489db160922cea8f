import { present } from '../basics/invariant.ts';
import type { Probability } from '../basics/units.ts';
import { attemptsOn, type Stop } from '../court/cards.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';

/** A plan with its chance for one shooter. */
export interface PricedPlan {
  readonly plan: GamePlan;
  readonly chance: Probability;
}

/** Longest run and most lives that are offered. */
const LONGEST_RUN = 25;
const MOST_LIVES = 20;
const HIGHEST_SCORE = 40;

/**
 * The same game from its easiest to its hardest: what is asked for grows, the lives get fewer, the head start of the other
 * grows. Each is a plan that can be won on this card.
 */
export function ladderOf(plan: GamePlan, card: readonly Stop[]): GamePlan[] {
  const shots = attemptsOn(card);
  switch (plan.family) {
    case 'reach':
    case 'last shot':
      return upTo(shots).map((needed) => ({ ...plan, needed }));
    case 'streak':
      return upTo(Math.min(plan.most, LONGEST_RUN)).map((row) => ({ ...plan, row }));
    case 'race':
      return upTo(Math.min(plan.up * plan.most, HIGHEST_SCORE)).map((to) => ({ ...plan, to }));
    case 'lives':
      return upTo(MOST_LIVES)
        .toReversed()
        .map((lives) => ({ ...plan, lives }));
    case 'trips':
      return upTo(plan.trips * (plan.kind === 'three shots' ? 3 : 2)).map((needed) => ({ ...plan, needed }));
    case 'racks':
      return upTo(shots).map((needed) => ({ ...plan, needed }));
    case 'climb': {
      const most = Math.max(...card.map(({ attempts }) => attempts));
      return upTo(2 * most - 1).flatMap((step) => {
        const makes = card.map(({ attempts }, stop) =>
          clamp((plan.makes[stop] ?? 1) + step - most, 1, attempts),
        );
        return makes.reduce((sum, one) => sum + one, 0) <= plan.most ? [{ ...plan, makes }] : [];
      });
    }
    case 'duel':
      return Array.from({ length: 2 * shots + 1 }, (_, at) => ({ ...plan, headStart: shots - at }));
  }
}

/**
 * The plan whose chance lies nearest to the wanted one. Chances go in steps, so show the chance it has.
 *
 * @param ladder from the easiest to the hardest, see {@link ladderOf}
 * @param chanceOf falls along the ladder; asked as seldom as can be
 */
export function fairest(
  ladder: readonly GamePlan[],
  chanceOf: (plan: GamePlan) => Probability,
  wanted: Probability,
): PricedPlan {
  const known = new Map<number, Probability>();
  const chanceAt = (step: number): Probability => {
    let chance = known.get(step);
    if (chance === undefined) {
      chance = chanceOf(present(ladder[step], 'a step of the ladder'));
      known.set(step, chance);
    }
    return chance;
  };
  // The last step that is still at least as likely as wanted, and the one after it.
  let [low, high] = [0, ladder.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (chanceAt(middle) >= wanted) low = middle;
    else high = middle - 1;
  }
  const next = Math.min(low + 1, ladder.length - 1);
  const best = Math.abs(chanceAt(next) - wanted) < Math.abs(chanceAt(low) - wanted) ? next : low;
  return { plan: present(ladder[best], 'a step of the ladder'), chance: chanceAt(best) };
}

function upTo(most: number): number[] {
  return Array.from({ length: most }, (_, at) => at + 1);
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
