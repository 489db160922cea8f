import type { Seconds } from '../basics/units.ts';
import type { Later } from './courtPlans.ts';
import type { GymSound } from './ports.ts';

/** What the sound screen lets a shooter hear. */
export interface SoundCheck {
  /** A spoken sentence. */
  playCheck(): void;
  /** A few seconds of crowd: murmur, swell, a cheer, and gone. */
  playCrowd(): Promise<void>;
  /** Calls the taste of the crowd off. */
  stop(): void;
}

/** Time to be planned before it is due. */
const LEAD: Seconds = 0.3;

/** @param volume the shooter's, 0 to 1 */
export function soundCheck(sound: GymSound, later: Later, volume: () => number): SoundCheck {
  let tasting: (() => void)[] = [];
  function stop(): void {
    if (tasting.length > 0) sound.crowd.leave();
    for (const cancel of tasting) cancel();
    tasting = [];
  }
  return {
    stop,
    playCheck: () => void sound.plan([{ clip: 'sound-check', at: sound.now() + LEAD, gain: 1 }]),
    playCrowd: async () => {
      await sound.unlock();
      sound.setVolume(volume());
      stop();
      sound.crowd.enter();
      sound.crowd.swell(3, 1);
      tasting = [later(4, () => sound.crowd.answer(true, 1)), later(8, () => sound.crowd.leave())];
    },
  };
}
