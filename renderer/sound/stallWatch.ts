import type { Seconds } from '../basics/units.ts';

/** More than any hiccup, less than a shooter would not notice. */
const STALL: Seconds = 1.5;
/** How much of a small difference is forgiven at each look: two clocks never run alike. */
const FORGIVEN = 0.02;

/**
 * Notices that the audio clock stood still while time went on: the device slept, or its loudspeaker is gone, and the
 * browser did not say so.
 *
 * @returns to be asked about twice a second with both clocks; true where the audio clock fell behind since it last said so
 */
export function stallWatch(): (elapsed: Seconds, audio: Seconds) => boolean {
  let usual: Seconds | null = null;
  return (elapsed, audio) => {
    const behind = elapsed - audio;
    usual ??= behind;
    const stalled = behind - usual > STALL;
    // A clock that was set back, or an audio clock that caught up, is the new usual at once.
    if (stalled || behind < usual) usual = behind;
    else usual += (behind - usual) * FORGIVEN;
    return stalled;
  };
}
