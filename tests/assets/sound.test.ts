import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import decode from 'audio-decode';
import { beforeAll, describe, expect, test } from 'vitest';
import book from '../../assets/sound/clips.json';
import { integratedLoudness, truePeak } from '../tools/loudness.ts';
import { octaveLevels } from '../tools/octaves.ts';

const RATE = 48_000;
const PUBLIC = new URL('../../assets/public/', import.meta.url);

const VOICE = ['count-5', 'count-4', 'count-3', 'count-2', 'count-1', 'go', 'sound-check', 'time-up'];
const EVENTS = ['beep-low', 'beep-high', 'buzzer', 'cheer-small', 'cheer-big', 'groan-small', 'groan-big'];
const LOOPS = ['crowd-bed', 'crowd-swell'];

const clips = Object.entries(book.clips);
const files = clips.flatMap(([name, clip]) => clip.files.map((file) => ({ name, clip, ...file })));
const loops = clips.flatMap(([name, clip]) => ('loop' in clip ? [{ name, ...clip }] : []));

const bytesOf = (path: string): Buffer => readFileSync(new URL(path, PUBLIC));

/** Loudness wanted of each kind, LUFS. */
function wantedLoudness(name: string): number {
  if (name === 'crowd-bed') return -23;
  return VOICE.includes(name) ? -18 : -20;
}

/** A clip as heard: half a second of silence around it, and one channel on both speakers. */
function asHeard(channels: readonly Float32Array[]): Float32Array[] {
  const both = channels.length === 1 ? [...channels, ...channels] : channels;
  return both.map((samples) => {
    const padded = new Float32Array(samples.length + RATE);
    padded.set(samples, RATE / 2);
    return padded;
  });
}

describe('the sound files', () => {
  test('are the ones the game plays', () => {
    expect(clips.map(([name]) => name).toSorted()).toEqual([...VOICE, ...EVENTS, ...LOOPS].toSorted());
    expect(loops.map(({ name }) => name)).toEqual(LOOPS);
  });

  test('lie on disk in both formats, and nothing else does', () => {
    const listed = clips.flatMap(([name]) => [`${name}.m4a`, `${name}.webm`]);
    expect(readdirSync(new URL('sound', PUBLIC)).toSorted()).toEqual(listed.toSorted());
    expect(files.map(({ path }) => path).toSorted()).toEqual(
      listed.map((file) => `sound/${file}`).toSorted(),
    );
  });

  test.each(files)('$path is what was measured', ({ path, bytes, sha256 }) => {
    const content = bytesOf(path);
    expect(content.length).toBe(bytes);
    expect(createHash('sha256').update(content).digest('hex')).toBe(sha256);
  });

  test('weigh less than 1.5 MB together', () => {
    expect(files.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThan(1_500_000);
  });
});

describe('decoded', () => {
  const decoded = new Map<string, Float32Array[]>();
  const channelsOf = (path: string): Float32Array[] => {
    const channels = decoded.get(path);
    if (!channels) throw new Error(`${path} was not decoded`);
    return channels;
  };

  beforeAll(async () => {
    for (const { path } of files) {
      // One after the other: the decoders share their memory.
      // oxlint-disable-next-line no-await-in-loop
      const { channelData, sampleRate } = await decode(Uint8Array.from(bytesOf(path)));
      if (sampleRate !== RATE) throw new Error(`${path} is at ${sampleRate} Hz`);
      decoded.set(path, channelData);
    }
  }, 60_000);

  test.each(files)('$path is as long and as loud as it says', ({ name, clip, path, lufs }) => {
    const heard = asHeard(channelsOf(path));
    expect((heard[0]?.length ?? 0) / RATE - 1).toBeCloseTo(clip.seconds, 2);
    const loudness = integratedLoudness(heard);
    expect(Math.abs(loudness - lufs)).toBeLessThan(0.05);
    expect(Math.abs(loudness - wantedLoudness(name))).toBeLessThan(0.3);
  });

  test.each(files)('$path keeps a decibel free', ({ path, truePeak: peak }) => {
    const found = truePeak(channelsOf(path));
    expect(found).toBeLessThan(-1);
    expect(Math.abs(found - peak)).toBeLessThan(0.2);
  });

  const events = files.filter(({ name }) => !LOOPS.includes(name));
  test.each(events)('$path is heard from its first 5 ms on', ({ path, onset }) => {
    const channels = channelsOf(path);
    const peak = Math.max(
      ...channels.map((samples) => samples.reduce((most, v) => Math.max(most, Math.abs(v)), 0)),
    );
    const firsts = channels.map((samples) => samples.findIndex((value) => Math.abs(value) >= 0.02 * peak));
    const found = Math.min(...firsts) / RATE;
    expect(found).toBeLessThanOrEqual(0.005);
    expect(Math.abs(found - onset)).toBeLessThan(0.001);
  });

  const loopFiles = loops.flatMap(({ files: both, ...clip }) =>
    both.map((file) => ({ ...clip, path: file.path })),
  );

  test.each(loopFiles)('$path has room around its loop', ({ path, loop, seconds }) => {
    // A decoder that leaves the encoder's delay in shifts everything by less than 50 ms: the loop still fits.
    expect(loop.start).toBeGreaterThanOrEqual(0.25);
    expect(seconds - loop.end).toBeGreaterThanOrEqual(0.25);
    expect(loop.end - loop.start).toBeGreaterThan(12);
    expect(channelsOf(path)).toHaveLength(2);
  });

  test.each(loopFiles)('$path closes without a seam', ({ path, loop }) => {
    const [start, end] = [Math.round(loop.start * RATE), Math.round(loop.end * RATE)];
    let most = 0;
    for (const samples of channelsOf(path)) {
      for (let i = -RATE / 20; i < RATE / 20; i += 1) {
        most = Math.max(most, Math.abs((samples[end + i] ?? 1) - (samples[start + i] ?? -1)));
      }
    }
    expect(most).toBeLessThan(0.012);
  });

  test.each(loopFiles)('$path keeps one level all along', ({ path }) => {
    const [left = new Float32Array(), right = new Float32Array()] = channelsOf(path);
    const levels: number[] = [];
    for (let from = 0; from + RATE <= left.length; from += RATE) {
      let power = 0;
      for (let i = from; i < from + RATE; i += 1) power += (left[i] ?? 0) ** 2 + (right[i] ?? 0) ** 2;
      levels.push(10 * Math.log10(power));
    }
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(3);
  });

  // ANSI S3.5-1997, standard speech spectrum level at normal effort, dB in each hertz, octaves from 500 Hz to 8 kHz.
  test.each(files.filter(({ name }) => name === 'crowd-bed'))(
    '$path has the colour of speech',
    ({ path }) => {
      const speech = { 500: 34.27, 1000: 25.01, 2000: 17.32, 4000: 9.33, 8000: 1.13 };
      const [left = new Float32Array()] = channelsOf(path);
      const levels = octaveLevels(left, [500, 1000, 2000, 4000, 8000]);
      const differences = Object.values(speech).map((level, i) => (levels[i] ?? 0) - level);
      const middle = differences.reduce((sum, value) => sum + value, 0) / differences.length;
      for (const difference of differences) expect(Math.abs(difference - middle)).toBeLessThan(1.5);
    },
  );
});
