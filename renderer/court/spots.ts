import type { Metres } from '../basics/units.ts';
import { arcMeetsStraight, type CourtDimensions } from './ruleSets.ts';

/**
 * A place on the court seen by a shooter who faces the basket: origin under the rim's centre, `x` to the shooter's
 * right, `y` away from the endline. Metres.
 */
export interface CourtPoint {
  readonly x: Metres;
  readonly y: Metres;
}

/** The spots every card can use. Left and right are the shooter's own, facing the basket. */
export const SPOTS = [
  'left-corner',
  'left-wing',
  'top',
  'right-wing',
  'right-corner',
  'left-elbow',
  'right-elbow',
  'free-throw',
] as const;
export type Spot = (typeof SPOTS)[number];

/** A standard spot, or the name of one of the shooter's own. */
export type SpotName = Spot | (string & { readonly own?: true });

export const SHOT_KINDS = ['catch', 'dribble-left', 'dribble-right', 'free-throw', 'form'] as const;
/** How the shot comes: off the catch, off the dribble going left or right, a free throw, a form shot close in. */
export type ShotKind = (typeof SHOT_KINDS)[number];

export const SPOT_WORDS: Readonly<Record<Spot, string>> = {
  'left-corner': 'Left corner',
  'left-wing': 'Left wing',
  top: 'Top of the key',
  'right-wing': 'Right wing',
  'right-corner': 'Right corner',
  'left-elbow': 'Left elbow',
  'right-elbow': 'Right elbow',
  'free-throw': 'Free-throw line',
};

export const SHOT_WORDS: Readonly<Record<ShotKind, string>> = {
  catch: 'catch-and-shoot',
  'dribble-left': 'off the dribble, going left',
  'dribble-right': 'off the dribble, going right',
  'free-throw': 'free throw',
  form: 'form shot',
};

export function isSpot(name: string): name is Spot {
  return (SPOTS as readonly string[]).includes(name);
}

/** The standard spot meant by a name as people write it: `Left corner`, `left-corner`; null for a spot of one's own. */
export function spotByName(name: string): Spot | null {
  const wanted = nameKey(name);
  return SPOTS.find((spot) => nameKey(spot) === wanted || nameKey(SPOT_WORDS[spot]) === wanted) ?? null;
}

/** Equal for names that a person takes for the same: case, hyphens and the width of blanks do not matter. */
export function nameKey(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .normalize('NFC')
    .replace(/[\s-]+/g, ' ');
}

export function isShotKind(name: string): name is ShotKind {
  return (SHOT_KINDS as readonly string[]).includes(name);
}

/** A spot in words; a shooter's own spot is called by its own name. */
export function spotWords(spot: SpotName): string {
  return isSpot(spot) ? SPOT_WORDS[spot] : spot;
}

/** Feet stand this far behind the line they must not touch. Common practice, no source. */
const BEHIND_LINE = 0.3;
/** Wings at 45 degrees from the line to the top of the key. Common practice, no source. */
const WING_ANGLE = Math.PI / 4;

/** Where a standard spot's shooter stands on a court of these dimensions. */
export function spotPoint(spot: Spot, court: CourtDimensions): CourtPoint {
  const three = court.arcRadius + BEHIND_LINE;
  const wing = { x: three * Math.sin(WING_ANGLE), y: three * Math.cos(WING_ANGLE) };
  // In the corner the feet are level with the rim.
  const corner = { x: court.cornerDistance + BEHIND_LINE, y: 0 };
  const line = court.freeThrowFromRim;
  switch (spot) {
    case 'left-corner':
      return { x: -corner.x, y: corner.y };
    case 'right-corner':
      return corner;
    case 'left-wing':
      return { x: -wing.x, y: wing.y };
    case 'right-wing':
      return wing;
    case 'top':
      return { x: 0, y: three };
    case 'left-elbow':
      return { x: -court.keyWidth / 2, y: line };
    case 'right-elbow':
      return { x: court.keyWidth / 2, y: line };
    case 'free-throw':
      return { x: 0, y: line + BEHIND_LINE };
  }
}

/** Distance to the rim's centre, along the floor. */
export function distanceToRim(point: CourtPoint): Metres {
  return Math.hypot(point.x, point.y);
}

/** True where a make from this point counts three. On the line is two. */
export function isBeyondArc(point: CourtPoint, court: CourtDimensions): boolean {
  const besideStraight = point.y <= arcMeetsStraight(court);
  return besideStraight ? Math.abs(point.x) > court.cornerDistance : distanceToRim(point) > court.arcRadius;
}
