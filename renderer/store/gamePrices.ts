import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import { CATALOGUE } from '../games/catalogue.ts';
import { fairest, ladderOf, type PricedPlan } from '../games/fair.ts';
import type { Length } from '../games/length.ts';
import { ruleOf, type Game } from '../games/ruleOf.ts';
import { solve, type Ability, type Solved, type TimeLeft } from '../games/solver.ts';
import type { Moment } from '../log/begin.ts';
import type { Book, OwnGame } from '../log/book.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import type { ClockSetting } from '../pressure/ingredients.ts';
import { abilitiesFromDays } from '../stats/ability.ts';
import { dayTallies, type Place } from '../stats/dayTallies.ts';
import { cellKey } from '../stats/drop.ts';
import { oldestThatCounts } from '../stats/lately.ts';
import { timeFor, type Pace } from '../stats/pace.ts';
import { clockPace } from './clockPace.ts';
import { recordOf } from './recordOf.ts';
import { gameAbility } from './gameChances.ts';

/* What any number of games are worth to one shooter who starts them now. */

/** The part of a game that decides what it is worth. */
export type Priceable = Pick<OwnGame, 'plan' | 'stops' | 'clock'>;

/** A game as it stands before the first shot. */
export interface Price {
  readonly chance: Probability;
  /** In turns of the game: in a duel both shooters' together. */
  readonly length: Length;
  /** Where a clock can end it; else null. */
  readonly inTime: {
    /** How it would go if there were time enough. */
    readonly enough: Pick<Price, 'chance' | 'length'>;
    /** By which the time was reckoned: the shooter's own, or as long as that is not known a usual one. */
    readonly pace: Pace;
  } | null;
}

/** A game ready to be asked anything. */
export interface WorkedOut extends Game {
  readonly solved: Solved;
  readonly ability: Ability;
  /** Chances that time lasts, turn by turn; undefined where it does. */
  readonly time: TimeLeft | undefined;
}

export interface GamePrices {
  /**
   * @param seed decides which balls count double, where a coin does
   * @param strength every shot of the shooter's at this rate, instead of their own
   * @throws InvariantError where the game cannot be played: ask `gameFault` first
   */
  workOut(game: Priceable, seed?: number, strength?: Probability): WorkedOut;
  price(game: Priceable, seed?: number): Price;
  /** The same game, made as hard as is wanted, as near as its steps allow. */
  fair(game: Priceable, wanted: Probability, seed?: number): PricedPlan;
}

/**
 * What the record says is worked out once for every spot, not once for every game, and kept as long as the book's rounds
 * stay the same.
 */
export function gamePrices(book: Book, shooter: ShooterId, now: Pick<Moment, 'at' | 'zone'>): GamePrices {
  const on = isoDateAt(now.at, now.zone);
  const record = recordFor(book, shooter, on);

  function workOut({ plan, stops, clock }: Priceable, seed = 0, strength?: Probability): WorkedOut {
    const game = ruleOf(plan, stops, seed);
    const first = (shots: readonly Stop[]): Ability =>
      strength === undefined ? record.abilityOn(shots) : { weights: [1], rates: [shots.map(() => strength)] };
    const ability = gameAbility(plan, game, stops, first, record.abilityOn);
    const time = timeOn(plan, clock, record.pace, game.rule.longest);
    return { ...game, solved: solve(game.rule, ability, time), ability, time };
  }

  function priceOf(game: Priceable, seed: number): Price {
    const { solved, time } = workOut(game, seed);
    if (time === undefined) return { ...told(solved), inTime: null };
    const enough = told(workOut({ ...game, clock: null }, seed).solved);
    return { ...told(solved), inTime: { enough, pace: record.pace() } };
  }

  function chanceOf(game: Priceable, seed?: number): Probability {
    return workOut(game, seed).solved.standing([]).chance;
  }

  return {
    workOut,
    price: (game, seed = 0) => {
      const before = record.told.get(game.plan);
      if (before && sameGame(before, game, seed)) return before.price;
      const price = priceOf(game, seed);
      record.told.set(game.plan, { ...game, seed, price });
      return price;
    },
    fair: (game, wanted, seed) =>
      fairest(ladderOf(game.plan, game.stops), (plan) => chanceOf({ ...game, plan }, seed), wanted),
  };
}

function told(solved: Solved): Pick<Price, 'chance' | 'length'> {
  return { chance: solved.standing([]).chance, length: solved.length([]) };
}

/**
 * Chances that a round clock lasts; a clock for each shot ends no game. In a duel an opponent who is not on court takes
 * no time, and with one who is, nobody's pace tells.
 */
function timeOn(
  plan: GamePlan,
  clock: ClockSetting | null,
  pace: () => Pace,
  longest: number,
): TimeLeft | undefined {
  if (clock?.kind !== 'round') return undefined;
  if (plan.family !== 'duel') return timeFor(pace(), clock.seconds, longest, 'start');
  if (plan.against.kind === 'shooter') return undefined;
  return timeFor(pace(), clock.seconds, Math.ceil(longest / 2), 'start').flatMap((turn) => [turn, 1]);
}

interface Told extends Priceable {
  readonly seed: number;
  readonly price: Price;
}

function sameGame(one: Told, { stops, clock }: Priceable, seed: number): boolean {
  return one.stops === stops && one.clock === clock && one.seed === seed;
}

interface RecordNow {
  readonly abilityOn: (stops: readonly Stop[]) => Ability;
  readonly pace: () => Pace;
  /** What was priced before, as long as its plan is kept: those of the list are. */
  readonly told: WeakMap<GamePlan, Told>;
}

const known = new WeakMap<Book['rounds'], Map<string, RecordNow>>();

function recordFor(book: Book, shooter: ShooterId, on: IsoDate): RecordNow {
  const records = known.get(book.rounds) ?? new Map<string, RecordNow>();
  known.set(book.rounds, records);
  const key = `${on} ${shooter}`;
  const record = records.get(key) ?? readRecord(book, shooter, on);
  records.set(key, record);
  return record;
}

function readRecord(book: Book, shooter: ShooterId, on: IsoDate): RecordNow {
  const rounds = recordOf(book, shooter);
  const oldest = oldestThatCounts(on);
  const days = dayTallies(rounds.filter(({ date }) => date >= oldest && date <= on));
  let places = new Map<string, Place>();
  let abilityOn: RecordNow['abilityOn'] | null = null;
  let pace: Pace | null = null;
  const learn = (stops: readonly Stop[]): RecordNow['abilityOn'] => {
    const fresh = stops.filter(({ spot, shot }) => !places.has(cellKey(spot, shot)));
    if (abilityOn !== null && fresh.length === 0) return abilityOn;
    places = new Map([
      ...places,
      ...fresh.map(({ spot, shot }) => [cellKey(spot, shot), { spot, shot }] as const),
    ]);
    abilityOn = abilitiesFromDays(days, 'pressured', [...places.values()], on);
    return abilityOn;
  };
  return {
    abilityOn: (stops) => {
      // The list asks for all of these, so they are learnt together.
      if (abilityOn === null) learn([...CATALOGUE, ...book.games.values()].flatMap((game) => game.stops));
      return learn(stops)(stops);
    },
    told: new WeakMap(),
    pace: () => (pace ??= clockPace(rounds, on)),
  };
}
