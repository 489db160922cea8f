/** The screens, by the name in the address after `#/`. */
export const PLACES = [
  'bench',
  'welcome',
  'shooter',
  'relaxed',
  'pressured',
  'pair',
  'double',
  'games',
  'game',
  'together',
  'duel',
  'court',
  'after',
  'result',
  'method',
  'rounds',
  'cards',
  'stakes',
  'files',
  'sound',
] as const;
export type Place = (typeof PLACES)[number];

/** Where a screen is, and what it is about: `#/after/ROUND-ID`. */
export interface Address {
  readonly place: Place;
  readonly about: string | null;
}

/** Reads the part of the address after `#`; anything unknown is the bench. */
export function readAddress(hash: string): Address {
  const [place = '', about = ''] = hash.replace(/^#\/?/, '').split('/');
  const known = PLACES.find((name) => name === place);
  return { place: known ?? 'bench', about: known && about !== '' ? decoded(about) : null };
}

/** What stands in the address may be anything. */
function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

export function writeAddress(place: Place, about: string | null = null): string {
  return about === null ? `#/${place}` : `#/${place}/${encodeURIComponent(about)}`;
}
