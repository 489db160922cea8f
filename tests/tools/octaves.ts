const RATE = 48_000;
const FRAME = 1024;

/**
 * Mean power density in octave bands, in dB with an arbitrary zero: periodograms of Hann-windowed frames, averaged.
 * @param samples at 48 kHz
 * @param centres hertz; 200 and up, as a bin is 47 Hz wide
 */
export function octaveLevels(samples: Float32Array, centres: readonly number[]): number[] {
  const window = Float64Array.from(
    { length: FRAME },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / FRAME),
  );
  const cosine = Float64Array.from({ length: FRAME }, (_, i) => Math.cos((2 * Math.PI * i) / FRAME));
  const power = (frame: Float64Array, bin: number): number => {
    let [re, im] = [0, 0];
    for (let i = 0; i < FRAME; i += 1) {
      const turn = (bin * i) % FRAME;
      re += (frame[i] ?? 0) * (cosine[turn] ?? 0);
      im += (frame[i] ?? 0) * (cosine[(turn + FRAME / 4) % FRAME] ?? 0);
    }
    return re * re + im * im;
  };
  const frames: Float64Array[] = [];
  for (let from = 0; from + FRAME <= samples.length; from += 2 * FRAME) {
    frames.push(window.map((weight, i) => weight * (samples[from + i] ?? 0)));
  }
  return centres.map((centre) => {
    const first = Math.ceil((centre / Math.SQRT2 / RATE) * FRAME);
    const last = Math.floor(((centre * Math.SQRT2) / RATE) * FRAME);
    let sum = 0;
    for (let bin = first; bin <= last; bin += 1) for (const frame of frames) sum += power(frame, bin);
    return 10 * Math.log10(sum / (last - first + 1));
  });
}
