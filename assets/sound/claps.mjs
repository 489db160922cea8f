/** Hands clapping: a burst of noise, as bright as the hands are flat, gone within some hundredths of a second. */
import { RATE } from './tools.mjs';
import { addRound } from './shaping.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */
/** @typedef {import('./chance.mjs').Chance} Chance */

/** Noise through a two-pole resonance. */
function clap(/** @type {number} */ hertz, /** @type {Chance} */ chance) {
  const samples = new Float32Array(Math.round(0.04 * RATE));
  const pole = Math.exp((-Math.PI * hertz) / 2.2 / RATE);
  const turn = 2 * pole * Math.cos((2 * Math.PI * hertz) / RATE);
  let [before, last] = [0, 0];
  for (let i = 0; i < samples.length; i += 1) {
    const value = chance.normal() + turn * last - pole * pole * before;
    [before, last] = [last, value];
    const t = i / RATE;
    samples[i] = value * (1 - pole) * Math.min(1, t / 0.0006) * Math.exp(-t / 0.006);
  }
  return samples;
}

/**
 * @param {Sound} mix two channels
 * @param {readonly number[]} times seconds
 * @param {number} gain
 * @param {Chance} chance
 */
export function addClaps(mix, times, gain, chance) {
  for (const time of times) {
    const hands = clap(chance.between(750, 2400), chance);
    addRound(mix, hands, time, gain * Math.exp(0.4 * chance.normal()), chance.between(-0.9, 0.9));
  }
}
