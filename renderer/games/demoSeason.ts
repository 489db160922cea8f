import { rngFromSeed, type Rng } from '../basics/chance.ts';
import { addDays, parseIsoDate } from '../basics/days.ts';
import { uuidV7, type DeviceId, type Id } from '../basics/ids.ts';
import { present } from '../basics/invariant.ts';
import type { EpochMs, IsoDate } from '../basics/units.ts';
import { attemptsOn, STANDARD_CARDS, type Card } from '../court/cards.ts';
import type { ShotKind, SpotName } from '../court/spots.ts';
import { conditionInPair, pairOrderFor } from '../log/begin.ts';
import type { LogEvent } from '../log/envelope.ts';
import type { Condition } from '../log/events.ts';
import { stamp, type Fact } from '../log/facts.ts';
import { ingredientsOf, type Mark, type PressureSetup } from '../pressure/ingredients.ts';
import { reach } from './reach.ts';
import { makeRate, simulateCard, simulateDay, type SimulatedShooter } from './simulate.ts';
import { solve } from './solver.ts';

/*
 * An invented season, to look around in: two people from a canteen kitchen who shoot after the lunch shift, with the
 * washing-up on the line. Ines trains under pressure three times a week and her drop shrinks; Tobi comes twice a week
 * and his stays.
 */

const WEEKS = 10;

interface Player {
  readonly name: string;
  readonly hand: 'right' | 'left';
  /** Weekdays shot on, 0 = Monday. */
  readonly days: readonly number[];
  readonly stake: string;
  /** Log-odds off the catch, off the dribble and at the line. */
  readonly skill: { readonly three: number; readonly pullUp: number; readonly line: number };
  /** Log-odds that pressure takes off in a week of the season, from 0. */
  readonly cost: (week: number) => number;
}

const PLAYERS: readonly Player[] = [
  {
    name: 'Ines (demo)',
    hand: 'right',
    days: [0, 2, 4],
    stake: 'Loser does the washing-up',
    skill: { three: -0.35, pullUp: -0.1, line: 1.1 },
    cost: (week) => 0.75 - 0.07 * week,
  },
  {
    name: 'Tobi (demo)',
    hand: 'left',
    days: [1, 4],
    stake: 'Loser buys the coffee',
    skill: { three: -0.6, pullUp: -0.3, line: 0.8 },
    cost: () => 0.35,
  },
];

/** Corners are a little harder than the rest. */
const SPOT_SHIFT: Readonly<Record<string, number>> = {
  'left-corner': -0.15,
  'right-corner': -0.05,
  top: 0.1,
};

/** Decides every shot of the season, so that it is the same one every time. */
const LUCK_SEED = 20;

/**
 * The invented season as events of the log, ending the day before `today`. The same day gives the same shots.
 *
 * @param seed decides the ids alone: a season loaded again has fresh ones, since the log takes each id once
 */
export function demoSeason(today: IsoDate, zone: number, device: DeviceId, seed: number): LogEvent[] {
  const desk = { zone, device, rng: rngFromSeed(LUCK_SEED), ids: rngFromSeed(seed) };
  const monday = firstMonday(today);
  return PLAYERS.flatMap((player) => playSeason(player, monday, today, desk));
}

/** The Monday ten whole weeks before the current week's. */
function firstMonday(today: IsoDate): IsoDate {
  const weekday = (new Date(present(parseIsoDate(today), 'a calendar day')).getUTCDay() + 6) % 7;
  return addDays(today, -weekday - 7 * WEEKS);
}

interface Desk {
  readonly zone: number;
  readonly device: DeviceId;
  readonly rng: Rng;
  readonly ids: Rng;
}

function playSeason(player: Player, monday: IsoDate, today: IsoDate, desk: Desk): LogEvent[] {
  const writer = writerAt(timeOn(monday, 8, desk.zone), desk);
  const shooter = writer.newId<'shooter'>();
  const { name, hand } = player;
  writer.write({
    type: 'ShooterAdded',
    body: { shooter, name, hand, rules: 'FIBA', units: 'metric', demo: true },
  });
  for (let week = 0; week < WEEKS; week += 1) {
    for (const weekday of player.days) {
      const date = addDays(monday, 7 * week + weekday);
      if (date < today) playVisit(player, week, date, shooter, writer, desk);
    }
  }
  return writer.events;
}

