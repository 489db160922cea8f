/**
 * The crowd's two loops: a murmur of some six hundred scraps of speech, and a swell of calls, vowels and claps.
 * Everything is laid on a ring, reverberation too, so the loop has no seam.
 */
import { CHATTER, SHOUTS } from './chatter.mjs';
import { addClaps } from './claps.mjs';
import { espeak, flite } from './speech.mjs';
import { addRound, bent, faded, fromDb, joined, rms, silence } from './shaping.mjs';
import { vowels } from './vowels.mjs';
import { RATE, sox } from './tools.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */
/** @typedef {import('./chance.mjs').Chance} Chance */

/** 15,360 samples hold whole frames of both encoders (960 and 1,024), so both meet the seam in the same place. */
const FRAMES = 15_360 / RATE;
const BED_SECONDS = 44 * FRAMES;
const SWELL_SECONDS = 40 * FRAMES;

const GRAINS = 600;
const VOICES = 480;
const CLAPS = 700;

const ACCENTS = ['en-gb', 'en-us', 'en-gb-scotland'];
const PEOPLE = ['m1', 'm2', 'm3', 'm4', 'm5', 'm6', 'm7', 'f1', 'f2', 'f3', 'f4', 'f5'];

/** Mean pitches of flite's voices, hertz. */
const FLITE_PITCHES = /** @type {const} */ ({
  rms: [100, 125],
  slt: [170, 210],
  awb: [115, 140],
  kal16: [105, 125],
});

/** Two recordings of every voice: twelve of espeak-ng's, each in some accent, and four of flite's at two pitches. */
function recordings(/** @type {Chance} */ chance) {
  const spoken = [];
  for (const person of [...PEOPLE, ...PEOPLE]) {
    const voice = `${chance.pick(ACCENTS)}+${person}`;
    const [pitch, pace] = [Math.round(chance.between(30, 70)), Math.round(chance.between(150, 210))];
    spoken.push(espeak(chance.pick(CHATTER), { voice, pitch, pace }));
  }
  for (const voice of /** @type {const} */ (['rms', 'slt', 'awb', 'kal16'])) {
    for (const pitch of FLITE_PITCHES[voice]) {
      for (let i = 0; i < 2; i += 1) spoken.push(flite(chance.pick(CHATTER), { voice, pitch }));
    }
  }
  return spoken;
}

/** A scrap of one recording: 0.4 to 1.4 s, up to a seventh faster or slower, one in four backwards. */
function grain(/** @type {readonly Float32Array[]} */ spoken, /** @type {Chance} */ chance) {
  const source = chance.pick(spoken);
  const length = Math.round(chance.between(0.4, 1.4) * RATE);
  const from = Math.floor(chance.next() * Math.max(1, source.length - length));
  const scrap = source.slice(from, from + length);
  if (chance.next() < 0.25) scrap.reverse();
  const speed = chance.between(0.86, 1.16);
  return faded(
    bent(scrap, () => speed),
    0.06,
    0.06,
  );
}

/** Effects on a ring: two rounds go in, the second one comes out, so that what rings on is there at the start. */
function soxRound(/** @type {Sound} */ ring, /** @type {string} */ effects) {
  const length = ring[0].length;
  const twice = ring.map((channel) => joined([channel, channel]));
  return sox(twice, effects).map((channel) => channel.slice(length));
}

/** Brings the synthesisers' mean spectrum within 1.5 dB of that of speech (ANSI S3.5, normal effort, from 500 Hz up). */
const SPEECH_COLOUR = 'highpass 90 treble -3.5 1400 equalizer 1000 1q -1.2 equalizer 4200 1q -2';

/** @param {Chance} chance @returns {Sound} the murmur, as a ring */
export function makeBed(chance) {
  const spoken = recordings(chance);
  const ring = silence(2, BED_SECONDS);
  for (let i = 0; i < GRAINS; i += 1) {
    const scrap = grain(spoken, chance);
    const gain = fromDb(3 * chance.normal()) * (0.02 / Math.max(0.01, rms(scrap)));
    addRound(ring, scrap, ((i + chance.next()) / GRAINS) * BED_SECONDS, gain, chance.between(-0.9, 0.9));
  }
  return soxRound(ring, `${SPEECH_COLOUR} reverb 35 60 45 100 0 -2`);
}

/** @param {Chance} chance @returns {Sound} the swell, as a ring */
export function makeSwell(chance) {
  const ring = silence(2, SWELL_SECONDS);
  const calls = SHOUTS.flatMap((shout) =>
    ['m2', 'm3', 'm5', 'f1', 'f2', 'f4'].map((person) =>
      espeak(shout, { voice: `${chance.pick(ACCENTS)}+${person}`, pitch: 75, pace: 170 }),
    ),
  );
  const long = vowels('up');
  // One in each equal part of the ring, or chance would leave holes.
  const place = (/** @type {number} */ i, /** @type {number} */ n) =>
    ((i + chance.next()) / n) * SWELL_SECONDS;
  for (let i = 0; i < VOICES; i += 1) {
    const rise = chance.between(0.1, 0.45);
    const start = chance.between(0.95, 1.25);
    const calling = i % 3 === 0;
    const voice = bent(chance.pick(calling ? calls : long), (t) => start + rise * Math.min(1, t / 0.8));
    const gain = fromDb(2 * chance.normal()) * (calling ? 0.8 : 1);
    addRound(ring, faded(voice, 0.12, 0.2), place(i, VOICES), gain, chance.between(-0.9, 0.9));
  }
  const times = Array.from({ length: CLAPS }, (_, i) => place(i, CLAPS));
  addClaps(ring, times, 0.5, chance);
  return soxRound(ring, 'gain -20 highpass 120 treble +3 2500 reverb 40 60 55 100 0 -2');
}
