import { Howler } from 'howler';

import type { Seconds } from '../basics/units.ts';
import { clipBank } from './clipBank.ts';
import { CLIP_NAMES, SIGNALS } from './clips.ts';
import { crowdNoise, type CrowdNoise } from './crowdNoise.ts';
import type { Cue, Planned } from './cues.ts';
import { ducking } from './ducking.ts';
import { scheduler } from './scheduler.ts';
import { shownClock } from './shownClock.ts';

// Else the first sound at 48 kHz would close the context and replace the master gain.
Howler.autoUnlock = false;
// Else the context would be put to sleep after 30 s, for planned sources do not count as playing.
Howler.autoSuspend = false;

/** The loudspeaker: an audio context, its volume, and what can sound on it. Times are on the context's own clock. */
export interface Speaker {
  readonly context: AudioContext;
  readonly crowd: CrowdNoise;
  setVolume(volume: number): void;
  /** The clock as it reaches the ear. */
  shownTime(): Seconds;
  /** Loads the signals, and then the crowd in the background. @returns whether any signal can be played */
  load(): Promise<boolean>;
  plan(cues: readonly Cue[]): Planned;
}

/**
 * Opens the loudspeaker; Howler makes the audio context and its master gain, knows the formats and keeps the volume.
 *
 * @returns null where the browser has no audio
 */
export function openSpeaker(volume: number): Speaker | null {
  askToBeHeard();
  Howler.volume(volume);
  // Howler's types leave out that both are missing where there is no audio.
  const context = Howler.ctx as AudioContext | null;
  const master = Howler.masterGain as GainNode | null;
  if (!context || !master || Howler.noAudio) return null;

  const bank = clipBank({
    plays: (extension) => Howler.codecs(extension),
    fetch: fetchBytes,
    decode: (bytes) => context.decodeAudioData(bytes),
  });
  const crowdLevel = context.createGain();
  crowdLevel.connect(master);
  const cues = scheduler(context, master, bank);
  const drawn = shownClock();
  const room = ducking(context, crowdLevel.gain);

  return {
    context,
    crowd: crowdNoise(context, crowdLevel, bank),
    setVolume: (next) => void Howler.volume(next),
    shownTime: () => {
      const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
      const { currentTime } = context;
      return drawn({ currentTime, contextTime, performanceTime, systemTime: performance.now() });
    },
    load: async () => {
      const signals = await Promise.all(SIGNALS.map((name) => bank.load(name)));
      void Promise.all(CLIP_NAMES.map((name) => bank.load(name)));
      return signals.some((clip) => clip !== null);
    },
    plan: (wanted) => {
      const planned = cues.plan(wanted);
      const fillRoom = room.add(wanted);
      return {
        cancel: () => {
          planned.cancel();
          fillRoom();
        },
      };
    },
  };
}

/**
 * A tablet in silent mode mutes what a page calculates, unless the page says that it is there to be listened to
 * (W3C, Audio Session; so far in Safari alone).
 */
function askToBeHeard(): void {
  const { audioSession } = navigator as Navigator & { readonly audioSession?: { type: string } };
  if (audioSession) audioSession.type = 'playback';
}

async function fetchBytes(path: string): Promise<ArrayBuffer> {
  const answer = await fetch(path);
  if (!answer.ok) throw new Error(`${path} is not there (${answer.status}).`);
  return answer.arrayBuffer();
}
