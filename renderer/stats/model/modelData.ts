import { addDays, daysBetween, isoWeek } from '../../basics/days.ts';
import { invariant, present } from '../../basics/invariant.ts';
import { finish } from '../../basics/steps.ts';
import type { IsoDate, Probability } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { INGREDIENTS, type Ingredient } from '../../pressure/ingredients.ts';
import type { Place } from '../dayTallies.ts';
import { type CellColumns, emptyColumns } from './cellBuilder.ts';
import type { NervesLine } from './felt.ts';
import { ORDER_COLUMNS } from './orderCurve.ts';
import { type LeftOutReason, type SessionCells, sessionCells, UNKNOWN_INGREDIENTS } from './sessionCells.ts';
import { sessionsOf } from './sessionOrder.ts';

export { UNKNOWN_INGREDIENTS } from './sessionCells.ts';

/** One shooter's record as the model reads it: columns of numbers, in the order of sessions, rounds and places. */
export interface ModelData {
  readonly cells: CellColumns;
  readonly sessions: {
    readonly count: number;
    readonly dates: readonly IsoDate[];
    /** Week of each, from 0. Never falls. */
    readonly week: Uint16Array;
    /** Index of each one's first cell, and at the end the number of cells. */
    readonly start: Uint32Array;
  };
  /** Every calendar week from the first session to the last, also those without a shot. */
  readonly weeks: { readonly count: number; readonly first: IsoDate };
  readonly places: readonly Place[];
  /** Ingredients that were ever on, in their usual order; bit i of a cell's mask stands for the i-th. */
  readonly ingredients: readonly Ingredient[];
  /** By reason. */
  readonly leftOut: readonly LeftOut[];
}

/** Rounds that are not in the columns. */
export interface LeftOut {
  readonly reason: LeftOutReason;
  readonly rounds: readonly Round['id'][];
  readonly shots: number;
}

export interface DataOptions {
  /**
   * Given, pressured rounds in which nerves did not rise above this line are left out. By default they stay in: the
   * nerves come after the decision to shoot under pressure, so sorting by them would undo what the coin has made fair.
   */
  readonly feltAbove?: NervesLine;
}

/**
 * Adds one shooter's rounds up to cells: session, round, spot, kind of shot, condition and, where single shots were
 * noted, a stretch of the session. The order in which the rounds come changes nothing. After one more round only its own
 * session is added up anew.
 *
 * @throws InvariantError where rounds of two shooters come together
 */
export function modelData(rounds: Iterable<Round>, options: DataOptions = {}): ModelData {
  return finish(modelDataInSteps(rounds, options));
}

/**
 * The same in short steps, one for each session.
 *
 * @yields the share of the work that is done, 0 to 1
 * @throws InvariantError as {@link modelData} does
 */
export function* modelDataInSteps(
  rounds: Iterable<Round>,
  { feltAbove }: DataOptions = {},
): Generator<Probability, ModelData> {
  const all = [...rounds];
  for (const { shooter } of all) invariant(shooter === all[0]?.shooter, 'rounds of one shooter');
  const visits = sessionsOf(all);
  const sessions: SessionCells[] = [];
  for (const visit of visits) {
    sessions.push(sessionCells(visit, feltAbove));
    yield sessions.length / visits.length;
  }
  return joined(sessions);
}

function joined(all: readonly SessionCells[]): ModelData {
  const sessions = all.flatMap(({ date, ...rest }) => (date === null ? [] : [{ date, ...rest }]));
  const places = placesOf(sessions);
  const placeIndex = new Map(places.map((place, index) => [placeKey(place), index]));
  const seen = sessions.reduce((mask, { ingredients }) => mask | ingredients, 0);
  const ingredients = INGREDIENTS.filter((_, bit) => (seen >> bit) & 1);
  const masks = narrowing(ingredients);
  const columns = emptyColumns(sessions.reduce((sum, { cells }) => sum + cells.count, 0));
  const start = new Uint32Array(sessions.length + 1);
  const week = new Uint16Array(sessions.length);
  const firstDate = sessions[0]?.date ?? '1970-01-05';
  const first = addDays(firstDate, 1 - isoWeek(firstDate).day);
  let from = 0;
  for (const [index, { date, cells, places: own }] of sessions.entries()) {
    week[index] = Math.floor(daysBetween(first, date) / 7);
    const ownIndex = own.map((place) => placeIndex.get(placeKey(place)) ?? NaN);
    for (let cell = 0; cell < cells.count; cell += 1) {
      columns.place[from + cell] = ownIndex[cells.place[cell] as number] as number;
      columns.mask[from + cell] = masks[cells.mask[cell] as number] ?? UNKNOWN_INGREDIENTS;
    }
    columns.pressured.set(cells.pressured, from);
    columns.makes.set(cells.makes, from);
    columns.attempts.set(cells.attempts, from);
    columns.dose.set(cells.dose, from);
    columns.order.set(cells.order, from * ORDER_COLUMNS);
    from += cells.count;
    start[index + 1] = from;
  }
  return {
    cells: columns,
    sessions: { count: sessions.length, dates: sessions.map(({ date }) => date), week, start },
    weeks: { count: sessions.length === 0 ? 0 : (week.at(-1) ?? 0) + 1, first },
    places,
    ingredients,
    leftOut: leftOutOf(all),
  };
}

/** In an order of their own. */
function placesOf(sessions: readonly Pick<SessionCells, 'places'>[]): Place[] {
  const found = new Map<string, Place>();
  for (const { places } of sessions) for (const place of places) found.set(placeKey(place), place);
  return [...found.keys()].toSorted().map((key) => present(found.get(key), key));
}

function placeKey({ spot, shot }: Place): string {
  return `${spot}\n${shot}`;
}

/** For every mask over all ingredients the one over those that were ever on. */
function narrowing(ingredients: readonly Ingredient[]): number[] {
  const bits = ingredients.map((one) => INGREDIENTS.indexOf(one));
  return Array.from({ length: 1 << INGREDIENTS.length }, (_, mask) =>
    bits.reduce((sum, from, to) => sum | (((mask >> from) & 1) << to), 0),
  );
}

function leftOutOf(sessions: readonly Pick<SessionCells, 'leftOut'>[]): LeftOut[] {
  const sums = new Map<LeftOutReason, { rounds: Round['id'][]; shots: number }>();
  for (const { leftOut } of sessions) {
    for (const { reason, round, shots } of leftOut) {
      const sum = sums.get(reason) ?? { rounds: [], shots: 0 };
      sum.rounds.push(round);
      sum.shots += shots;
      sums.set(reason, sum);
    }
  }
  const reasons = [...sums].map(([reason, sum]): LeftOut => ({ reason, ...sum }));
  return reasons.toSorted((a, b) => (a.reason < b.reason ? -1 : 1));
}
