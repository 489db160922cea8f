/**
 * The outside programs, all from Debian: espeak-ng and flite speak, sox filters, ffmpeg converts,
 * encodes and measures. Samples go in and out as raw 32-bit floats, so nothing is rounded on the way.
 */
import { spawnSync } from 'node:child_process';

/** Samples per second of every sound here; Opus works at this rate and at no other. */
export const RATE = 48_000;

/**
 * One to two channels of equal length, full scale ±1.
 * @typedef {Float32Array[]} Sound
 */

const PROGRAMS = {
  'espeak-ng': ['--version'],
  flite: ['--version'],
  sox: ['--version'],
  ffmpeg: ['-version'],
};

/**
 * Runs a program to its end.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {Uint8Array} [input] what it reads from standard input
 * @returns {{ stdout: Buffer, stderr: string }}
 * @throws {Error} where it is not there, or ends with another code than 0
 */
export function run(program, args, input) {
  const { status, stdout, stderr, error } = spawnSync(program, args, {
    input: input ?? new Uint8Array(),
    maxBuffer: 1 << 28,
    env: { ...process.env, LC_ALL: 'C' },
  });
  if (error) throw error;
  if (status !== 0)
    throw new Error(`${program} ${args.join(' ')} ended with ${status}:\n${stderr.toString()}`);
  return { stdout, stderr: stderr.toString() };
}

/**
 * The version line of each program.
 * @returns {Record<string, string>}
 * @throws {Error} that names what is missing and how to install it
 */
export function toolVersions() {
  /** @type {Record<string, string>} */
  const versions = {};
  const missing = [];
  for (const [program, args] of Object.entries(PROGRAMS)) {
    const { error, stdout } = spawnSync(program, args);
    const line = error ? undefined : /\d+\.\d+\S*/.exec(stdout.toString())?.[0];
    if (line === undefined) missing.push(program);
    else versions[program] = line;
  }
  if (missing.length > 0) {
    throw new Error(`Missing: ${missing.join(', ')}. On Debian: apt-get install -y ${missing.join(' ')}`);
  }
  return versions;
}

/**
 * Interleaved raw floats, as sox and ffmpeg read them.
 * @param {Sound} sound
 * @returns {Uint8Array}
 */
export function toRaw(sound) {
  const length = sound[0].length;
  const raw = new Float32Array(length * sound.length);
  sound.forEach((channel, c) => {
    for (let i = 0; i < length; i += 1) raw[i * sound.length + c] = channel[i];
  });
  return new Uint8Array(raw.buffer);
}

/**
 * @param {Buffer} raw interleaved floats
 * @param {number} channels
 * @returns {Sound}
 */
export function fromRaw(raw, channels) {
  const values = new Float32Array(Uint8Array.from(raw).buffer);
  const sound = Array.from({ length: channels }, () => new Float32Array(values.length / channels));
  sound.forEach((channel, c) => {
    for (let i = 0; i < channel.length; i += 1) channel[i] = values[i * channels + c];
  });
  return sound;
}

/**
 * A sound through a chain of sox effects.
 * @param {Sound} sound
 * @param {string} effects as on sox's command line; must keep the number of channels
 * @returns {Sound}
 */
export function sox(sound, effects) {
  const format = ['-t', 'f32', '-r', String(RATE), '-c', String(sound.length)];
  const args = ['-R', '-D', '-V1', ...format, '-', ...format, '-', ...effects.split(' ')];
  return fromRaw(run('sox', args, toRaw(sound)).stdout, sound.length);
}

/**
 * Decodes a sound file at RATE.
 * @param {string} path
 * @param {number} channels
 * @returns {Sound}
 */
export function decode(path, channels) {
  const format = ['-f', 'f32le', '-ar', String(RATE), '-ac', String(channels), '-'];
  return fromRaw(run('ffmpeg', ['-v', 'error', '-i', path, ...format]).stdout, channels);
}
