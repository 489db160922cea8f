import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { Game } from '../games/ruleOf.ts';
import type { Ability } from '../games/solver.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';

/* What is known of everyone who shoots in a game. What that makes it worth: gamePrices.ts before it, liveChance.ts in it. */

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
