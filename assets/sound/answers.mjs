/** What the crowd answers: cheers at a make, groans at a miss, each of a few people and of many. */
import { chanceFrom } from './chance.mjs';
import { addClaps } from './claps.mjs';
import { addRound, bent, faded, fromDb, silence, trimmed } from './shaping.mjs';
import { RATE, sox } from './tools.mjs';
import { vowels } from './vowels.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */
/** @typedef {import('./chance.mjs').Chance} Chance */

/**
 * @typedef {object} Answer
 * @property {number} seed
 * @property {'up' | 'down'} mood
 * @property {number} people
 * @property {number} claps
 * @property {number} seconds
 */

/** @type {Record<string, Answer>} */
const ANSWERS = {
  'cheer-small': { seed: 41, mood: 'up', people: 12, claps: 40, seconds: 1.8 },
  'cheer-big': { seed: 42, mood: 'up', people: 90, claps: 420, seconds: 3 },
  'groan-small': { seed: 43, mood: 'down', people: 12, claps: 0, seconds: 1.9 },
  'groan-big': { seed: 44, mood: 'down', people: 80, claps: 0, seconds: 2.4 },
};

/** How one voice's pitch moves: a cheer jumps up and settles, a groan sinks all the way. */
function contour(/** @type {'up' | 'down'} */ mood, /** @type {Chance} */ chance) {
  const start = chance.between(0.85, 1.2);
  const reach = chance.between(0.15, 0.4);
  const top = chance.between(0.25, 0.5);
  const tremble = 2 * Math.PI * chance.between(4, 7);
  const course = (/** @type {number} */ t) => {
    if (mood === 'down') return 1 - reach * Math.min(1, t / 1.3);
    return 1 + reach * (t < top ? Math.sin((Math.PI * t) / top / 2) : Math.exp(top - t));
  };
  return (/** @type {number} */ t) => start * course(t) * (1 + 0.012 * Math.sin(tremble * t));
}

/** @param {Answer} answer @returns {Sound} */
function answered({ seed, mood, people, claps, seconds }) {
  const chance = chanceFrom(seed);
  const pool = vowels(mood);
  // Room for the longest call that starts last: what runs over the end would come in at the start.
  const mix = silence(2, seconds + 5);
  for (let i = 0; i < people; i += 1) {
    const voice = bent(chance.pick(pool), contour(mood, chance));
    // Most react at once, some late; in a big crowd a second call follows the first.
    const late = Math.abs(chance.normal()) * (mood === 'up' ? 0.14 : 0.1);
    const again = people > 20 && i % 3 === 0 ? chance.between(0.5, seconds * 0.55) : 0;
    addRound(
      mix,
      faded(voice, 0.06, 0.35),
      late + again,
      fromDb(3 * chance.normal()),
      chance.between(-0.9, 0.9),
    );
  }
  // Clapping starts after the shout and thins out.
  const times = Array.from({ length: claps }, () => 0.2 + chance.next() ** 1.4 * (seconds - 0.4));
  addClaps(mix, times, 0.6, chance);
  const hall = sox(
    mix,
    `gain -20 highpass 110 ${mood === 'up' ? 'treble +4 2500' : 'treble -2 2500'} reverb 45 55 60 100 0 -1`,
  );
  const cut = trimmed(hall, 0)
    .map((channel) => channel.slice(0, Math.round(seconds * RATE)))
    .map((channel) => faded(channel, 0.004, seconds * 0.45));
  return trimmed(cut, 0.03);
}

/** @returns {Map<string, Sound>} */
export function makeAnswers() {
  return new Map(Object.entries(ANSWERS).map(([name, answer]) => [name, answered(answer)]));
}
