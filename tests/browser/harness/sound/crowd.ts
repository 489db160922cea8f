import { Howler } from 'howler';

import type { Gym } from '../../../../renderer/sound/gym.ts';
import { levelIn, record } from './recording.ts';

const sleep = (seconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, seconds * 1000);
  });

/** Plays a scene of the crowd, and says how loud each part of it came out of the master gain (RMS). */
export async function crowdLevels(gym: Gym): Promise<Record<string, number>> {
  const { ctx: context, masterGain } = Howler;
  const stop = await record(masterGain, 25);
  const marks: { readonly part: string; readonly from: number; readonly to: number }[] = [];
  const listen = async (part: string, seconds: number): Promise<void> => {
    const from = context.currentTime;
    await sleep(seconds);
    marks.push({ part, from, to: context.currentTime });
  };
  const ahead = gym.now() - context.currentTime;

  await listen('empty gym', 0.5);
  gym.crowd.enter();
  await sleep(3);
  await listen('murmur', 1);
  gym.crowd.swell(3, 1);
  await sleep(2.5);
  await listen('tense', 0.5);
  gym.crowd.answer(false, 1);
  await sleep(0.1);
  await listen('groan', 0.8);
  await sleep(1.3);
  await listen('hushed', 0.4);
  await sleep(3);
  await listen('murmur again', 1);
  // Silent itself, so that only the crowd is measured.
  gym.plan([{ clip: 'sound-check', at: context.currentTime + ahead + 0.3, gain: 0 }]);
  await sleep(0.6);
  await listen('room for a voice', 1);
  gym.crowd.leave();
  await sleep(2.2);
  await listen('gone', 0.5);

  const recording = await stop();
  return Object.fromEntries(
    marks.map(({ part, from, to }) => [
      part,
      levelIn(recording, from * context.sampleRate, to * context.sampleRate),
    ]),
  );
}
