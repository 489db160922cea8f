import { Howl, Howler } from 'howler';

import type { Gym } from '../../../../renderer/sound/gym.ts';
import { onsetIn, record } from './recording.ts';

/** Which cues to play, and how. */
export interface Wanted {
  /** `planned`: as the app does. `timers`: a page's timers call `play()`, as a page without an audio clock would. */
  readonly way: 'planned' | 'timers';
  readonly clips: readonly string[];
  /** Seconds from cue to cue; longer than a clip by 0.3 or more. */
  readonly every: number;
  /** The page is made busy for this long at a time, in milliseconds. */
  readonly busy: number;
}

export interface Measured {
  /** How much later than wanted each cue came out of the master gain, in frames; null where none was heard. */
  readonly late: readonly (number | null)[];
  readonly sampleRate: number;
}

/** Cues begin that long after they are planned. */
const LEAD = 0.5;

/** Plays cues on a busy page, records what leaves the master gain, and finds when each was heard. */
export async function onsetsOf(gym: Gym, wanted: Wanted): Promise<Measured> {
  const context = Howler.ctx;
  const { sampleRate } = context;
  const play = wanted.way === 'planned' ? plan(gym) : await timers(wanted.clips);
  const stop = await record(Howler.masterGain, wanted.clips.length * wanted.every + 3);

  const start = context.currentTime + LEAD;
  const cues = wanted.clips.map((clip, index) => ({ clip, at: start + index * wanted.every }));
  play(cues);
  await beBusy(wanted.busy, () => context.currentTime > start + cues.length * wanted.every);

  const recording = await stop();
  const late = cues.map(({ at }) => {
    const heard = onsetIn(recording, (at - 0.1) * sampleRate, (at + wanted.every - 0.15) * sampleRate);
    return heard === null ? null : heard - at * sampleRate;
  });
  return { late, sampleRate };
}

type Play = (cues: readonly { readonly clip: string; readonly at: number }[]) => void;

function plan(gym: Gym): Play {
  return (cues) => {
    const ahead = gym.now() - Howler.ctx.currentTime;
    gym.plan(cues.map(({ clip, at }) => ({ clip, at: at + ahead, gain: 1 })));
  };
}

async function timers(clips: readonly string[]): Promise<Play> {
  const howls = new Map<string, Howl>();
  for (const clip of new Set(clips)) {
    const howl = new Howl({ src: [`./sound/${clip}.webm`, `./sound/${clip}.m4a`] });
    howls.set(clip, howl);
    // oxlint-disable-next-line no-await-in-loop
    if (howl.state() !== 'loaded') await new Promise((resolve) => howl.once('load', () => resolve(null)));
  }
  return (cues) => {
    for (const { clip, at } of cues)
      setTimeout(() => howls.get(clip)?.play(), (at - Howler.ctx.currentTime) * 1000);
  };
}

/** Blocks the page again and again, with a breath in between. */
async function beBusy(milliseconds: number, over: () => boolean): Promise<void> {
  while (!over()) {
    for (const end = performance.now() + milliseconds; performance.now() < end;);
    // oxlint-disable-next-line no-await-in-loop
    await new Promise((resolve) => {
      setTimeout(resolve, 15);
    });
  }
}
