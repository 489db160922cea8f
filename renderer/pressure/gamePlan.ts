import type { Probability, Seconds } from '../basics/units.ts';

/*
 * What a game is, as it stands in the log and in a file: plain values. What they mean is a rule (games/ruleOf.ts). The
 * stopping rule belongs to the record, so a round carries its game whole.
 */

/** Longest name of a game that somebody makes, in letters. */
export const LONGEST_GAME_NAME = 60;

/** Trips to the free-throw line. One-and-one: the second shot is taken only after a make. */
export const TRIP_KINDS = ['one-and-one', 'two shots', 'three shots'] as const;
export type TripKind = (typeof TRIP_KINDS)[number];

/** Which balls of a rack count double: none, the last of each rack, or one in five by the toss of a coin. */
export const DOUBLE_BALLS = ['none', 'last', 'coin'] as const;
export type DoubleBalls = (typeof DOUBLE_BALLS)[number];

/** Who is played against in a duel. */
export type Opponent =
  /** Another shooter on this court, shot for shot. */
  | { readonly kind: 'shooter' }
  /** One's own round of an earlier day, shot for shot as it went. */
  | { readonly kind: 'own round'; readonly round: string; readonly made: readonly boolean[] }
  /** Nobody real: makes drawn at this rate. */
  | { readonly kind: 'drawn'; readonly rate: Probability };

export type GamePlan =
  /** So many makes on the card. */
  | { readonly family: 'reach'; readonly needed: number }
  /** So many in a row, within so many shots. */
  | { readonly family: 'streak'; readonly row: number; readonly most: number }
  /** To a score: points up for a make, down for a miss. */
  | {
      readonly family: 'race';
      readonly to: number;
      readonly up: number;
      readonly down: number;
      readonly floor: number | null;
      readonly lost: number | null;
      readonly most: number;
    }
  /** So many makes before so many misses. */
  | { readonly family: 'lives'; readonly needed: number; readonly lives: number }
  /** Free throws with the score and the time as a scene. */
  | {
      readonly family: 'trips';
      readonly kind: TripKind;
      readonly trips: number;
      readonly needed: number;
      /** `down`: points behind; `left`: on the clock. */
      readonly scene: { readonly down: number; readonly left: Seconds } | null;
    }
  /** Racks of balls; each stop of the card is a rack. */
  | { readonly family: 'racks'; readonly double: DoubleBalls; readonly needed: number }
  /** One shot at a time from a clock that starts anywhere between two moments. */
  | {
      readonly family: 'last shot';
      readonly needed: number;
      readonly from: Seconds;
      readonly to: Seconds;
    }
  /** Step by step: so many of so many on each stop of the card, set back after falling short. */
  | {
      readonly family: 'climb';
      /** Makes asked for at each stop. */
      readonly makes: readonly number[];
      readonly back: number;
      readonly most: number;
    }
  /** Against someone, shot for shot. */
  | {
      readonly family: 'duel';
      readonly against: Opponent;
      readonly headStart: number;
      readonly extraPairs: number;
    };

/** A game as it is played in a round. */
export interface PlayedGame {
  readonly name: string;
  readonly plan: GamePlan;
  /** Chance of winning it as it stood before the first shot; null where nobody worked it out. */
  readonly chance: Probability | null;
}

export type GameFamily = GamePlan['family'];
