/** Countdown beeps and the arena horn, added up from sines, so that no harmonic folds back. */
import { RATE, sox } from './tools.mjs';
import { faded, joined, silence, trimmed } from './shaping.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */

/**
 * A tone out of sines.
 * @param {number} seconds
 * @param {readonly (readonly [hertz: number, amplitude: number])[]} partials
 * @returns {Float32Array}
 */
function tone(seconds, partials) {
  const [samples] = silence(1, seconds);
  for (const [hertz, amplitude] of partials) {
    // Phases spread by the square of the partial's place, or the sines would pile up in one peak.
    const phase = (hertz / 100) ** 2;
    const step = (2 * Math.PI * hertz) / RATE;
    for (let i = 0; i < samples.length; i += 1) samples[i] += amplitude * Math.sin(phase + step * i);
  }
  return samples;
}

/** Hertz of the horn's four reeds: two thirds a little out of tune, which beat as a big horn does. */
const REEDS = [207, 208.6, 259, 261.3];

/** Above this many hertz the horn falls off, so that it cuts through without hurting. */
const HORN_SOFT_ABOVE = 1600;

/** @returns {Float32Array} */
function horn() {
  const partials = REEDS.flatMap((reed) =>
    Array.from({ length: Math.floor(6000 / reed) }, (_, k) => {
      const hertz = reed * (k + 1);
      return /** @type {const} */ ([hertz, (k + 1) ** -0.7 / (1 + (hertz / HORN_SOFT_ABOVE) ** 2)]);
    }),
  );
  return faded(tone(1.1, partials), 0.012, 0.14);
}

/** @returns {Map<string, Sound>} */
export function makeSignals() {
  const low = faded(tone(0.14, [[880, 1], [1760, 0.25]]), 0.003, 0.05); // prettier-ignore
  const high = faded(tone(0.4, [[1318.5, 1], [2637, 0.25]]), 0.003, 0.16); // prettier-ignore
  const hall = sox([joined([horn(), ...silence(1, 0.2)])], 'gain -30 reverb 30 60 40 100 0 -4');
  return new Map([
    ['beep-low', trimmed([low], 0.005)],
    ['beep-high', trimmed([high], 0.005)],
    ['buzzer', trimmed(hall, 0.06)],
  ]);
}
