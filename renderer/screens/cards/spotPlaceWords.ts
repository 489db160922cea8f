import type { CourtDimensions } from '../../court/ruleSets.ts';
import { distanceToRim, isBeyondArc, type CourtPoint } from '../../court/spots.ts';
import type { Units } from '../../log/events.ts';
import { distanceWords } from '../parts/distance.ts';

/** `7.1 m from the rim, beyond the three-point line.` */
export function spotPlaceWords(point: CourtPoint, court: CourtDimensions, units: Units): string {
  const line = isBeyondArc(point, court) ? 'beyond' : 'inside';
  return `${distanceWords(distanceToRim(point), units)} from the rim, ${line} the three-point line.`;
}
