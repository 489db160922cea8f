/* Runs beside the audio clock and keeps every sample that comes in, with the frame it belongs to. */

declare const currentFrame: number;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, made: unknown): void;

class Recorder extends AudioWorkletProcessor {
  private readonly start = currentFrame;
  private readonly samples: Float32Array<ArrayBuffer>;
  private done = false;

  constructor({ processorOptions }: { processorOptions: { seconds: number } }) {
    super();
    this.samples = new Float32Array(Math.ceil(processorOptions.seconds * sampleRate));
    this.port.addEventListener('message', () => {
      this.done = true;
      this.port.postMessage({ start: this.start, samples: this.samples }, [this.samples.buffer]);
    });
    this.port.start();
  }

  process([channels = []]: Float32Array[][]): boolean {
    const at = currentFrame - this.start;
    for (const channel of channels) {
      for (const [index, value] of channel.entries()) {
        const kept = this.samples[at + index];
        if (kept !== undefined && Math.abs(value) > Math.abs(kept)) this.samples[at + index] = value;
      }
    }
    return !this.done;
  }
}

registerProcessor('recorder', Recorder);
