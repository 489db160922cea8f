import { invariant, present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import { shotFacts } from '../../renderer/games/play.ts';
import { OpfsLog } from '../../renderer/storage/opfsLog.ts';
import { createGym } from '../../renderer/store/gymStore.ts';
import { startRound } from '../../renderer/store/roundActions.ts';
import { loadDemoSeason } from '../../renderer/store/shooterActions.ts';
import { bareCommit, bareFooting } from './bareClient.ts';

/* A page with the app's store and log and nothing on the screen: what a tap costs before anything is drawn. */

const log = new OpfsLog();
const gym = createGym({
  log,
  at: () => Date.now(),
  zone: () => -new Date().getTimezoneOffset(),
  random: () => crypto.getRandomValues(new Uint8Array(16)),
  shelf: { read: () => null, write: () => undefined },
});
/** Milliseconds from the last key to the moment its shot counted. */
let acknowledged: Promise<number> | null = null;

async function tapped(key: KeyboardEvent): Promise<number> {
  const round = present(gym.store.getState().ahead.open, 'an open round');
  const saved = await gym.dispatch(shotFacts(round, key.key === 'ArrowRight', null));
  invariant(saved, 'a shot that was saved');
  return performance.now() - key.timeStamp;
}

const storePage = {
  /** Opens the log, and loads the demo season into it. @returns what the log and the bare commits stand on */
  async open(): Promise<{ log: string; bare: string }> {
    await gym.open(false);
    invariant(await loadDemoSeason(gym), 'a season that was saved');
    const { locking, journal, synchronous } = present(log.footing, 'the footing of an open log');
    return { log: `${locking} ${journal} ${synchronous}`, bare: await bareFooting() };
  },
  async startRound(): Promise<void> {
    const round = await startRound(gym, {
      shooter: present(gym.store.getState().settings.shooter, 'a shooter'),
      condition: 'relaxed',
      card: present(STANDARD_CARDS[0], 'a card'),
      entry: 'each-shot',
      nerves: 3,
      pressure: null,
      pair: null,
    });
    invariant(round, 'a round that was saved');
  },
  acknowledged: (): Promise<number> => present(acknowledged, 'a tap'),
  bareCommit,
};

declare global {
  interface Window {
    storePage: typeof storePage;
  }
}

addEventListener('keydown', (key) => {
  acknowledged = tapped(key);
});
window.storePage = storePage;
