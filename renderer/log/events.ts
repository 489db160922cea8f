import * as v from 'valibot';

import { parseIsoDate } from '../basics/days.ts';
import { INGREDIENTS } from '../pressure/ingredients.ts';
import { RUNGS } from '../pressure/ladder.ts';
import { MOST_ATTEMPTS, MOST_STOPS } from '../court/cards.ts';
import { RULE_SETS } from '../court/ruleSets.ts';
import { SHOT_KINDS } from '../court/spots.ts';
import { GAME_PLAN, PLAYED_GAME } from './gameSchema.ts';

/*
 * What can stand in the log. An event is past tense, versioned and never edited; a correction is a new event.
 * To change one, add a new version of it beside the old one and teach the fold both.
 */

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const text = v.pipe(v.string(), v.maxLength(2000));
const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const rating = v.pipe(v.number(), v.minValue(0), v.maxValue(10));
const date = v.pipe(
  v.string(),
  v.check((day) => parseIsoDate(day) !== null, 'no calendar day'),
);
const seed = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(0xffffffff));

export const HANDS = ['right', 'left'] as const;
export const UNITS = ['metric', 'feet'] as const;
export const CONDITIONS = ['relaxed', 'pressured'] as const;
/** Where a miss went, as the shooter saw it. */
export const MISS_SIDES = ['short', 'long', 'left', 'right'] as const;
/** Shots tapped one by one, or a count for each stop ("3 of 5"). */
export const ENTRY_WAYS = ['each-shot', 'counts'] as const;
/** Why a round ended. `stopped` = the shooter chose to; `interrupted` = the device did, so there is no verdict. */
export const ENDINGS = ['played-out', 'time-up', 'stopped', 'interrupted'] as const;
/** `hidden` = the page went out of sight; `interrupted` = the device took sound and clock away. */
const PAUSES = ['asked', 'hidden', 'interrupted'] as const;
/** When the turn goes to the next shooter of a group. */
export const GROUP_TURNS = ['shot', 'stop', 'game'] as const;
export const PAIR_ORDERS = ['relaxed-first', 'pressured-first'] as const;

/** Seconds on the round clock as the entry was made, so that a round broken off goes on with the right time. */
const roundClock = v.exactOptional(v.nullable(v.number()));

const stop = v.object({
  spot: name,
  shot: v.picklist(SHOT_KINDS),
  attempts: v.pipe(count, v.minValue(1), v.maxValue(MOST_ATTEMPTS)),
});
const stops = v.pipe(v.array(stop), v.minLength(1), v.maxLength(MOST_STOPS), v.readonly());

const shooterFields = {
  name,
  hand: v.picklist(HANDS),
  rules: v.picklist(RULE_SETS),
  units: v.picklist(UNITS),
};

const clock = v.nullable(
  v.object({ kind: v.picklist(['shot', 'round']), seconds: v.pipe(finite, v.minValue(1)) }),
);

const pressure = v.object({
  ingredients: v.pipe(v.array(v.picklist(INGREDIENTS)), v.readonly()),
  stake: v.nullable(text),
  mark: v.nullable(v.object({ makes: count, chance: share })),
  game: v.exactOptional(v.nullable(PLAYED_GAME)),
  clock,
  crowd: v.boolean(),
  showChance: v.boolean(),
  /** The rung of the consequence ladder; missing in rounds from before there was one. */
  rung: v.exactOptional(v.picklist(RUNGS)),
  /** Shot for double or nothing, on what an earlier round left owed. */
  doubles: v.exactOptional(v.nullable(v.object({ round: id, times: v.picklist([1, 2]) }))),
  seed,
});

const card = v.object({ id, name, stops });

const turns = v.picklist(GROUP_TURNS);

const cell = v.pipe(
  v.object({
    spot: name,
    shot: v.picklist(SHOT_KINDS),
    makes: count,
    attempts: v.pipe(count, v.minValue(1)),
  }),
  v.check((row) => row.makes <= row.attempts, 'more makes than attempts'),
);

