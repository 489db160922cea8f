import type {} from '../electron/bridge.ts';

import type { Display } from './store/ports.ts';

/** Keeps the display awake through the desktop shell where there is one, else through the browser's wake lock. */
export function deviceDisplay(): Display {
  let lock: Promise<WakeLockSentinel | null> = Promise.resolve(null);
  const inBrowser = (on: boolean): void => {
    if (on && 'wakeLock' in navigator) {
      // The browser may refuse, on low battery for one; the round goes on all the same.
      lock = navigator.wakeLock.request('screen').catch(() => null);
    } else if (!on) {
      void lock.then((sentinel) => sentinel?.release()).catch(() => undefined);
    }
  };
  return {
    keepAwake: (on) => {
      if (window.loudGymShell) void window.loudGymShell.keepAwake(on).catch(() => undefined);
      else inBrowser(on);
    },
  };
}
