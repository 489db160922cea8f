import type { Metres } from '../basics/units.ts';
import { arcMeetsStraight, type CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';

/*
 * From metres on the floor to the drawing. The basket is at the top, the shooter looks up the page, so left is left.
 * The drawing's unit is the centimetre; its origin is the left end of the endline.
 */

/** A place on the drawing, in its own units. */
export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

const CM = 100;
/** How much floor is drawn beyond the top of the arc. */
const BEYOND_ARC: Metres = 1.8;

export interface CourtFrame {
  readonly width: number;
  readonly height: number;
  readonly toDrawing: (point: CourtPoint) => DrawnPoint;
  /** The other way, for a touch on the drawing. */
  readonly toFloor: (point: DrawnPoint) => CourtPoint;
}

export function courtFrame(court: CourtDimensions): CourtFrame {
  const depth = court.rimFromEndline + court.arcRadius + BEYOND_ARC;
  return {
    width: court.width * CM,
    height: depth * CM,
    toDrawing: ({ x, y }) => ({ x: (court.width / 2 + x) * CM, y: (court.rimFromEndline + y) * CM }),
    toFloor: ({ x, y }) => ({ x: x / CM - court.width / 2, y: y / CM - court.rimFromEndline }),
  };
}

/** The three-point line as an SVG path. */
export function threePointPath(court: CourtDimensions): string {
  const { toDrawing } = courtFrame(court);
  const meets = arcMeetsStraight(court);
  const corner = court.cornerDistance;
  const from = toDrawing({ x: -corner, y: -court.rimFromEndline });
  const left = toDrawing({ x: -corner, y: meets });
  const right = toDrawing({ x: corner, y: meets });
  const to = toDrawing({ x: corner, y: -court.rimFromEndline });
  const r = court.arcRadius * CM;
  return `M${at(from)}L${at(left)}A${r} ${r} 0 0 0 ${at(right)}L${at(to)}`;
}

/** The key with the free-throw line, and the half circle beyond it. */
export function keyPath(court: CourtDimensions): string {
  const { toDrawing } = courtFrame(court);
  const half = court.keyWidth / 2;
  const line = court.freeThrowFromRim;
  const corners = [
    { x: -half, y: -court.rimFromEndline },
    { x: -half, y: line },
    { x: half, y: line },
    { x: half, y: -court.rimFromEndline },
  ].map((point) => at(toDrawing(point)));
  const radius: Metres = 1.8;
  const from = toDrawing({ x: -radius, y: line });
  const to = toDrawing({ x: radius, y: line });
  return `M${corners.join('L')}M${at(from)}A${radius * CM} ${radius * CM} 0 0 0 ${at(to)}`;
}

function at({ x, y }: DrawnPoint): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
