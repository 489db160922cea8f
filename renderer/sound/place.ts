import type { Seconds } from '../basics/units.ts';
import type { Speaker } from './speaker.ts';

/** What the gym's sound needs of the world around it. */
export interface Place {
  /** Fetches the loudspeaker's part of the program: not needed for the first screen. */
  fetchSpeaker(): Promise<{ openSpeaker(volume: number): Speaker | null }>;
  /** The system's steady clock. */
  steady(): Seconds;
  /** The calendar's clock: counts on while the device sleeps. */
  calendar(): Seconds;
  /** Whether the person has touched the page, or nobody can tell. */
  touched(): boolean;
  sleep(seconds: Seconds): Promise<void>;
  every(seconds: Seconds, look: () => void): void;
  /** Calls once there is nothing better to do. */
  whenIdle(then: () => void): void;
  /** Calls at every touch and key, and when the page is seen again. */
  onWake(wake: () => void): void;
}

export const BROWSER: Place = {
  fetchSpeaker: () => import('./speaker.ts'),
  steady: () => performance.now() / 1000,
  calendar: () => Date.now() / 1000,
  touched: () => 'userActivation' in navigator && navigator.userActivation.hasBeenActive,
  sleep: (seconds) =>
    new Promise((resolve) => {
      setTimeout(resolve, seconds * 1000);
    }),
  every: (seconds, look) => void setInterval(look, seconds * 1000),
  // Safari has no idle callback.
  whenIdle: (then) =>
    'requestIdleCallback' in window ? void requestIdleCallback(then) : void setTimeout(then, 1000),
  onWake: (wake) => {
    for (const touch of ['pointerup', 'keydown', 'visibilitychange'])
      document.addEventListener(touch, wake, { capture: true, passive: true });
  },
};
