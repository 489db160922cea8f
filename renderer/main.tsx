import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-600.css';
import '@fontsource/barlow-condensed/latin-600.css';
import './screens/styles/theme.css';
import './screens/styles/parts.css';
import './screens/styles/screens.css';
import './screens/styles/charts.css';
import './screens/styles/result.css';
import './screens/styles/court.css';
import './screens/styles/game.css';
import './screens/styles/print.css';

import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';

import { present } from './basics/invariant.ts';
import { WorkerFitting } from './fitting/workerFitting.ts';
import { App } from './screens/App.tsx';
import { DoorsContext } from './screens/gymContext.ts';
import { createGymSound } from './sound/gym.ts';
import { OpfsLog } from './storage/opfsLog.ts';
import { createCourt } from './store/court.ts';
import { createGym } from './store/gymStore.ts';
import type { EventLog, GymSound } from './store/ports.ts';
import type { Shelf } from './store/settings.ts';
import { createStudyRoom } from './store/study.ts';
import { deviceDisplay } from './display.ts';
import { whenIdle } from './idle.ts';

/* The only place where the core meets the world: clock, chance, storage, loudspeaker, screen. */

/** Settings may get lost without harm: a browser that keeps none is no reason not to shoot. */
const shelf: Shelf = {
  read: (name) => {
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  write: (name, text) => {
    try {
      localStorage.setItem(name, text);
    } catch {
      // Full or forbidden.
    }
  },
};

const log: EventLog = new OpfsLog();
const gym = createGym({
  log,
  at: () => Date.now(),
  zone: () => -new Date().getTimezoneOffset(),
  random: () => crypto.getRandomValues(new Uint8Array(16)),
  shelf,
});
void gym.open(false);

const sound: GymSound = createGymSound();
// The very first sound is as loud as the shooter left it.
sound.setVolume(gym.store.getState().settings.volume);
const court = createCourt(gym, sound, (seconds, wake) => {
  const timer = setTimeout(wake, seconds * 1000);
  return () => clearTimeout(timer);
});

const studyRoom = createStudyRoom(gym, new WorkerFitting(), shelf, whenIdle);

function showTheme(): void {
  document.documentElement.dataset['theme'] = gym.store.getState().settings.theme;
}
showTheme();
gym.store.subscribe(showTheme);

createRoot(present(document.getElementById('app'), 'the place for the app')).render(
  <StrictMode>
    <DoorsContext value={{ gym, court, studyRoom, display: deviceDisplay() }}>
      <App />
    </DoorsContext>
  </StrictMode>,
);
