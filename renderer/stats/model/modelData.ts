import { addDays, isoWeek, parseIsoDate } from '../../basics/days.ts';
import { invariant, present } from '../../basics/invariant.ts';
import type { IsoDate } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { INGREDIENTS, type Ingredient, pressureLevel } from '../../pressure/ingredients.ts';
import { daysBetween, type Place } from '../dayTallies.ts';
import { CellBuilder, type CellColumns } from './cellBuilder.ts';
import { isFelt, type NervesLine } from './felt.ts';
import { UNKNOWN_DOSE } from './priors.ts';
import { placedSessions, type PlacedRound } from './sessionOrder.ts';

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
  readonly reason: 'no shot' | 'no such day' | 'no pressure felt';
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

/** The mask of a cell of which the ingredients are not known. */
export const UNKNOWN_INGREDIENTS = 0xffff;

/**
 * Adds one shooter's rounds up to cells: session, round, spot, kind of shot, condition and, where single shots were
 * noted, a stretch of the session. The order in which the rounds come changes nothing.
 *
 * @throws InvariantError where rounds of two shooters come together
 */
export function modelData(rounds: Iterable<Round>, options: DataOptions = {}): ModelData {
  const { sessions, leftOut } = sorted(rounds, options);
  const places = placesOf(sessions.flatMap(({ rounds: own }) => own));
  const ingredients = ingredientsSeen(sessions.flatMap(({ rounds: own }) => own));
  const builder = new CellBuilder(places);
  const start = new Uint32Array(sessions.length + 1);
  const week = new Uint16Array(sessions.length);
  const firstDate = sessions[0]?.date ?? '1970-01-05';
  const first = addDays(firstDate, 1 - isoWeek(firstDate).day);
  for (const [index, session] of sessions.entries()) {
    week[index] = Math.floor(daysBetween(first, session.date) / 7);
    for (const placed of session.rounds) {
      const { round } = placed;
      builder.add(placed, {
        pressured: round.condition === 'pressured',
        dose: doseOf(round),
        mask: maskOf(round, ingredients),
      });
    }
    builder.endSession();
    start[index + 1] = builder.count;
  }
  return {
    cells: builder.columns(),
    sessions: { count: sessions.length, dates: sessions.map(({ date }) => date), week, start },
    weeks: { count: sessions.length === 0 ? 0 : (week.at(-1) ?? 0) + 1, first },
    places,
    ingredients,
    leftOut,
  };
}

interface OneSession {
  readonly date: IsoDate;
  readonly rounds: readonly PlacedRound[];
}

function sorted(
  rounds: Iterable<Round>,
  { feltAbove }: DataOptions,
): { sessions: OneSession[]; leftOut: LeftOut[] } {
  const all = [...rounds];
  for (const { shooter } of all) invariant(shooter === all[0]?.shooter, 'rounds of one shooter');
  const leftOut = new Map<LeftOut['reason'], { rounds: Round['id'][]; shots: number }>();
  const leave = (reason: LeftOut['reason'], { round, attempts }: PlacedRound): void => {
    const sum = leftOut.get(reason) ?? { rounds: [], shots: 0 };
    sum.rounds.push(round.id);
    sum.shots += attempts;
    leftOut.set(reason, sum);
  };
  const sessions: OneSession[] = [];
  for (const session of placedSessions(all)) {
    // Placed before anything is left out: shots that are not counted tire all the same.
    const kept = session.filter((placed) => {
      const { round, attempts } = placed;
      if (attempts === 0) leave('no shot', placed);
      else if (parseIsoDate(round.date) === null) leave('no such day', placed);
      else if (feltAbove !== undefined && isFelt(round, feltAbove) === false)
        leave('no pressure felt', placed);
      else return true;
      return false;
    });
    const date = kept[0]?.round.date;
    if (date !== undefined) sessions.push({ date, rounds: kept });
  }
  const reasons = [...leftOut].map(([reason, sum]): LeftOut => ({ reason, ...sum }));
  return { sessions, leftOut: reasons.toSorted((a, b) => (a.reason < b.reason ? -1 : 1)) };
}

/** Pressure as a fraction of the highest level; 0.5 where it was not noted, as in a file. */
function doseOf({ condition, pressure }: Round): number {
  if (condition === 'relaxed') return 0;
  return pressure ? pressureLevel(pressure) / 5 : UNKNOWN_DOSE;
}

function ingredientsSeen(rounds: readonly PlacedRound[]): Ingredient[] {
  const seen = new Set<Ingredient>();
  for (const { round } of rounds) {
    if (round.condition === 'pressured') for (const one of round.pressure?.ingredients ?? []) seen.add(one);
  }
  return INGREDIENTS.filter((ingredient) => seen.has(ingredient));
}

function maskOf({ condition, pressure }: Round, ingredients: readonly Ingredient[]): number {
  if (condition === 'relaxed') return 0;
  if (!pressure) return UNKNOWN_INGREDIENTS;
  return pressure.ingredients.reduce((mask, one) => mask | (1 << ingredients.indexOf(one)), 0);
}

/** In an order of their own. */
function placesOf(rounds: readonly PlacedRound[]): Place[] {
  const found = new Map<string, Place>();
  for (const { round } of rounds) {
    for (const { spot, shot } of round.stops) {
      const key = `${spot}\n${shot}`;
      if (!found.has(key)) found.set(key, { spot, shot });
    }
  }
  return [...found.keys()].toSorted().map((key) => present(found.get(key), key));
}
