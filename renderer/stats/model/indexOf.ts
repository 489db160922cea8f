import { addDays, isoWeekName } from '../../basics/days.ts';
import { present } from '../../basics/invariant.ts';
import type { Points } from '../../basics/units.ts';
import type { Tally } from '../../log/roundCells.ts';
import type { Ingredient } from '../../pressure/ingredients.ts';
import type { ByCondition } from '../drop.ts';
import { at } from '../matrix.ts';
import { ABOUT_SAME } from '../reading.ts';
import { shotGroup, type ShotGroup } from '../shotGroups.ts';
import type {
  Change,
  ChokeIndex,
  IndexGroup,
  IndexIngredient,
  IndexPlace,
  IndexWeek,
  Overall,
  Span,
} from './chokeIndex.ts';
import { sharesOfMost } from './dearest.ts';
import { type Estimate, estimateOf, pointsOf, shareOf } from './estimate.ts';
import { type ModelData, UNKNOWN_INGREDIENTS } from './modelData.ts';
import { mixOf, type Reference } from './reference.ts';
import { type Posterior, weeksWithShots } from './standardise.ts';

/** Below this relaxed make rate a ratio swings with every shot and is not told. */
const LEAST_RATE_FOR_RATIO = 0.2;
/** A drop beyond this many points is worth naming by its chance. */
const NOTABLE: Points = 2;

export type Figures = Omit<ChokeIndex, 'kind' | 'usual' | 'hyper' | 'seed' | 'pulled' | 'notes'>;

/** Sums the draws up to the figures of the index. */
export function figuresOf(data: ModelData, posterior: Posterior, reference: Reference): Figures {
  const { relaxed, pressured, placeRelaxed, placePressured } = posterior;
  const shot = [...weeksWithShots(data)];
  const shotWeeks = shot.reduce((sum, one) => sum + one, 0);
  const weekShares = Float64Array.from(shot, (one) => one / shotWeeks);
  const calm = weighted(relaxed, weekShares);
  const tense = weighted(pressured, weekShares);
  const relaxedRate = mean(calm);
  const last = posterior.weeks - 1;
  return {
    overall: overallOf(difference(calm, tense)),
    relaxed: 100 * relaxedRate,
    pressured: 100 * mean(tense),
    spans: spansOf(calm, tense),
    weeks: weeksOf(data, posterior, shot),
    places: placesOf(data, posterior, reference),
    groups: groupsOf(data, placeRelaxed, placePressured, reference),
    ingredients: ingredientsOf(data, posterior),
    ratio: relaxedRate < LEAST_RATE_FOR_RATIO ? null : ratioOf(calm, tense),
    logit: estimateOf(posterior.logit),
    change: last === 0 ? null : changeBetween(data, posterior, 0, last),
    seen: reference.seen,
    mix: mixOf(data, reference),
  };
}

/**
 * How far the drop moved from one week to another, weeks counted from the first.
 *
 * @throws InvariantError where the record has no such week
 */
export function changeBetween(
  { weeks }: Pick<ModelData, 'weeks'>,
  posterior: Posterior,
  from: number,
  to: number,
): Change {
  const drop = (week: number): Float64Array => {
    present(week >= 0 && week < posterior.weeks ? week : null, `week ${week} of the record`);
    return difference(
      rowOf(posterior.relaxed, week, posterior.draws),
      rowOf(posterior.pressured, week, posterior.draws),
    );
  };
  const name = (week: number): string => isoWeekName(addDays(weeks.first, 7 * week));
  return { from: name(from), to: name(to), ...pointsOf(difference(drop(to), drop(from))) };
}

function overallOf(drop: Float64Array): Overall {
  return {
    ...pointsOf(drop),
    probabilityOver2: shareOf(drop, (one) => 100 * one > NOTABLE),
    probabilitySame: shareOf(drop, (one) => 100 * Math.abs(one) < ABOUT_SAME),
  };
}

function weeksOf(data: ModelData, posterior: Posterior, shot: readonly number[]): IndexWeek[] {
  const { sessions, cells } = data;
  const shots = shot.map(() => ({ relaxed: 0, pressured: 0 }));
  for (let session = 0; session < sessions.count; session += 1) {
    const week = present(shots[at(sessions.week, session)], 'a week of the record');
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      week[cells.pressured[cell] === 1 ? 'pressured' : 'relaxed'] += at(cells.attempts, cell);
    }
  }
  return shots.map((ofWeek, week) => {
    const calm = rowOf(posterior.relaxed, week, posterior.draws);
    const tense = rowOf(posterior.pressured, week, posterior.draws);
    const monday = addDays(data.weeks.first, 7 * week);
    return {
      week: isoWeekName(monday),
      monday,
      relaxed: 100 * mean(calm),
      pressured: 100 * mean(tense),
      spans: spansOf(calm, tense),
      ...pointsOf(difference(calm, tense)),
      shots: ofWeek,
      empty: shot[week] === 0,
    };
  });
}

