import type { ShooterId } from '../basics/ids.ts';
import type { Gym } from '../store/gymStore.ts';
import { later } from './later.tsx';

export const gamesScreen = later(() => import('./GamesScreen.tsx').then((file) => file.GamesScreen));

/** Fetches the list of games and works the shooter's record out for it, so that it opens at a touch. */
export async function readyGames(gym: Gym, shooter: ShooterId): Promise<void> {
  const [{ gamePrices }] = await Promise.all([import('../store/gamePrices.ts'), gamesScreen.fetch()]);
  gamePrices(gym.store.getState().book, shooter, gym.moment()).prepare();
}
