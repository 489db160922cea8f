import recorderUrl from './recorder.ts?worker&url';

/** What came out of a node, by frames of the audio clock; the louder of the channels. */
export interface Recording {
  readonly start: number;
  readonly samples: Float32Array;
}

/** Records what comes out of a node until it is asked for. At most `seconds`. */
export async function record(from: AudioNode, seconds: number): Promise<() => Promise<Recording>> {
  const { context } = from;
  await context.audioWorklet.addModule(recorderUrl);
  const recorder = new AudioWorkletNode(context, 'recorder', { processorOptions: { seconds } });
  from.connect(recorder).connect(context.destination);
  return () =>
    new Promise((resolve) => {
      recorder.port.addEventListener('message', ({ data }: MessageEvent<Recording>) => {
        from.disconnect(recorder);
        recorder.disconnect();
        resolve(data);
      });
      recorder.port.start();
      recorder.port.postMessage('give');
    });
}

/** A clip is heard where it first reaches this share of its peak, as its files were measured. */
const HEARD = 0.02;

/** The frame at which something is first heard between two frames; null where nothing is. */
export function onsetIn({ start, samples }: Recording, from: number, to: number): number | null {
  const first = Math.max(0, Math.round(from) - start);
  const part = samples.subarray(first, Math.round(to) - start);
  const peak = part.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (peak < 1e-4) return null;
  return start + first + part.findIndex((value) => Math.abs(value) >= HEARD * peak);
}

/** Root mean square between two frames. */
export function levelIn({ start, samples }: Recording, from: number, to: number): number {
  const part = samples.subarray(Math.round(from) - start, Math.round(to) - start);
  return Math.sqrt(part.reduce((sum, value) => sum + value * value, 0) / part.length);
}
