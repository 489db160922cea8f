/** Keeping a loop seamless through encoders, which spoil a file's first and last samples. */
import { joined } from './shaping.mjs';
import { RATE } from './tools.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */

/** Seconds of the ring's end kept before its start, and of its start kept after its end. */
const BEFORE = 0.75;
const AFTER = 0.5;

/** Seconds at each end of the file where the loop never starts or ends: decoders may shift and cut there. */
const MARGIN = 0.25;

/** Seconds on each side of the seam that are compared: more than any decoder's delay. */
const AROUND = 0.06;

/** The most that two samples may differ, full scale = 1: −44 dB, far under the murmur itself. */
const ALLOWED = 0.006;

/** @param {Sound} ring @returns {Sound} the file's content */
export function wrapped(ring) {
  const [before, after] = [Math.round(BEFORE * RATE), Math.round(AFTER * RATE)];
  return ring.map((channel) => joined([channel.slice(-before), channel, channel.slice(0, after)]));
}

/**
 * The loop for all encodings of a ring. The same samples stand before the seam and behind it, but an encoder may
 * have chosen otherwise for one frame or another: the loop starts where that differs least.
 * @param {readonly Sound[]} decoded each encoding, as it decodes
 * @param {number} length samples of the ring
 * @returns {{ start: number, end: number }} seconds
 * @throws {Error} where no such place is good enough
 */
export function loopOf(decoded, length) {
  const overlap = Math.round((BEFORE + AFTER) * RATE);
  const worst = Float32Array.from({ length: overlap }, (_, i) =>
    Math.max(...decoded.flat().map((channel) => Math.abs(channel[length + i] - channel[i]))),
  );
  const around = Math.round(AROUND * RATE);
  let best = { start: 0, difference: Infinity };
  for (let start = MARGIN * RATE; start <= overlap - MARGIN * RATE; start += RATE / 100) {
    const difference = Math.max(...worst.subarray(start - around, start + around));
    if (difference < best.difference) best = { start, difference };
  }
  if (best.difference > ALLOWED) throw new Error(`The loop's ends differ by ${best.difference}`);
  return { start: best.start / RATE, end: (best.start + length) / RATE };
}
