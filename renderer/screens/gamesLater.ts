import type { ShooterId } from '../basics/ids.ts';
import type { Gym } from '../store/gymStore.ts';
import { later } from './later.tsx';

export const gamesScreen = later(() => import('./GamesScreen.tsx').then((file) => file.GamesScreen));

/** So long the page may stand still, in ms; then it breathes for a moment. */
const A_FRAME = 8;
const A_BREATH = 16;

/** Fetches the list of games and works out what they are worth, bit by bit, so that it opens at a touch. */
export async function readyGames(gym: Gym, shooter: ShooterId): Promise<void> {
  const [{ gamePrices }, { gamesOf }, { gameFault }] = await Promise.all([
    import('../store/gamePrices.ts'),
    import('../store/gameActions.ts'),
    import('../games/gameFault.ts'),
    gamesScreen.fetch(),
  ]);
  const { book } = gym.store.getState();
  const prices = gamePrices(book, shooter, gym.moment());
  let begun = performance.now();
  for (const { plan, stops, clock } of gamesOf(book)) {
    if (gameFault(plan, stops) === null) prices.price({ plan, stops, clock });
    if (performance.now() - begun < A_FRAME) continue;
    // oxlint-disable-next-line no-await-in-loop
    await new Promise((resolve) => {
      setTimeout(resolve, A_BREATH);
    });
    // Somebody went on court meanwhile, or shot.
    if (gym.store.getState().book.rounds !== book.rounds || gym.store.getState().book.open) return;
    begun = performance.now();
  }
}
