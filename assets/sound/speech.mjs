/** Speech from the two synthesisers, at RATE, one channel. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { decode, run } from './tools.mjs';
import { evened } from './shaping.mjs';

/**
 * @param {(wav: string) => void} speak writes a WAV file
 * @returns {Float32Array} every recording equally strong
 */
function recorded(speak) {
  const folder = mkdtempSync(join(tmpdir(), 'loud-gym-'));
  try {
    const wav = join(folder, 'speech.wav');
    speak(wav);
    return evened(decode(wav, 1)[0]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * @typedef {object} FliteVoice
 * @property {'rms' | 'slt' | 'awb' | 'kal16'} voice
 * @property {number} [pitch] mean of the voice, in hertz
 * @property {number} [stretch] 1 = the voice's own pace, 2 = half as fast
 */

/** @param {string} text @param {FliteVoice} how @returns {Float32Array} */
export function flite(text, { voice, pitch, stretch = 1 }) {
  const settings = ['--setf', `duration_stretch=${stretch}`];
  if (pitch !== undefined) settings.push('--setf', `int_f0_target_mean=${pitch}`);
  return recorded((wav) => run('flite', ['-voice', voice, ...settings, '-t', text, '-o', wav]));
}

/**
 * @typedef {object} EspeakVoice
 * @property {string} voice accent and variant, as `en-gb+m3`
 * @property {number} pitch 0 to 99
 * @property {number} pace words per minute
 */

/** @param {string} text words, or phonemes in double brackets @param {EspeakVoice} how @returns {Float32Array} */
export function espeak(text, { voice, pitch, pace }) {
  const args = ['-v', voice, '-p', String(pitch), '-s', String(pace), '-z'];
  return recorded((wav) => run('espeak-ng', [...args, '-w', wav, text]));
}
