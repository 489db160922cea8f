/**
 * A loudness meter after ITU-R BS.1770 for one or two channels at 48 kHz, written from the standard's formulas and
 * its printed coefficients, so that what the sound maker's own meter says can be checked.
 */

const RATE = 48_000;

interface Biquad {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

/** Stage 1, the head's shelf (BS.1770, table 1). */
const HEAD: Biquad = {
  b: [1.53512485958697, -2.69169618940638, 1.19839281085285],
  a: [-1.69065929318241, 0.73248077421585],
};

/** Stage 2, the high-pass (BS.1770, table 2). */
const HIGH_PASS: Biquad = { b: [1, -2, 1], a: [-1.99004745483398, 0.99007225036621] };

function filtered(samples: Float64Array, { b, a }: Biquad): Float64Array {
  const out = new Float64Array(samples.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  samples.forEach((x, i) => {
    const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
    out[i] = y;
    [x2, x1, y2, y1] = [x1, x, y1, y];
  });
  return out;
}

const toLoudness = (power: number): number => -0.691 + 10 * Math.log10(power);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Summed K-weighted power of every 400 ms block, three quarters over the one before. */
function blockPowers(channels: readonly Float32Array[]): number[] {
  const weighted = channels.map((samples) => filtered(filtered(Float64Array.from(samples), HEAD), HIGH_PASS));
  const block = 0.4 * RATE;
  const powers: number[] = [];
  for (let from = 0; from + block <= (weighted[0]?.length ?? 0); from += block / 4) {
    let sum = 0;
    for (const channel of weighted) {
      for (const value of channel.subarray(from, from + block)) sum += value * value;
    }
    powers.push(sum / block);
  }
  return powers;
}

/**
 * Integrated loudness in LUFS (the same as LKFS): blocks under −70 are left out, then those more than 10 under the
 * mean of the rest. −Infinity where no block is left.
 * @param channels one channel as such; two as left and right (weights 1 and 1)
 */
export function integratedLoudness(channels: readonly Float32Array[]): number {
  const audible = blockPowers(channels).filter((power) => toLoudness(power) > -70);
  if (audible.length === 0) return -Infinity;
  const gate = toLoudness(mean(audible)) - 10;
  return toLoudness(mean(audible.filter((power) => toLoudness(power) > gate)));
}

/** Samples on each side that make one in between. */
const REACH = 24;

/**
 * Highest peak between the samples too, in dBTP: four times oversampled with a windowed sinc, as BS.1770 annex 2
 * does with a shorter filter.
 */
export function truePeak(channels: readonly Float32Array[]): number {
  let peak = 0;
  for (const quarter of [0, 0.25, 0.5, 0.75]) {
    const taps = Float64Array.from({ length: 2 * REACH }, (_, k) => {
      const t = k - REACH + 1 - quarter;
      const sinc = t === 0 ? 1 : Math.sin(Math.PI * t) / (Math.PI * t);
      return sinc * Math.cos((Math.PI * t) / (2 * REACH + 2)) ** 2;
    });
    for (const samples of channels) {
      const padded = new Float64Array(samples.length + 2 * REACH);
      padded.set(samples, REACH);
      for (let i = 0; i < samples.length; i += 1) {
        let value = 0;
        for (let k = 0; k < taps.length; k += 1) value += (taps[k] ?? 0) * (padded[i + k + 1] ?? 0);
        peak = Math.max(peak, Math.abs(value));
      }
    }
  }
  return 20 * Math.log10(peak);
}
