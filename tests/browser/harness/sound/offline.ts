import { clipBank, type Clip, type ClipBank } from '../../../../renderer/sound/clipBank.ts';
import type { ClipName } from '../../../../renderer/sound/clips.ts';
import { scheduler } from '../../../../renderer/sound/scheduler.ts';
import { onsetIn } from './recording.ts';

const RATE = 48_000;
const EVERY = 2;

/**
 * Renders one cue of each clip faster than they sound.
 *
 * @param made true: a made-up clip that is heard exactly 5 ms after its start; false: the real ones
 * @returns how much later than wanted each was heard, in frames
 */
export async function offlineOnsets(names: readonly ClipName[], made: boolean): Promise<(number | null)[]> {
  const context = new OfflineAudioContext(1, (names.length + 1) * EVERY * RATE, RATE);
  const bank = made ? madeBank(context) : realBank(context);
  await Promise.all(names.map((name) => bank.load(name)));
  // Moments that lie on no frame.
  const cues = names.map((clip, index) => ({ clip, at: 1 / 3 + index * EVERY, gain: 1 }));
  scheduler(context, context.destination, bank).plan(cues);
  const samples = (await context.startRendering()).getChannelData(0);
  return cues.map(({ at }) => {
    const heard = onsetIn({ start: 0, samples }, (at - 0.1) * RATE, (at + EVERY - 0.2) * RATE);
    return heard === null ? null : heard - at * RATE;
  });
}

function madeBank(context: OfflineAudioContext): ClipBank {
  const onset = 0.005;
  const buffer = context.createBuffer(1, RATE / 10, RATE);
  buffer.getChannelData(0).fill(0.5, onset * RATE);
  const clip: Clip = { buffer, onset };
  return { get: () => clip, load: () => Promise.resolve(clip) };
}

function realBank(context: OfflineAudioContext): ClipBank {
  return clipBank({
    plays: (extension) => extension === 'webm',
    fetch: async (path) => (await fetch(path)).arrayBuffer(),
    decode: (bytes) => context.decodeAudioData(bytes),
  });
}