/** In percent. */
function spansOf(calm: Float64Array, tense: Float64Array): ByCondition<Span> {
  const span = (rates: Float64Array): Span => {
    const { low, high } = estimateOf(rates);
    return { low: 100 * low, high: 100 * high };
  };
  return { relaxed: span(calm), pressured: span(tense) };
}

function placesOf(data: ModelData, posterior: Posterior, { weights }: Reference): IndexPlace[] {
  const { cells, places } = data;
  const raw = places.map((): ByCondition<{ makes: number; attempts: number }> => ({
    relaxed: { makes: 0, attempts: 0 },
    pressured: { makes: 0, attempts: 0 },
  }));
  for (let cell = 0; cell < cells.count; cell += 1) {
    const ofPlace: ByCondition<Tally & { makes: number; attempts: number }> = present(
      raw[at(cells.place, cell)],
      'place',
    );
    const tally = ofPlace[cells.pressured[cell] === 1 ? 'pressured' : 'relaxed'];
    tally.makes += at(cells.makes, cell);
    tally.attempts += at(cells.attempts, cell);
  }
  const known: IndexPlace[] = [];
  for (const [index, { spot, shot }] of places.entries()) {
    const weight = at(weights, index);
    if (weight === 0) continue;
    const calm = rowOf(posterior.placeRelaxed, index, posterior.draws);
    const tense = rowOf(posterior.placePressured, index, posterior.draws);
    known.push({
      spot,
      shot,
      weight,
      raw: present(raw[index], 'place'),
      relaxed: 100 * mean(calm),
      pressured: 100 * mean(tense),
      ...pointsOf(difference(calm, tense)),
    });
  }
  return known;
}

function groupsOf(
  { places }: ModelData,
  relaxed: Float64Array,
  pressured: Float64Array,
  { weights }: Reference,
): IndexGroup[] {
  const groups = places.map(({ spot, shot }) => shotGroup(spot, shot));
  const order: readonly ShotGroup[] = ['threes', 'mid-range', 'free-throws', 'own'];
  const found: { group: ShotGroup; weight: number; drops: Float64Array }[] = [];
  for (const group of order) {
    const own = weights.map((weight, place) => (groups[place] === group ? weight : 0));
    const weight = own.reduce((sum, one) => sum + one, 0);
    if (weight === 0) continue;
    const shares = own.map((one) => one / weight);
    found.push({ group, weight, drops: difference(weighted(relaxed, shares), weighted(pressured, shares)) });
  }
  const dearest = sharesOfMost(found.map(({ drops }) => drops));
  return found.map(({ group, weight, drops }, index) => ({
    group,
    weight,
    dearest: present(dearest[index], 'a share'),
    ...pointsOf(drops),
  }));
}

function ingredientsOf(
  { ingredients, cells }: ModelData,
  { ingredientCost, draws }: Posterior,
): IndexIngredient[] {
  const shots = ingredients.map(() => ({ on: 0, off: 0 }));
  for (let cell = 0; cell < cells.count; cell += 1) {
    const mask = at(cells.mask, cell);
    if (cells.pressured[cell] === 0 || mask === UNKNOWN_INGREDIENTS) continue;
    for (const [bit, count] of shots.entries()) {
      count[((mask >> bit) & 1) === 1 ? 'on' : 'off'] += at(cells.attempts, cell);
    }
  }
  const known: { ingredient: Ingredient; count: { on: number; off: number }; costs: Float64Array }[] = [];
  // Switched off in the model, they have no draws.
  if (ingredientCost.length === 0) return [];
  for (const [bit, ingredient] of ingredients.entries()) {
    const count = present(shots[bit], ingredient);
    if (count.on === 0 || count.off === 0) continue;
    known.push({ ingredient, count, costs: rowOf(ingredientCost, bit, draws) });
  }
  const dearest = sharesOfMost(known.map(({ costs }) => costs));
  return known
    .map(({ ingredient, count, costs }, index) => ({
      ingredient,
      shots: count,
      dearest: present(dearest[index], 'a share'),
      ...pointsOf(costs),
    }))
    .toSorted((a, b) => b.points - a.points);
}

function ratioOf(calm: Float64Array, tense: Float64Array): Estimate {
  return estimateOf(tense.map((one, draw) => one / at(calm, draw)));
}

/** The draws of one week, place or ingredient. */
function rowOf(rows: Float64Array, row: number, draws: number): Float64Array {
  return rows.subarray(row * draws, (row + 1) * draws);
}

/** Each draw's weighted sum. */
function weighted(rows: Float64Array, weights: Float64Array): Float64Array {
  const draws = rows.length / weights.length;
  const sums = new Float64Array(draws);
  for (const [row, weight] of weights.entries()) {
    if (weight === 0) continue;
    const from = row * draws;
    for (let draw = 0; draw < draws; draw += 1) {
      sums[draw] = (sums[draw] as number) + weight * (rows[from + draw] as number);
    }
  }
  return sums;
}

function difference(first: Float64Array, second: Float64Array): Float64Array {
  const apart = new Float64Array(first.length);
  for (let i = 0; i < apart.length; i += 1) apart[i] = (first[i] as number) - (second[i] as number);
  return apart;
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
