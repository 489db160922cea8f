/** From samples to files: loudness, ceiling, the two encodings, and what was measured after decoding them. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromDb, limited, onsetIndex, scaled, silence, joined } from './shaping.mjs';
import { RATE, decode, run, toRaw } from './tools.mjs';

/** @typedef {import('./tools.mjs').Sound} Sound */

/** Highest sample before encoding, dBFS: encoders add a decibel or more on the way. */
const CEILING = -3;

/** Highest true peak allowed in a decoded file, dBTP. */
const PEAK_ALLOWED = -1;

/**
 * Loudness and true peak (ITU-R BS.1770) as heard from two speakers: one channel plays on both. Half a second of
 * silence at each end lets clips shorter than one gating block be measured; the gate keeps it out of long ones.
 * @param {Sound} sound
 * @returns {{ lufs: number, truePeak: number }} LUFS, dBTP
 */
export function measured(sound) {
  const [pad] = silence(1, 0.5);
  const padded = sound.map((channel) => joined([pad, channel, pad]));
  const input = ['-f', 'f32le', '-ar', String(RATE), '-ac', String(sound.length), '-i', '-'];
  const meter = 'ebur128=metadata=1:peak=true:dualmono=true,ametadata=print:key=lavfi.r128.I:file=-';
  const args = ['-hide_banner', ...input, '-af', meter, '-f', 'null', '-'];
  const { stdout, stderr } = run('ffmpeg', args, toRaw(padded));
  // The running value to a thousandth, of which the last one counts; the peak stands in the summary.
  const lufs = stdout
    .toString()
    .match(/(?<=r128\.I=)\S+/g)
    ?.at(-1);
  const truePeak = /Peak:\s+(\S+) dBFS/.exec(stderr)?.[1];
  return { lufs: Number(Number(lufs).toFixed(2)), truePeak: Number(truePeak) };
}

/**
 * Brings a sound to a loudness under the ceiling. The limiter takes a little away, so it goes round a few times.
 * @param {Sound} sound
 * @param {number} lufs
 * @param {boolean} round whether it is a loop
 * @returns {Sound}
 */
export function levelled(sound, lufs, round) {
  let gain = fromDb(lufs - measured(sound).lufs);
  for (let i = 0; i < 4; i += 1) {
    gain *= fromDb(lufs - measured(limited(scaled(sound, gain), fromDb(CEILING), round)).lufs);
  }
  return limited(scaled(sound, gain), fromDb(CEILING), round);
}

/**
 * AAC at one quality throughout and without made-up noise: that leaves the encoder no memory, so a loop comes out
 * at its end as it went in at its start (ten times nearer than at a constant rate).
 * @type {Record<string, (channels: number) => string[]>}
 */
const ENCODERS = {
  webm: (channels) => ['-c:a', 'libopus', '-b:a', channels === 1 ? '56k' : '96k'],
  m4a: () => ['-c:a', 'aac', '-q:a', '1', '-aac_coder', 'fast', '-aac_pns', '0', '-movflags', '+faststart'],
};

/**
 * @typedef {object} ClipFile
 * @property {string} path below assets/public
 * @property {number} bytes
 * @property {string} sha256
 * @property {number} onset seconds to the first audible sample after decoding
 * @property {number} lufs
 * @property {number} truePeak
 */

/**
 * Encodes a sound in both formats and measures what comes back out of each.
 * @param {string} folder assets/public
 * @param {string} name
 * @param {Sound} sound
 * @returns {{ file: ClipFile, back: Sound }[]} each with what it decodes to
 * @throws {Error} where a decoded peak is too high
 */
export function encoded(folder, name, sound) {
  const channels = sound.length;
  const input = ['-f', 'f32le', '-ar', String(RATE), '-ac', String(channels), '-i', '-'];
  return Object.entries(ENCODERS).map(([format, encoder]) => {
    const path = `sound/${name}.${format}`;
    const file = join(folder, path);
    const exact = ['-map_metadata', '-1', '-fflags', '+bitexact', '-flags:a', '+bitexact'];
    run('ffmpeg', ['-v', 'error', '-y', ...input, ...encoder(channels), ...exact, file], toRaw(sound));
    const bytes = readFileSync(file);
    const back = decode(file, channels);
    const { lufs, truePeak } = measured(back);
    if (truePeak > PEAK_ALLOWED) throw new Error(`${path}: ${truePeak} dBTP after decoding`);
    const onset = Number((onsetIndex(back) / RATE).toFixed(4));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    return { file: { path, bytes: bytes.length, sha256, onset, lufs, truePeak }, back };
  });
}
