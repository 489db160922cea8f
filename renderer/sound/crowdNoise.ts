import type { Seconds } from '../basics/units.ts';
import type { Clip, ClipBank } from './clipBank.ts';
import { loopOf, type ClipName } from './clips.ts';
import {
  answerMove,
  enterMove,
  leaveMove,
  LEAVING,
  swellMove,
  type CrowdMove,
  type Layer,
} from './crowdPlan.ts';
import type { Planned } from './cues.ts';
import { scheduler } from './scheduler.ts';

const LOOPS: Readonly<Record<Layer, ClipName>> = { bed: 'crowd-bed', swell: 'crowd-swell' };

/** What the crowd does; see the contract in `store/ports.ts`. */
export interface CrowdNoise {
  enter(): void;
  swell(seconds: Seconds, weight: number): void;
  answer(made: boolean, weight: number): void;
  leave(): void;
}

interface Standing {
  readonly gain: GainNode;
  source: AudioBufferSourceNode | null;
}

/** The crowd on an audio context: two looping layers, ramped by gains of their own, and its shouts. */
export function crowdNoise(context: BaseAudioContext, out: AudioNode, bank: ClipBank): CrowdNoise {
  const shouts = scheduler(context, out, bank);
  const layers: Readonly<Record<Layer, Standing>> = { bed: layer(), swell: layer() };
  let shouting: Planned | null = null;
  /** Counts visits: what was meant for an earlier one is dropped. Odd while the crowd is here. */
  let visit = 0;
  const here = () => visit % 2 === 1;

  function layer(): Standing {
    const gain = context.createGain();
    gain.gain.value = 0;
    gain.connect(out);
    return { gain, source: null };
  }

  function make(move: CrowdMove): void {
    const begun = new Set<Layer>();
    for (const { layer: name, at, level, settle } of move.ramps) {
      const { gain } = layers[name].gain;
      if (!begun.has(name)) gain.cancelScheduledValues(at);
      begun.add(name);
      gain.setTargetAtTime(level, at, settle);
    }
    if (move.shouts.length === 0) return;
    shouting?.cancel();
    shouting = shouts.plan(move.shouts);
  }

  function sound(name: Layer, clip: Clip): void {
    const loop = loopOf(LOOPS[name]);
    const standing = layers[name];
    standing.source?.stop();
    const source = context.createBufferSource();
    source.buffer = clip.buffer;
    source.loop = true;
    source.loopStart = loop?.start ?? 0;
    source.loopEnd = loop?.end ?? clip.buffer.duration;
    source.connect(standing.gain);
    source.addEventListener('ended', () => source.disconnect());
    source.start(context.currentTime, loop?.start ?? 0);
    standing.source = source;
  }

  async function stand(name: Layer, during: number): Promise<void> {
    const clip = bank.get(LOOPS[name]) ?? (await bank.load(LOOPS[name]));
    if (clip && visit === during) sound(name, clip);
  }

  return {
    enter: () => {
      if (here()) return;
      visit += 1;
      make(enterMove(context.currentTime));
      void stand('bed', visit);
      void stand('swell', visit);
    },
    swell: (seconds, weight) => {
      if (here()) make(swellMove(context.currentTime, seconds, weight));
    },
    answer: (made, weight) => {
      if (here()) make(answerMove(context.currentTime, made, weight));
    },
    leave: () => {
      if (!here()) return;
      visit += 1;
      make(leaveMove(context.currentTime));
      for (const { source } of Object.values(layers)) source?.stop(context.currentTime + LEAVING);
    },
  };
}
