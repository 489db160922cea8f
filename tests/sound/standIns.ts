import type { Clip, ClipBank } from '../../renderer/sound/clipBank.ts';
import type { ClipName } from '../../renderer/sound/clips.ts';

/* Stand-ins for the parts of Web Audio that the sound uses. What they sound like is tested in a real browser. */

interface Step {
  readonly at: number;
  readonly level: number;
}

export class StandInSource extends EventTarget {
  buffer: AudioBuffer | null = null;
  loop = false;
  loopStart = 0;
  loopEnd = 0;
  startedAt: number | null = null;
  stoppedAt: number | null = null;
  connected = false;

  connect(node: unknown): unknown {
    this.connected = true;
    return node;
  }
  disconnect(): void {
    this.connected = false;
  }
  start(at: number): void {
    this.startedAt = at;
  }
  stop(at = 0): void {
    this.stoppedAt = at;
  }
}

export class StandInContext {
  currentTime = 0;
  baseLatency = 0;
  readonly sources: StandInSource[] = [];
  /** What the gains were told, of whichever node. */
  steps: Step[] = [];

  asContext(): BaseAudioContext {
    return this as unknown as BaseAudioContext;
  }

  param(): AudioParam {
    return {
      value: 1,
      setTargetAtTime: (level: number, at: number) => void this.steps.push({ at, level }),
      cancelScheduledValues: (from: number) => {
        this.steps = this.steps.filter(({ at }) => at < from);
      },
    } as unknown as AudioParam;
  }

  /** The level that the gain approaches at a moment. */
  headingAt(moment: number): number | undefined {
    return this.steps.toSorted((one, other) => one.at - other.at).findLast(({ at }) => at <= moment)?.level;
  }

  createGain(): GainNode {
    const node = { gain: this.param(), connect: (next: unknown) => next, disconnect: () => {} };
    return node as unknown as GainNode;
  }

  createBufferSource(): AudioBufferSourceNode {
    const source = new StandInSource();
    this.sources.push(source);
    return source as unknown as AudioBufferSourceNode;
  }
}

/** A bank whose clips come when they are told to. */
export function standInBank(onset: number, loaded = true) {
  const clip: Clip = { buffer: { duration: 20 } as AudioBuffer, onset };
  let arrive: (clip: Clip | null) => void = () => {};
  const coming = new Promise<Clip | null>((resolve) => {
    arrive = resolve;
  });
  const asked: ClipName[] = [];
  const bank: ClipBank = {
    get: () => (loaded ? clip : null),
    load: (name) => {
      asked.push(name);
      return loaded ? Promise.resolve(clip) : coming;
    },
  };
  return { bank, asked, arrive: () => arrive(clip), fail: () => arrive(null) };
}
