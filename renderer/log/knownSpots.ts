import { nameKey, type SpotName } from '../court/spots.ts';
import type { Book, Cell } from './book.ts';

/** Spots by {@link nameKey}, each under the one name that is used for it here. */
export type KnownSpots = Map<string, SpotName>;

/** Every spot that was put on the floor or shot from. A spot on the floor gives the name. */
export function knownSpots(book: Book): KnownSpots {
  const known: KnownSpots = new Map();
  for (const round of book.rounds.values()) {
    for (const { spot } of round.stops) if (!known.has(nameKey(spot))) known.set(nameKey(spot), spot);
  }
  for (const spot of book.ownSpots.keys()) known.set(nameKey(spot), spot);
  return known;
}

/**
 * Cells under the names used here, `short  Corner` under `Short corner`; two that turn out to be one place are added up.
 *
 * @param known learns the spots that are new
 */
export function cellsHere(cells: readonly Cell[], known: KnownSpots): Cell[] {
  const here = new Map<string, Cell>();
  for (const cell of cells) {
    const spot = known.get(nameKey(cell.spot)) ?? cell.spot;
    known.set(nameKey(spot), spot);
    const place = `${spot}\n${cell.shot}`;
    const { makes = 0, attempts = 0 } = here.get(place) ?? {};
    here.set(place, { ...cell, spot, makes: makes + cell.makes, attempts: attempts + cell.attempts });
  }
  return [...here.values()];
}
