/** Long vowels of many people, spoken slowly by the synthesisers: what cheers and groans are made of. */
import { espeak, flite } from './speech.mjs';
import { evened, trimmed } from './shaping.mjs';

/**
 * @typedef {object} Words
 * @property {readonly string[]} flite
 * @property {readonly string[]} espeak phonemes; a repeated length mark holds the vowel
 */

/** @type {Record<'up' | 'down', Words>} */
const WORDS = {
  up: {
    flite: ['yeah', 'woo', 'hey', 'whoa'],
    espeak: ["[[j'E:E:E:]]", "[[w'u:u:u:]]", "[[h'e:e:e:]]", "[[w'oU:oU:]]"],
  },
  down: {
    flite: ['oh', 'aw', 'no', 'ah'],
    espeak: ["[['o:o:o:]]", "[['O:O:O:]]", "[[n'oU:o:o:]]", "[['A:A:A:]]"],
  },
};

/** Shouting is higher than talking, and a groan lower than a cheer. Hertz, mean of the voice. */
const PITCHES = /** @type {const} */ ({
  up: { rms: [140, 170, 205], awb: [150, 185, 220], slt: [230, 270, 315] },
  down: { rms: [95, 110, 130], awb: [105, 125, 145], slt: [165, 185, 210] },
});

/** How much slower than talking: a cheer is a burst, a groan hangs in the air. */
const STRETCH = { up: 4, down: 4.5 };

const PEOPLE = ['m2', 'm3', 'm5', 'f1', 'f2', 'f4'];

/** @type {Map<'up' | 'down', Float32Array[]>} */
const made = new Map();

/**
 * @param {'up' | 'down'} mood up for joy, down for dismay
 * @returns {readonly Float32Array[]} about half a second to two seconds each
 */
export function vowels(mood) {
  const before = made.get(mood);
  if (before) return before;
  const pool = [];
  for (const voice of /** @type {const} */ (['rms', 'awb', 'slt'])) {
    for (const pitch of PITCHES[mood][voice]) {
      for (const word of WORDS[mood].flite) pool.push(flite(word, { voice, pitch, stretch: STRETCH[mood] }));
    }
  }
  for (const person of PEOPLE) {
    for (const word of WORDS[mood].espeak) {
      pool.push(
        espeak(word, {
          voice: `en-gb+${person}`,
          pitch: mood === 'up' ? 80 : 35,
          pace: mood === 'up' ? 95 : 80,
        }),
      );
    }
  }
  const cut = pool.map((samples) => evened(trimmed([samples], 0.05)[0]));
  made.set(mood, cut);
  return cut;
}
