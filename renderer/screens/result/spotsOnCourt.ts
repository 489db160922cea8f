import type { CourtDimensions, RuleSet } from '../../court/ruleSets.ts';
import { isSpot, spotPoint, SPOTS, type CourtPoint, type SpotName } from '../../court/spots.ts';
import type { Figures } from '../../store/figures.ts';

/** What is told by spot, and where the spots are. */
export interface SpotProps {
  readonly figures: Pick<Figures, 'spots'>;
  readonly rules: RuleSet;
  readonly ownSpots: ReadonlyMap<string, CourtPoint>;
}

/** Where a spot is on the court; null for one of the shooter's own whose place is not known. */
export function pointOf(
  spot: SpotName,
  court: CourtDimensions,
  ownSpots: ReadonlyMap<string, CourtPoint>,
): CourtPoint | null {
  return isSpot(spot) ? spotPoint(spot, court) : (ownSpots.get(spot) ?? null);
}

/** Standard spots in court order, own spots after them. */
export function inCourtOrder<T extends { readonly spot: SpotName }>(items: readonly T[]): T[] {
  return items.toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
}

function placeInOrder({ spot }: { readonly spot: SpotName }): number {
  const place = (SPOTS as readonly string[]).indexOf(spot);
  return place === -1 ? SPOTS.length : place;
}
