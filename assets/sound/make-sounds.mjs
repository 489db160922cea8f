/**
 * Makes every sound of Loud Gym anew, in assets/public/sound, and assets/sound/clips.json with what was measured:
 *
 *     node assets/sound/make-sounds.mjs
 *
 * Needs the Debian packages espeak-ng, flite, sox and ffmpeg. The same versions of them make the same bytes.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeAnswers } from './answers.mjs';
import { chanceFrom } from './chance.mjs';
import { makeBed, makeSwell } from './crowd.mjs';
import { encoded, levelled } from './files.mjs';
import { loopOf, wrapped } from './seam.mjs';
import { makeSignals } from './signals.mjs';
import { RATE, toolVersions } from './tools.mjs';
import { makeVoice } from './voice.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */

/** Integrated loudness, LUFS. The murmur lies under the voice; what happens on the court lies between. */
const LOUDNESS = { voice: -18, event: -20, swell: -20, bed: -23 };

const PUBLIC = fileURLToPath(new URL('../public/', import.meta.url));

/**
 * @param {string} name
 * @param {Sound} sound a ring, where it is a loop
 * @param {number} lufs
 * @param {boolean} round whether it is a loop
 */
function written(name, sound, lufs, round) {
  const level = levelled(sound, lufs, round);
  const whole = round ? wrapped(level) : level;
  const both = encoded(PUBLIC, name, whole);
  const files = both.map(({ file }) => file);
  const most = (/** @type {'onset' | 'lufs' | 'truePeak'} */ figure) =>
    Math.max(...files.map((file) => file[figure]));
  const decoded = both.map(({ back }) => back);
  const loop = round ? { loop: loopOf(decoded, level[0].length) } : {};
  const seconds = whole[0].length / RATE;
  console.log(name.padEnd(12), seconds.toFixed(2), 's', most('lufs'), 'LUFS', most('truePeak'), 'dBTP');
  return { seconds, onset: most('onset'), ...loop, lufs: most('lufs'), truePeak: most('truePeak'), files };
}

function main() {
  const tools = toolVersions();
  console.log(tools);
  rmSync(`${PUBLIC}sound`, { recursive: true, force: true });
  mkdirSync(`${PUBLIC}sound`, { recursive: true });
  /** @type {Record<string, ReturnType<typeof written>>} */
  const clips = {};
  for (const [name, sound] of makeVoice()) clips[name] = written(name, sound, LOUDNESS.voice, false);
  for (const [name, sound] of [...makeSignals(), ...makeAnswers()]) {
    clips[name] = written(name, sound, LOUDNESS.event, false);
  }
  clips['crowd-bed'] = written('crowd-bed', makeBed(chanceFrom(7)), LOUDNESS.bed, true);
  clips['crowd-swell'] = written('crowd-swell', makeSwell(chanceFrom(8)), LOUDNESS.swell, true);
  const sizes = Object.values(clips).flatMap(({ files }) => files.map(({ bytes }) => bytes));
  const total = sizes.reduce((sum, bytes) => sum + bytes, 0);
  console.log(`${total} bytes in all`);
  writeFileSync(
    new URL('clips.json', import.meta.url),
    `${JSON.stringify({ made: tools, clips }, null, 2)}\n`,
  );
}

main();
