import type { SpotName } from '../../court/spots.ts';
import type { DropEstimate } from '../../stats/drop.ts';
import type { IndexPlace } from '../../stats/model/chokeIndex.ts';
import type { SpotFigures } from '../../store/figures.ts';

/** The drop at one spot, all kinds of shot from it together. */
export interface SpotDrop {
  readonly spot: SpotName;
  /** As it was shot, like with like; null where nothing was shot both ways. */
  readonly raw: DropEstimate | null;
  /** As the model evens it out. */
  readonly model: DropEstimate;
  /** Never shot under pressure: the model's figure comes from the other spots. */
  readonly byOthers: boolean;
}

/**
 * Puts the places of the index together by spot, in the order of their first place.
 *
 * Several kinds of shot from one spot are weighted as in the mix, interval ends too. Such an interval is
 * a little wider than need be: it would be exact if the kinds' drops moved together in every way. Their answer to pressure
 * does, but each kind has a level of its own.
 */
export function spotDrops(places: readonly IndexPlace[], spots: readonly SpotFigures[]): SpotDrop[] {
  return [...new Set(places.map(({ spot }) => spot))].map((spot) => {
    const here = places.filter((place) => place.spot === spot);
    const weight = here.reduce((sum, place) => sum + place.weight, 0);
    const mean = (of: (place: IndexPlace) => number): number =>
      here.reduce((sum, place) => sum + (place.weight / weight) * of(place), 0);
    return {
      spot,
      raw: spots.find((one) => one.spot === spot)?.drop ?? null,
      model: {
        points: mean(({ points }) => points),
        low: mean(({ low }) => low),
        high: mean(({ high }) => high),
      },
      byOthers: here.every(({ raw }) => raw.pressured.attempts === 0),
    };
  });
}
