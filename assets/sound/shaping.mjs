/** Plain work on samples: silence, gain, fades, bends of pitch, mixing, cutting to the onset, a limiter. */
import { RATE } from './tools.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */

/** @param {number} db @returns {number} */
export const fromDb = (db) => 10 ** (db / 20);

/**
 * @param {number} channels
 * @param {number} seconds
 * @returns {Sound}
 */
export function silence(channels, seconds) {
  return Array.from({ length: channels }, () => new Float32Array(Math.round(seconds * RATE)));
}

/** @param {Sound} sound @param {number} gain @returns {Sound} */
export function scaled(sound, gain) {
  return sound.map((channel) => channel.map((value) => value * gain));
}

/** One after the other. @param {readonly Float32Array[]} parts @returns {Float32Array} */
export function joined(parts) {
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** @param {Float32Array} samples @returns {number} */
export function rms(samples) {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return Math.sqrt(sum / Math.max(1, samples.length));
}

/** As strong as every other voice: RMS 0.1. @param {Float32Array} samples @returns {Float32Array} */
export function evened(samples) {
  return scaled([samples], 0.1 / rms(samples))[0];
}

/** 0 to 1 along half a cosine. @param {number} part @returns {number} */
const ease = (part) => 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, part));

/**
 * Raised-cosine fades at both ends.
 * @param {Float32Array} samples
 * @param {number} inSeconds
 * @param {number} outSeconds
 * @returns {Float32Array}
 */
export function faded(samples, inSeconds, outSeconds) {
  const rise = Math.max(1, Math.round(inSeconds * RATE));
  const fall = Math.max(1, Math.round(outSeconds * RATE));
  return samples.map((value, i) => value * ease(i / rise) * ease((samples.length - 1 - i) / fall));
}

/**
 * Plays a recording at a speed that changes on the way: pitch, pace and the size of the throat together.
 * @param {Float32Array} samples
 * @param {(seconds: number) => number} speed 1 = as recorded, at a time since the start of the result
 * @returns {Float32Array} cubic (Catmull–Rom) interpolation; ends where the recording ends
 */
export function bent(samples, speed) {
  const out = [];
  const at = (/** @type {number} */ i) => samples[Math.min(samples.length - 1, Math.max(0, i))];
  for (let position = 0; position < samples.length - 1; position += speed(out.length / RATE)) {
    const i = Math.floor(position);
    const t = position - i;
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    out.push(b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a))));
  }
  return Float32Array.from(out);
}

/**
 * Adds a voice to a stereo mix; what runs over the end comes in again at the start, so that loops close.
 * @param {Sound} mix two channels
 * @param {Float32Array} voice
 * @param {number} atSeconds
 * @param {number} gain
 * @param {number} pan −1 left to 1 right, equal power
 */
export function addRound(mix, voice, atSeconds, gain, pan) {
  const length = mix[0].length;
  const angle = ((pan + 1) * Math.PI) / 4;
  const gains = [gain * Math.cos(angle), gain * Math.sin(angle)];
  const start = Math.round(atSeconds * RATE);
  for (let i = 0; i < voice.length; i += 1) {
    const to = (start + i) % length;
    mix[0][to] += voice[i] * gains[0];
    mix[1][to] += voice[i] * gains[1];
  }
}

/** Audible: one fiftieth (−34 dB) of the clip's own peak. The same threshold everywhere, also in the tests. */
export const AUDIBLE = 0.02;

/**
 * The first sample that is audible, in any channel.
 * @param {Sound} sound
 * @returns {number} index
 */
export function onsetIndex(sound) {
  let peak = 0;
  for (const channel of sound) for (const value of channel) peak = Math.max(peak, Math.abs(value));
  const firsts = sound.map((channel) => channel.findIndex((value) => Math.abs(value) >= AUDIBLE * peak));
  return Math.min(...firsts.filter((index) => index >= 0));
}

/** Seconds left before the onset: some decoders of the Opus files drop the first half millisecond. */
const LEAD = 0.002;

/**
 * Cuts so that the first audible sample is LEAD from the start, and the last one `tail` seconds from the end.
 * @param {Sound} sound
 * @param {number} tail
 * @returns {Sound}
 */
export function trimmed(sound, tail) {
  const onset = onsetIndex(sound);
  const lead = Math.round(LEAD * RATE);
  const padded = sound.map((channel) => joined([new Float32Array(Math.max(0, lead - onset)), channel]));
  const from = Math.max(0, onset - lead);
  const last = padded[0].length - onsetIndex(padded.map((channel) => channel.toReversed()));
  const to = last + Math.round(tail * RATE);
  return padded.map((channel) => faded(channel.slice(from, to), 0.001, tail));
}

/**
 * Holds peaks under a ceiling with a gain that moves smoothly, 5 ms ahead of each peak (the same for all channels).
 * @param {Sound} sound
 * @param {number} ceiling full scale = 1
 * @param {boolean} round whether the sound is a loop, so that the gain closes too
 * @returns {Sound}
 */
export function limited(sound, ceiling, round = false) {
  const length = sound[0].length;
  const reach = Math.round(0.005 * RATE);
  const want = new Float32Array(length).fill(1);
  for (const channel of sound) {
    for (let i = 0; i < length; i += 1)
      want[i] = Math.min(want[i], ceiling / Math.abs(channel[i] || ceiling));
  }
  const index = (/** @type {number} */ i) =>
    round ? (i + length) % length : Math.min(length - 1, Math.max(0, i));
  // The least gain wanted within reach, then its mean over the same reach: never more than what a peak allows.
  const least = new Float32Array(length).fill(1);
  for (let i = 0; i < length; i += 1) {
    if (want[i] === 1) continue;
    for (let j = i - reach; j <= i + reach; j += 1) least[index(j)] = Math.min(least[index(j)], want[i]);
  }
  const gain = new Float32Array(length);
  let sum = 0;
  for (let j = -reach; j <= reach; j += 1) sum += least[index(j)];
  for (let i = 0; i < length; i += 1) {
    gain[i] = sum / (2 * reach + 1);
    sum += least[index(i + reach + 1)] - least[index(i - reach)];
  }
  return sound.map((channel) => channel.map((value, i) => value * gain[i]));
}
