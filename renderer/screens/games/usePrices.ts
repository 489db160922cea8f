import { useEffect, useMemo, useState } from 'react';

import { gameFault } from '../../games/gameFault.ts';
import type { Shooter } from '../../log/book.ts';
import type { ListedGame } from '../../store/gameActions.ts';
import { gamePrices, type GamePrices, type Price } from '../../store/gamePrices.ts';
import { useDoors, useGym } from '../gymContext.ts';

/** What games are worth to a shooter today; the record is worked out once for all of them. */
export function useGamePrices(shooter: Shooter): GamePrices {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  return useMemo(() => gamePrices(book, shooter.id, gym.moment()), [gym, book, shooter.id]);
}

/** The list stands still for no longer than this, in ms; what is left comes with the next frames. */
const AT_ONCE = 50;
const A_FRAME = 12;

/** Prices of a list of games, by id. On a slow device the last ones come a few frames after the list. */
export function usePrices(prices: GamePrices, games: readonly ListedGame[]): ReadonlyMap<string, Price> {
  const first = useMemo(() => priced(prices, games, new Map(), AT_ONCE), [prices, games]);
  const [later, setLater] = useState(first);
  const known = later.prices === prices ? later : first;
  useEffect(() => {
    if (known.done) return undefined;
    const frame = requestAnimationFrame(() => setLater(priced(prices, games, known.known, A_FRAME)));
    return () => cancelAnimationFrame(frame);
  }, [prices, games, known]);
  return known.known;
}

interface Priced {
  readonly prices: GamePrices;
  readonly known: ReadonlyMap<string, Price>;
  readonly done: boolean;
}

/** Goes on pricing for so many milliseconds; one game at least. */
function priced(
  prices: GamePrices,
  games: readonly ListedGame[],
  before: ReadonlyMap<string, Price>,
  most: number,
): Priced {
  const known = new Map(before);
  const until = performance.now() + most;
  for (const game of games) {
    if (known.has(game.id) || gameFault(game.plan, game.stops) !== null) continue;
    known.set(game.id, prices.price(game));
    if (performance.now() > until) return { prices, known, done: false };
  }
  return { prices, known, done: true };
}