function playVisit(
  player: Player,
  week: number,
  date: IsoDate,
  shooter: Id<'shooter'>,
  writer: Writer,
  desk: Desk,
): void {
  writer.moveTo(timeOn(date, 15, desk.zone));
  const session = writer.newId<'session'>();
  writer.write({ type: 'SessionStarted', body: { session, shooter, date } });
  const truth: SimulatedShooter = {
    rate: (spot, shot) => rateOf(player, week, spot, shot),
    pressureCost: player.cost(week),
    daySd: 0.22,
  };
  const day = simulateDay(truth, desk.rng);
  let first = 0;
  for (const cardId of ['threes-25', 'free-throws-20', 'pull-ups-10']) {
    const card = present(
      STANDARD_CARDS.find(({ id }) => id === cardId),
      'a standard card',
    );
    const seed = desk.rng.below(2 ** 31);
    const order = pairOrderFor(seed);
    const pair = writer.newId<'pair'>();
    const pressure = pressureFor(player, truth, card, seed);
    const tested = { ...truth, pressureCost: truth.pressureCost + extraCost(pressure) };
    writer.write({
      type: 'PairTossed',
      body: {
        pair,
        session,
        shooter,
        seed,
        order,
        card,
        entry: 'each-shot',
        pressure,
      },
    });
    for (const place of [1, 2] as const) {
      const condition = conditionInPair(order, place);
      const round = writer.newId<'round'>();
      const pressured = condition === 'pressured';
      const nerves = nervesIn(condition, week, player, desk.rng);
      writer.write({
        type: 'RoundStarted',
        body: {
          round,
          session,
          shooter,
          condition,
          card,
          entry: 'each-shot',
          first,
          nerves,
          pair: { id: pair, place },
          pressure: pressured ? pressure : null,
        },
      });
      const shots = simulateCard(tested, card.stops, pressured, day, desk.rng);
      const stops = card.stops.flatMap(({ attempts }, stop) => Array.from({ length: attempts }, () => stop));
      for (const [at, made] of shots.entries()) {
        writer.write({ type: 'ShotTaken', body: { round, stop: stops[at] ?? 0, made, side: null } }, 7_000);
      }
      writer.write({ type: 'RoundEnded', body: { round, why: 'played-out', clockLeft: null } });
      const during = Math.max(0, Math.min(10, nerves + Math.round(0.5 * desk.rng.normal())));
      const after = { nerves: during, effort: 4 + desk.rng.below(4) };
      writer.write({ type: 'AfterRated', body: { round, ...after, note: '' } }, 60_000);
      // What was on the line is done with by the next week; the last week's is still open.
      if (pressured && week < WEEKS - 1) writer.write({ type: 'StakeSettled', body: { round } });
      first += shots.length;
    }
  }
}

function rateOf({ skill }: Player, week: number, spot: SpotName, shot: ShotKind): number {
  const base = shot === 'free-throw' ? skill.line : shot === 'catch' ? skill.three : skill.pullUp;
  return base + (SPOT_SHIFT[spot] ?? 0) + 0.02 * week;
}

/** Nerves rise by about four under pressure at first, and by about two once it is familiar. */
function nervesIn(condition: Condition, week: number, player: Player, rng: Rng): number {
  const rise = condition === 'pressured' ? 2 + 3 * player.cost(week) : 0;
  return Math.max(0, Math.min(10, Math.round(2 + rise + rng.normal())));
}

/** The mark nearest to an even bet for someone who knows the truth. */
function evenMark(truth: SimulatedShooter, card: Card): Mark {
  const turns = attemptsOn(card.stops);
  const rates = card.stops.flatMap((stop) =>
    Array.from({ length: stop.attempts }, () => makeRate(truth, stop, true, { shift: 0 })),
  );
  let best: Mark = { makes: 1, chance: 1 };
  for (let makes = 1; makes <= turns; makes += 1) {
    const { chance } = solve(reach(makes, turns), { weights: [1], rates: [rates] }).standing([]);
    if (Math.abs(chance - 0.5) < Math.abs(best.chance - 0.5)) best = { makes, chance };
  }
  return best;
}

/** How often an ingredient is on, and what it costs beyond the rest, log-odds. */
const AT_TIMES = {
  clock: { share: 0.7, cost: 0.1 },
  crowd: { share: 0.6, cost: 0.15 },
  watchers: { share: 0.4, cost: 0.35 },
} as const;

/** The stake and the mark are always on; clock, crowd and watchers come and go. */
function pressureFor(player: Player, truth: SimulatedShooter, card: Card, seed: number): PressureSetup {
  const rng = rngFromSeed(seed);
  // The first draw is the coin that orders the pair.
  rng.chance(0.5);
  const on = (name: keyof typeof AT_TIMES) => rng.chance(AT_TIMES[name].share);
  const setup = {
    stake: player.stake,
    mark: evenMark(truth, card),
    clock: on('clock') ? ({ kind: 'round', seconds: attemptsOn(card.stops) * 10 } as const) : null,
    crowd: on('crowd'),
  };
  const ingredients = ingredientsOf(setup, { watchers: on('watchers'), coldStart: false });
  return { ...setup, ingredients, showChance: true, seed };
}

/** What a round's ingredients cost against the usual ones. */
function extraCost({ ingredients }: PressureSetup): number {
  return Object.entries(AT_TIMES).reduce(
    (sum, [name, { share, cost }]) =>
      sum + cost * ((ingredients.some((one) => one === name) ? 1 : 0) - share),
    0,
  );
}

/** Writes facts one after the other, each a little later than the last. */
interface Writer {
  readonly events: LogEvent[];
  newId<Kind extends string>(): Id<Kind>;
  moveTo(at: EpochMs): void;
  write(fact: Fact, later?: EpochMs): void;
}

function writerAt(start: EpochMs, { zone, device, ids }: Desk): Writer {
  let at = start;
  const events: LogEvent[] = [];
  const newId = <Kind extends string>(): Id<Kind> => uuidV7(at, ids.bytes());
  return {
    events,
    newId,
    moveTo: (next) => {
      at = next;
    },
    write: (fact, later = 2_000) => {
      at += later;
      events.push(...stamp([fact], { at, zone, device, newId }));
    },
  };
}

function timeOn(date: IsoDate, hour: number, zone: number): EpochMs {
  return present(parseIsoDate(date), 'a calendar day') + hour * 3_600_000 - zone * 60_000;
}
