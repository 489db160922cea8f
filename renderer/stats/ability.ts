import { invariant, present } from '../basics/invariant.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { Round } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import type { Mark } from '../pressure/ingredients.ts';
import { dayTallies, type DayTally, type Place } from './dayTallies.ts';
import { cellKey } from './drop.ts';
import { nextDay, type NextDay, oldestThatCounts } from './lately.ts';
import { at } from './matrix.ts';
import { gaussHermite } from './quadrature.ts';
import { expit } from './special.ts';

/**
 * What a shooter may do on a card: a few possible rounds, from a poor one to a good one, each with a weight and a make
 * rate for every attempt in card order. The weights sum to 1. The solver of games declares the same shape for itself:
 * neither folder may know the other.
 */
export interface Ability {
  readonly weights: readonly number[];
  /** Possible round × attempt. */
  readonly rates: readonly (readonly Probability[])[];
}

/** Makes to be expected on a card. */
export interface Forecast {
  /** Chance of exactly k makes, k = 0 .. attempts. */
  readonly chances: readonly Probability[];
  readonly mean: number;
  /** Makes that hold the middle 80 %: no more than 1 in 10 rounds falls below, and no more than 1 in 10 above. */
  readonly range: { readonly low: number; readonly high: number };
}

/** Possible rounds in an {@link Ability}. */
const NODES = 15;
/** Points that average out what one spot has of its own. */
const SPOT_NODES = 9;

/**
 * What one shooter may do on a card in a round of one day: from the shooter's own lately faded record where there is
 * one, wide where there is none. Not knowing the shooter, a good or a bad day, and under pressure the day's own
 * answer to it are all in the spread (lately.ts). The round is taken to fall on a new day: how today has gone so far
 * is not used.
 *
 * @param rounds the shooter's rounds so far, both conditions, in any order; those of days after `on` are left out
 * @param stops the card, with at least one attempt
 * @param on the day of the round, from which evidence is aged
 */
export function abilityOn(
  rounds: Iterable<Round>,
  condition: Condition,
  stops: readonly Stop[],
  on: IsoDate,
): Ability {
  const oldest = oldestThatCounts(on);
  const counting = [...rounds].filter(({ date }) => date >= oldest && date <= on);
  return abilityFromDays(dayTallies(counting), condition, stops, on);
}

/** The same from rounds that are added up already; days that are too old or yet to come are left out. */
export function abilityFromDays(
  days: readonly DayTally[],
  condition: Condition,
  stops: readonly Stop[],
  on: IsoDate,
): Ability {
  return abilitiesFromDays(days, condition, stops, on)(stops);
}

/**
 * The same for any number of cards: what the record says of their places is worked out once, which is what takes time. A
 * place that is not asked about moves nothing that is said of the others.
 *
 * @param places every place of every card, in any order and as often as may be
 * @returns the ability on one of these cards
 */
export function abilitiesFromDays(
  days: readonly DayTally[],
  condition: Condition,
  places: readonly Place[],
  on: IsoDate,
): (stops: readonly Stop[]) => Ability {
  const distinct = new Map(places.map(({ spot, shot }) => [cellKey(spot, shot), { spot, shot }]));
  const index = new Map([...distinct.keys()].map((key, i) => [key, i]));
  const next = nextDay(days, condition, [...distinct.values()], on);
  return (stops) =>
    abilityFrom(
      next,
      stops.flatMap(({ spot, shot, attempts }) => {
        const place = present(index.get(cellKey(spot, shot)), 'a place that was named');
        return Array.from({ length: attempts }, () => place);
      }),
    );
}

/**
 * Turns log-odds of places into possible rounds. The rounds differ in the one mix of the places that moves the
 * expected makes; each place follows it by regression, and what is left of a place's own uncertainty is averaged
 * out, which draws its rate a little toward 50 %.
 *
 * @param turns for every attempt, the index of its place
 */
