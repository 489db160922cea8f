import { Howler } from 'howler';

import { createGymSound } from '../../../../renderer/sound/gym.ts';
import { crowdLevels } from './crowd.ts';
import { offlineOnsets } from './offline.ts';
import { onsetsOf, type Measured, type Wanted } from './onsets.ts';

/* A page with nothing on it but the loudspeaker, for tests of the sound alone. All answers are plain data. */

const gym = createGymSound();
const states: string[] = [];
gym.onState((state) => states.push(state));

const button = document.getElementById('unlock');
button?.addEventListener('click', () => void tryToUnlock());
// Before any touch, for a test of just that. What a test evaluates in a page counts as a touch, so the answer goes out
// by the console.
if (location.hash === '#unlock') void tryToUnlock();

async function tryToUnlock(): Promise<void> {
  const began = gym.now();
  const state = await gym.unlock();
  console.log(`${state}, the clock ${gym.now() > began ? 'runs' : 'stands'}`);
}

const soundPage = {
  unlock: (): Promise<string> => gym.unlock(),
  state: (): string => gym.state(),
  states: (): readonly string[] => states,
  now: (): number => gym.now(),
  suspend: (): Promise<void> => Howler.ctx.suspend(),
  resume: (): Promise<void> => Howler.ctx.resume(),
  /** Looks at both clocks at every frame for a while. */
  async clocks(seconds: number): Promise<{ now: number; shown: number; system: number }[]> {
    const looks: { now: number; shown: number; system: number }[] = [];
    for (const end = performance.now() + seconds * 1000; performance.now() < end;) {
      // oxlint-disable-next-line no-await-in-loop
      await new Promise(requestAnimationFrame);
      looks.push({ now: gym.now(), shown: gym.shownNow(), system: performance.now() / 1000 });
    }
    return looks;
  },
  onsets: (wanted: Wanted): Promise<Measured> => onsetsOf(gym, wanted),
  offlineOnsets,
  crowdLevels: (): Promise<Record<string, number>> => crowdLevels(gym),
};

declare global {
  interface Window {
    soundPage: typeof soundPage;
  }
}

window.soundPage = soundPage;
