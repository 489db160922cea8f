import type {
  CardId,
  EventId,
  GameId,
  GroupId,
  PairId,
  RoundId,
  SessionId,
  ShooterId,
} from '../basics/ids.ts';
import type { EpochMs, IsoDate, Seconds } from '../basics/units.ts';
import type { Card, Stop } from '../court/cards.ts';
import type { RuleSet } from '../court/ruleSets.ts';
import type { CourtPoint, ShotKind, SpotName } from '../court/spots.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import type { ClockSetting, PressureSetup, UsualPressure } from '../pressure/ingredients.ts';
import type { BodyCheck } from '../pressure/ladder.ts';
import type {
  Condition,
  Ending,
  EntryWay,
  GroupTurns,
  Hand,
  MissSide,
  PairOrder,
  PausedBy,
  Units,
} from './events.ts';

/* What the log adds up to. All of it is a cache: drop it, fold the log again, and it is back. */

/** The person whose shots are logged. */
export interface Shooter {
  readonly id: ShooterId;
  readonly name: string;
  readonly hand: Hand;
  readonly rules: RuleSet;
  readonly units: Units;
  /** From the invented season. */
  readonly demo: boolean;
  /** Left out where nobody told. */
  readonly under18?: boolean;
  /** When an adult allowed small favours as stakes; left out where none did. */
  readonly favoursSince?: EpochMs;
}

/** A mix of shots, kept at some moment; only the shares of the weights count. */
export interface KeptMix {
  readonly mix: readonly { readonly spot: SpotName; readonly shot: ShotKind; readonly weight: number }[];
  /** As it was usually met by then; left out where it was not kept yet. */
  readonly pressure?: UsualPressure;
  readonly at: EpochMs;
}

/** One visit to the court. */
export interface Session {
  readonly id: SessionId;
  readonly shooter: ShooterId;
  readonly date: IsoDate;
  /** `2026-11-25/1` = the first visit of that day; or a file's own word for it. */
  readonly label: string;
  /** Rounds started in it. */
  readonly rounds: number;
  /** What the shooter said of their body; left out where nobody was asked. */
  readonly body?: BodyCheck & { readonly at: EpochMs };
}

/** One thing noted in a round: a shot, a count for a stop, or a turn the shot clock took. */
export type Entry =
  | {
      readonly kind: 'shot';
      readonly id: EventId;
      readonly at: EpochMs;
      readonly stop: number;
      readonly made: boolean;
      readonly side: MissSide | null;
    }
  | {
      readonly kind: 'count';
      readonly id: EventId;
      readonly at: EpochMs;
      readonly stop: number;
      readonly makes: number;
      readonly attempts: number;
    }
  | { readonly kind: 'expired'; readonly id: EventId; readonly at: EpochMs; readonly stop: number };

/** Makes of attempts for one spot and kind of shot. */
export interface Cell {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  readonly makes: number;
  readonly attempts: number;
}

/** The game of several shooters that a round is part of. */
export interface RoundGroup {
  readonly id: GroupId;
  /** From 1, in the order they shoot. */
  readonly place: number;
  readonly turns: GroupTurns;
  /** Whether the order was drawn, by the seed of the round. */
  readonly coin?: boolean;
}

/** One card, played once from start to finish, in one condition. */
export interface Round {
  readonly id: RoundId;
  readonly shooter: ShooterId;
  readonly session: SessionId;
  /** The day and the order are the session's and the round's own, from a file or from the court. */
  readonly date: IsoDate;
  /** Number in the session, from 1; or the file's own word for it. */
  readonly label: string;
  readonly startedAt: EpochMs;
  readonly condition: Condition;
  /** What was played, in words. */
  readonly game: string;
  readonly stops: readonly Stop[];
  readonly card: CardId | null;
  readonly entry: EntryWay;
  /** Shots taken in the session before this round; null where unknown. */
  readonly first: number | null;
  readonly nerves: number | null;
  readonly pair: { readonly id: PairId; readonly place: 1 | 2 } | null;
  readonly pressure: PressureSetup | null;
  /** The game it is part of, where several shooters play together. */
  readonly group: RoundGroup | null;
  readonly entries: readonly Entry[];
  readonly state: 'playing' | 'paused' | 'ended';
  /** Who paused it last; `interrupted` = the device took sound and clock away. Null while it is played. */
  readonly pausedBy: PausedBy | null;
  /** Time left on the round clock at the last entry, at a pause or at the end. */
  readonly clockLeft: Seconds | null;
  readonly ending: Ending | null;
  /** When it ended; the same moment as its last entry where that entry ended it. */
  readonly endedAt: EpochMs | null;
  /** Moments at which play stood still: paused, taken up again, opened again. Left out where there was none. */
  readonly breaks?: readonly EpochMs[];
  readonly nervesAfter: number | null;
  readonly effort: number | null;
  readonly note: string;
  /** Whether the shooter called it too much; left out where nobody was asked. */
  readonly tooMuch?: boolean;
  readonly settled: boolean;
  readonly imported: boolean;
}

/** A relaxed and a pressured round of one card, in the order the coin gave. */
export interface Pair {
  readonly id: PairId;
  readonly session: SessionId;
  readonly shooter: ShooterId;
  readonly seed: number;
  readonly order: PairOrder;
  readonly card: Card;
  readonly entry: EntryWay;
  readonly pressure: PressureSetup;
}

/** A game somebody made on this device, or brought in with a file. */
export interface OwnGame {
  readonly id: GameId;
  readonly name: string;
  readonly stops: readonly Stop[];
  readonly plan: GamePlan;
  readonly clock: ClockSetting | null;
  readonly crowd: boolean;
}

/** The log, added up. */
export interface Book {
  readonly shooters: ReadonlyMap<ShooterId, Shooter>;
  readonly removedShooters: ReadonlySet<ShooterId>;
  /** The mix each shooter's drop is worked out for, once it is kept. */
  readonly mixes: ReadonlyMap<ShooterId, KeptMix>;
  readonly ownSpots: ReadonlyMap<string, CourtPoint>;
  readonly cards: ReadonlyMap<CardId, Card>;
  readonly games: ReadonlyMap<GameId, OwnGame>;
  readonly sessions: ReadonlyMap<SessionId, Session>;
  /** Visits to the court by shooter and day. */
  readonly visits: ReadonlyMap<string, number>;
  readonly pairs: ReadonlyMap<PairId, Pair>;
  /** Rounds that are over or were left, in the order they were started. */
  readonly rounds: ReadonlyMap<RoundId, Round>;
  /** The one round being played or paused on this device; in a group the one whose turn it is. */
  readonly open: Round | null;
  /** The other rounds of its group, until their turn comes. */
  readonly waiting: ReadonlyMap<RoundId, Round>;
  /** Events of later versions, kept in the log and skipped here. */
  readonly skipped: number;
}

export const EMPTY_BOOK: Book = {
  shooters: new Map(),
  removedShooters: new Set(),
  mixes: new Map(),
  ownSpots: new Map(),
  cards: new Map(),
  games: new Map(),
  sessions: new Map(),
  visits: new Map(),
  pairs: new Map(),
  rounds: new Map(),
  open: null,
  waiting: new Map(),
  skipped: 0,
};