export function abilityFrom({ means, covariance }: NextDay, turns: readonly number[]): Ability {
  invariant(turns.length > 0, 'a card with an attempt');
  const pull = means.map((mean, place) => {
    const p = expit(mean);
    return turns.filter((turn) => turn === place).length * p * (1 - p);
  });
  const along = means.map((_, i) =>
    pull.reduce((sum, w, j) => sum + w * at(covariance.values, i * covariance.size + j), 0),
  );
  const variance = pull.reduce((sum, w, i) => sum + w * at(along, i), 0);
  invariant(variance > 0, 'an ability that is not known exactly');
  const rounds = gaussHermite(NODES);
  const own = gaussHermite(SPOT_NODES);
  const rates = rounds.nodes.map((node) => {
    const byPlace = means.map((mean, i) => {
      const loading = at(along, i) / Math.sqrt(variance);
      const left = Math.sqrt(Math.max(0, at(covariance.values, i * (covariance.size + 1)) - loading ** 2));
      return own.nodes.reduce(
        (sum, z, k) => sum + at(own.weights, k) * expit(mean + loading * node + left * z),
        0,
      );
    });
    return turns.map((place) => at(byPlace, place));
  });
  return { weights: rounds.weights, rates };
}

/** The distribution of makes on the whole card: Poisson-binomial in each possible round, mixed by weight. */
export function forecast(ability: Ability): Forecast {
  const chances = makesChances(ability);
  const mean = chances.reduce((sum, chance, makes) => sum + makes * chance, 0);
  return { chances, mean, range: middleOf(chances) };
}

/** The span that holds the middle 80 %, as {@link Forecast.range} does. */
export function middleOf(chances: ArrayLike<Probability>): Forecast['range'] {
  return { low: quantile(chances, 0.1), high: quantile(chances, 0.9) };
}

/** Chance of `makes` or more on the whole card. */
export function chanceOfAtLeast(ability: Ability, makes: number): Probability {
  return tail(makesChances(ability), makes);
}

/**
 * The mark from 1 to all attempts whose chance lies nearest to the wanted one. Chances move in steps, about 14 points
 * wide at 25 attempts, so show the chance it has, not the one that was wanted.
 */
export function chooseMark(ability: Ability, wanted: Probability): Mark {
  const chances = makesChances(ability);
  let best: Mark = { makes: 1, chance: tail(chances, 1) };
  for (let makes = 2; makes < chances.length; makes += 1) {
    const chance = tail(chances, makes);
    if (Math.abs(chance - wanted) < Math.abs(best.chance - wanted)) best = { makes, chance };
  }
  return best;
}

function makesChances({ weights, rates }: Ability): number[] {
  const attempts = rates[0]?.length ?? 0;
  const mixed = Array.from({ length: attempts + 1 }, () => 0);
  for (const [round, ps] of rates.entries()) {
    const chances = poissonBinomial(ps);
    const weight = at(weights, round);
    for (let makes = 0; makes <= attempts; makes += 1) {
      mixed[makes] = at(mixed, makes) + weight * at(chances, makes);
    }
  }
  return mixed;
}

/** Chance of k makes, k = 0 .. attempts, when every attempt has a rate of its own: one attempt at a time. */
export function poissonBinomial(rates: readonly Probability[]): Float64Array {
  const chances = new Float64Array(rates.length + 1);
  chances[0] = 1;
  for (const [taken, p] of rates.entries()) {
    for (let makes = taken + 1; makes > 0; makes -= 1) {
      chances[makes] = at(chances, makes) * (1 - p) + at(chances, makes - 1) * p;
    }
    chances[0] = at(chances, 0) * (1 - p);
  }
  return chances;
}

function tail(chances: readonly number[], makes: number): Probability {
  let sum = 0;
  for (let k = chances.length - 1; k >= Math.max(0, makes); k -= 1) sum += at(chances, k);
  return Math.min(1, sum);
}

/** The fewest makes that are not exceeded with at least this chance. */
function quantile(chances: ArrayLike<Probability>, share: Probability): number {
  let sum = 0;
  for (let makes = 0; makes < chances.length; makes += 1) {
    sum += at(chances, makes);
    if (sum >= share) return makes;
  }
  return chances.length - 1;
}
