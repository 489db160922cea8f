import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import { attemptsOn, type Stop } from '../court/cards.ts';
import type { Ability } from '../games/solver.ts';
import type { Moment } from '../log/begin.ts';
import type { Book, Round } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import { roundCells, roundTally } from '../log/roundCells.ts';
import { abilityOn, chanceOfAtLeast, chooseMark, forecast } from '../stats/ability.ts';
import { cellKey, cellsOf } from '../stats/drop.ts';
import { fixedLength } from '../stats/fixedLength.ts';
import { oldestThatCounts } from '../stats/lately.ts';
import { shotGroup } from '../stats/shotGroups.ts';
import { recordOf } from './recordOf.ts';

/* What the shooter's own record says of the next round. */

const known = new WeakMap<Book['rounds'], Map<string, Ability>>();

/** Make rates on a card for a round that is started on a day; asked again about the same book it is not worked out anew. */
export function abilityNow(
  book: Book,
  shooter: ShooterId,
  condition: Condition,
  stops: readonly Stop[],
  on: IsoDate,
): Ability {
  const answers = known.get(book.rounds) ?? new Map<string, Ability>();
  known.set(book.rounds, answers);
  const key = JSON.stringify([shooter, condition, on, stops]);
  const ability = answers.get(key) ?? abilityOn(recordOf(book, shooter), condition, stops, on);
  answers.set(key, ability);
  return ability;
}

/**
 * Make rates on a round's card as they could be told before it.
 *
 * @param stops other stops than those of the card: for each shot of a game one
 */
export function abilityBefore(
  book: Pick<Book, 'rounds'>,
  { shooter, condition, stops: card, date, startedAt }: Round,
  stops: readonly Stop[] = card,
): Ability {
  return abilityOn(recordOf(book, shooter, startedAt), condition, stops, date);
}

/** Makes to be expected on a card. */
export interface RoundForecast {
  readonly attempts: number;
  /** The whole number nearest to the mean. */
  readonly about: number;
  /** Makes that hold the middle 80 %. */
  readonly low: number;
  readonly high: number;
}

/** A forecast for a round that is not started yet. */
export interface ForecastNow extends RoundForecast {
  /** What it rests on: such shots of the last half year; none of them, only older ones; or no such shot at all. */
  readonly rests: 'record' | 'faded' | 'nothing';
}

/** What the shooter's record says of a round that is started now. */
export function roundForecast(
  book: Book,
  shooter: ShooterId,
  condition: Condition,
  stops: readonly Stop[],
  now: Pick<Moment, 'at' | 'zone'>,
): ForecastNow {
  const on = isoDateAt(now.at, now.zone);
  const ability = abilityNow(book, shooter, condition, stops, on);
  return { ...told(ability, stops), rests: restsOn(recordOf(book, shooter), stops, on) };
}

/**
 * What could be said of a round before it, from the log as it was then. Null for a round whose card was not shot to its
 * end, or whose game could end anywhere, which no forecast for the card can be held against, and for one from a file.
 */
export function forecastBefore(book: Book, round: Round): RoundForecast | null {
  if (round.imported || !fixedLength(round)) return null;
  if (roundTally(round).attempts !== attemptsOn(round.stops)) return null;
  return told(abilityBefore(book, round), round.stops);
}

function told(ability: Ability, stops: readonly Stop[]): RoundForecast {
  const { mean, range } = forecast(ability);
  return { attempts: attemptsOn(stops), about: Math.round(mean), ...range };
}

/** Shots of a group tell of each other; others hardly do. */
function restsOn(record: readonly Round[], stops: readonly Stop[], on: IsoDate): ForecastNow['rests'] {
  const groups = new Set(stops.map(({ spot, shot }) => shotGroup(spot, shot)));
  const alike = ({ spot, shot }: Pick<Stop, 'spot' | 'shot'>): boolean => groups.has(shotGroup(spot, shot));
  if (![...cellsOf(record).values()].some(alike)) return 'nothing';
  const oldest = oldestThatCounts(on);
  let rests: ForecastNow['rests'] = 'nothing';
  for (const round of record.toReversed()) {
    // Stops first: most rounds are told apart without adding them up.
    if (round.date > on || !round.stops.some(alike) || !roundCells(round).some(alike)) continue;
    if (round.date >= oldest) return 'record';
    rests = 'faded';
  }
  return rests;
}

/** "about 46 in 100", rounded to what a forecast can bear; never 0 or 100. */
export function inHundred(chance: Probability): number {
  return Math.min(99, Math.max(1, Math.round(chance * 100)));
}

/** The marks of a card for one shooter. */
export interface Marks {
  /** Shots on the record from the spots of this card, taken the same way. */
  readonly shots: number;
  /** Chance of at least so many makes. */
  chance(makes: number): Probability;
  /** The makes whose chance lies nearest to the wanted one. */
  nearest(wanted: Probability): number;
}

/** What each mark on this card is worth for a pressured round that the shooter starts now. */
export function marksFor(
  book: Book,
  shooter: string,
  stops: readonly Stop[],
  now: Pick<Moment, 'at' | 'zone'>,
): Marks {
  const ability = abilityNow(book, shooter, 'pressured', stops, isoDateAt(now.at, now.zone));
  return {
    shots: shotsOnRecord(book, shooter, stops),
    chance: (makes) => chanceOfAtLeast(ability, makes),
    nearest: (wanted) => chooseMark(ability, wanted).makes,
  };
}

export function shotsOnRecord(book: Book, shooter: string, stops: readonly Stop[]): number {
  const cells = cellsOf(recordOf(book, shooter));
  const onCard = new Set(stops.map(({ spot, shot }) => cellKey(spot, shot)));
  let shots = 0;
  for (const key of onCard) {
    const cell = cells.get(key);
    if (cell) shots += cell.relaxed.attempts + cell.pressured.attempts;
  }
  return shots;
}