/** The body of every event this build knows, by `type`, all at version 1. */
export const BODIES = {
  ShooterAdded: v.object({ shooter: id, ...shooterFields, demo: v.boolean() }),
  ShooterChanged: v.object({ shooter: id, ...shooterFields }),
  ShooterRemoved: v.object({ shooter: id }),
  /** Whether a shooter is under age, told by themselves or by an adult. */
  AgeTold: v.object({ shooter: id, under18: v.boolean() }),
  /** An adult allowed a shooter under 18 small favours as stakes, or took that back. */
  FavoursAllowed: v.object({ shooter: id, allowed: v.boolean() }),
  /**
   * The mix of shots the drop is worked out for, and the pressure the shooter usually met by then, kept so that it does not
   * move with the record. Weights in any unit. The pressure was not kept at first.
   */
  MixKept: v.object({
    shooter: id,
    mix: v.pipe(
      v.array(v.object({ spot: name, shot: v.picklist(SHOT_KINDS), weight: v.pipe(finite, v.gtValue(0)) })),
      v.minLength(1),
      v.readonly(),
    ),
    pressure: v.exactOptional(
      v.object({ dose: share, ingredients: v.pipe(v.record(v.picklist(INGREDIENTS), share), v.readonly()) }),
    ),
  }),
  OwnSpotPlaced: v.object({ spot: name, x: finite, y: finite }),
  CardMade: v.object({ card: id, name, stops }),
  CardRemoved: v.object({ card: id }),
  /** A game of a shooter's own. Made again under the same id it is changed; rounds keep the game they were played by. */
  GameMade: v.object({ game: id, name, stops, plan: GAME_PLAN, clock, crowd: v.boolean() }),
  GameRemoved: v.object({ game: id }),
  SessionStarted: v.object({ session: id, shooter: id, date }),
  /** What the shooter said of their body before pressure was put on it; the latest answer of a visit stands. */
  BodyAsked: v.object({ session: id, sore: v.boolean(), ill: v.boolean(), unslept: v.boolean() }),
  /** Both rounds of a pair are laid down before the first shot, so the second cannot bend to the first. */
  PairTossed: v.object({
    pair: id,
    session: id,
    shooter: id,
    seed,
    order: v.picklist(PAIR_ORDERS),
    card,
    entry: v.picklist(ENTRY_WAYS),
    pressure,
  }),
  RoundStarted: v.object({
    round: id,
    session: id,
    shooter: id,
    condition: v.picklist(CONDITIONS),
    card,
    entry: v.picklist(ENTRY_WAYS),
    /** Shots already taken in the session; null where nobody counted. */
    first: v.nullable(count),
    nerves: v.nullable(rating),
    pair: v.nullable(v.object({ id, place: v.picklist([1, 2]) })),
    pressure: v.nullable(pressure),
    /** Rounds of several shooters who play one game together. `coin`: their order was drawn, by the seed of the round. */
    group: v.exactOptional(
      v.nullable(
        v.object({
          id,
          place: v.pipe(count, v.minValue(1)),
          turns,
          coin: v.exactOptional(v.boolean()),
        }),
      ),
    ),
  }),
  /** In a group the next shot is this round's. */
  TurnPassed: v.object({ round: id }),
  ShotTaken: v.object({
    round: id,
    stop: count,
    made: v.boolean(),
    side: v.nullable(v.picklist(MISS_SIDES)),
    clockLeft: roundClock,
  }),
  StopCounted: v.pipe(
    v.object({
      round: id,
      stop: count,
      makes: count,
      attempts: v.pipe(count, v.minValue(1)),
      clockLeft: roundClock,
    }),
    v.check((body) => body.makes <= body.attempts, 'more makes than attempts'),
  ),
  /** The shot clock ran out: the turn is lost in the game, but no ball left the hand, so no shot is on record. */
  TurnExpired: v.object({ round: id, stop: count }),
  EntryRetracted: v.object({ round: id, entry: id }),
  RoundPaused: v.object({
    round: id,
    why: v.picklist(PAUSES),
    clockLeft: v.nullable(finite),
  }),
  RoundResumed: v.object({ round: id }),
  RoundEnded: v.object({ round: id, why: v.picklist(ENDINGS), clockLeft: v.nullable(finite) }),
  /** The last entry of an ended round was taken back, so the round goes on. */
  RoundReopened: v.object({ round: id }),
  AfterRated: v.object({
    round: id,
    nerves: v.nullable(rating),
    effort: v.nullable(rating),
    note: text,
    /** The shooter's own word that a pressured round was too much; missing where nobody was asked. */
    tooMuch: v.exactOptional(v.boolean()),
  }),
  StakeSettled: v.object({ round: id }),
  StakeReopened: v.object({ round: id }),
  /** A round typed in from a file. `session` and `label` are the file's own words for them. */
  RoundImported: v.object({
    round: id,
    shooter: id,
    date,
    session: text,
    label: text,
    condition: v.picklist(CONDITIONS),
    game: text,
    cells: v.pipe(v.array(cell), v.minLength(1), v.readonly()),
    first: v.nullable(count),
    nerves: v.nullable(rating),
    note: text,
  }),
} as const;

export type EventType = keyof typeof BODIES;
export type Body<T extends EventType> = v.InferOutput<(typeof BODIES)[T]>;

export type Hand = (typeof HANDS)[number];
export type Units = (typeof UNITS)[number];
export type Condition = (typeof CONDITIONS)[number];
export type MissSide = (typeof MISS_SIDES)[number];
export type EntryWay = (typeof ENTRY_WAYS)[number];
export type Ending = (typeof ENDINGS)[number];
export type PausedBy = (typeof PAUSES)[number];
export type GroupTurns = (typeof GROUP_TURNS)[number];
export type PairOrder = (typeof PAIR_ORDERS)[number];
