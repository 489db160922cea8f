import type { CardId } from '../basics/ids.ts';
import { MOST_STOPS, type Stop } from '../court/cards.ts';
import { isSpot, nameKey, SPOT_WORDS, spotByName, type CourtPoint, type SpotName } from '../court/spots.ts';
import type { Book } from '../log/book.ts';
import type { Gym } from './gymStore.ts';
import { cardsOf } from './roundActions.ts';

/* Cards and spots of the shooters' own. They belong to the device, so that everyone on it can shoot the same card. */

export const LONGEST_NAME = 60;

/** What is wrong with the name of a new card, in a sentence; null where nothing is. */
export function cardNameFault(book: Book, name: string): string | null {
  const wanted = name.trim();
  if (wanted === '') return 'Please give the card a name, so that you find it again.';
  const taken = cardsOf(book).find((card) => sameName(card.name, wanted));
  return taken ? `There is already a card called ${taken.name}. Choose another name.` : null;
}

/** What keeps these stops from being a card; null where nothing does. */
export function stopsFault(stops: readonly Stop[]): string | null {
  if (stops.length === 0) return 'A card needs at least one stop. Choose a spot and add it.';
  return stops.length > MOST_STOPS ? `A card has at most ${MOST_STOPS} stops.` : null;
}

/** What is wrong with the name of a spot of one's own. @param moving the name may be taken: that spot is moved */
export function spotNameFault(book: Book, name: string, moving: boolean): string | null {
  const wanted = name.trim();
  if (wanted === '') return 'Please give the spot a name.';
  const standard = spotByName(wanted);
  if (standard) return `${SPOT_WORDS[standard]} is on every court already. Choose another name.`;
  const taken = [...book.ownSpots.keys()].find((spot) => sameName(spot, wanted));
  return taken !== undefined && !moving
    ? `There is already a spot called ${taken}. Choose another name.`
    : null;
}

/** Keeps a new card. @returns false where it could not be saved */
export function makeCard(gym: Gym, name: string, stops: readonly Stop[]): Promise<boolean> {
  const card = gym.moment().newId<'card'>();
  return gym.dispatch([{ type: 'CardMade', body: { card, name: name.trim(), stops } }]);
}

/** Takes a card away. Rounds shot on it keep their stops. */
export function removeCard(gym: Gym, card: CardId): Promise<boolean> {
  return gym.dispatch([{ type: 'CardRemoved', body: { card } }]);
}

/** Puts a spot of one's own on the floor, or moves it there. */
export function placeSpot(gym: Gym, name: string, { x, y }: CourtPoint): Promise<boolean> {
  return gym.dispatch([{ type: 'OwnSpotPlaced', body: { spot: name.trim(), x, y } }]);
}

/** Spots that rounds name and nobody has put on the floor yet: they came in with a file. */
export function unplacedSpots(book: Book): SpotName[] {
  const names = new Set<SpotName>();
  for (const round of book.rounds.values()) {
    if (book.removedShooters.has(round.shooter)) continue;
    for (const { spot } of round.stops) if (!isSpot(spot) && !book.ownSpots.has(spot)) names.add(spot);
  }
  return [...names];
}

function sameName(one: string, other: string): boolean {
  return nameKey(one) === nameKey(other);
}
