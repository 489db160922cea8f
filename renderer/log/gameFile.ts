import * as v from 'valibot';

import type { CourtPoint } from '../court/spots.ts';
import { LONGEST_GAME_NAME } from '../pressure/gamePlan.ts';
import type { OwnGame } from './book.ts';
import { BODIES } from './events.ts';

/*
 * A game as a file to hand on: JSON with a kind and a version of its own. It comes from anywhere, so nothing in it is
 * believed before it is checked, and names are stripped of what is not seen.
 */

const KIND = 'loud-gym-game';
const VERSION = 1;
/** In letters; a game of 30 stops takes about 3,000. */
export const LONGEST_FILE = 50_000;

/** A game out of a file, with the spots of its maker's own that it is shot from. */
export interface SharedGame extends Omit<OwnGame, 'id'> {
  readonly spots: readonly ({ readonly spot: string } & CourtPoint)[];
}

const name = v.pipe(
  v.string(),
  v.transform(seen),
  v.minLength(1, 'is empty'),
  v.maxLength(LONGEST_GAME_NAME, `is longer than ${LONGEST_GAME_NAME} letters`),
);
const { stops, plan, clock, crowd } = BODIES.GameMade.entries;
const metres = v.pipe(v.number(), v.finite(), v.minValue(-50), v.maxValue(50));

const GAME = v.object({
  name,
  stops: v.pipe(
    stops,
    v.transform((all) => all.map((stop) => ({ ...stop, spot: seen(stop.spot) }))),
    v.check(
      (all) => all.every(({ spot }) => spot.length >= 1 && spot.length <= LONGEST_GAME_NAME),
      'has a spot without a name, or with too long a one',
    ),
  ),
  plan,
  clock,
  crowd,
  spots: v.pipe(v.array(v.object({ spot: name, x: metres, y: metres })), v.maxLength(30)),
});

/** What a file holds, or why it cannot be taken: a sentence to show. */
export type GameReading =
  { readonly sound: true; readonly game: SharedGame } | { readonly sound: false; readonly reason: string };

/** @param ownSpots where the spots of the maker's own lie; those the game is not shot from stay at home */
export function writeGameFile(game: Omit<OwnGame, 'id'>, ownSpots: ReadonlyMap<string, CourtPoint>): string {
  const used = new Set(game.stops.map(({ spot }) => spot));
  const spots = [...ownSpots].flatMap(([spot, { x, y }]) => (used.has(spot) ? [{ spot, x, y }] : []));
  const { name: called, stops: shots, plan: rule, clock: time, crowd: loud } = game;
  return `${JSON.stringify({ kind: KIND, version: VERSION, name: called, stops: shots, plan: rule, clock: time, crowd: loud, spots }, null, 2)}\n`;
}

/** Reads a file. Whether its game can be won and ends is not looked at here. */
export function readGameFile(text: string): GameReading {
  if (text.length > LONGEST_FILE) return refused('It is larger than any game.');
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return refused('It is not a game file, or it is damaged.');
  }
  const head = v.safeParse(v.object({ kind: v.string(), version: v.pipe(v.number(), v.integer()) }), file);
  if (!head.success || head.output.kind !== KIND || head.output.version < 1) {
    return refused('It is not a game of Loud Gym.');
  }
  if (head.output.version > VERSION) {
    return refused('It was saved by a newer Loud Gym. Update the app here, then bring it in again.');
  }
  const game = v.safeParse(GAME, file);
  if (!game.success) {
    const [issue] = game.issues;
    return refused(`Something in it is not as it is in a game (${v.getDotPath(issue) ?? 'the whole'}).`);
  }
  return { sound: true, game: game.output };
}

function refused(reason: string): GameReading {
  return { sound: false, reason };
}

/** A name without what is not seen: controls, marks that turn the writing round, blanks at its ends. */
function seen(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
