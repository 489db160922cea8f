import { COUNT_GAMES } from './catalogue/countGames.ts';
import { LONG_GAMES } from './catalogue/longGames.ts';
import { SCENE_GAMES } from './catalogue/sceneGames.ts';
import type { BuiltInGame } from './catalogue/builtIn.ts';

export type { BuiltInGame } from './catalogue/builtIn.ts';

/**
 * The games every shooter has, each a plain plan on a card of standard spots. Their ids never change, since the address
 * of a screen names them. Games of one family stand together.
 */
export const CATALOGUE: readonly BuiltInGame[] = [...COUNT_GAMES, ...SCENE_GAMES, ...LONG_GAMES];

/** The built-in game of an id; null where there is none. */
export function builtIn(id: string): BuiltInGame | null {
  return CATALOGUE.find((game) => game.id === id) ?? null;
}
