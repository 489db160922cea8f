import type { Seconds } from '../basics/units.ts';

/** A clip is heard from where it first reaches this share of its peak (-34 dB); the clips fade in within 2 ms. */
const HEARD = 0.02;

/** What is needed of a decoded sound. */
export interface Samples {
  readonly sampleRate: number;
  readonly numberOfChannels: number;
  getChannelData(channel: number): Float32Array;
}

/**
 * How long after its start a sound is heard. Measured on what was decoded, for decoders differ in how much silence they
 * leave before the first sample.
 */
export function onsetOf(sound: Samples): Seconds {
  const channels = Array.from({ length: sound.numberOfChannels }, (_, channel) =>
    sound.getChannelData(channel),
  );
  const heard = HEARD * Math.max(...channels.map(peakOf));
  if (heard === 0) return 0;
  const firsts = channels.map((samples) => samples.findIndex((value) => Math.abs(value) >= heard));
  return Math.min(...firsts.filter((first) => first >= 0)) / sound.sampleRate;
}

function peakOf(samples: Float32Array): number {
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  return peak;
}
