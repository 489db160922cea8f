import { invariant } from '../basics/invariant.ts';
import type { Seconds } from '../basics/units.ts';
import type { Clip, ClipBank } from './clipBank.ts';
import { isClipName } from './clips.ts';
import type { Cue, Planned } from './cues.ts';

export interface Scheduler {
  /** Plans every cue at once, at moments of the context's own clock. */
  plan(cues: readonly Cue[]): Planned;
}

/** A cut that does not click. */
const HUSH: Seconds = 0.01;

/**
 * Plans cues as sources on the audio clock, so that nothing that happens on the page can make them late. A clip starts
 * earlier than its cue by its own onset: what falls on the cue is what is heard.
 *
 * @param tolerance how much too late a cue may still be played; by default a late cue is dropped, for a wrong count is
 *   worse than a missing one
 */
export function scheduler(
  context: BaseAudioContext,
  out: AudioNode,
  bank: ClipBank,
  tolerance: Seconds = 0,
): Scheduler {
  function start(cue: Cue, clip: Clip, playing: Set<() => void>): void {
    const at = cue.at - clip.onset;
    if (at < soonest(context) - tolerance) return;
    const level = context.createGain();
    level.gain.value = cue.gain;
    const source = context.createBufferSource();
    source.buffer = clip.buffer;
    source.connect(level).connect(out);
    source.start(Math.max(0, at));
    const stop = () => {
      const now = context.currentTime;
      if (at > now) level.disconnect();
      else level.gain.setTargetAtTime(0, now, HUSH / 4);
      source.stop(now + HUSH);
    };
    playing.add(stop);
    source.addEventListener('ended', () => {
      playing.delete(stop);
      level.disconnect();
    });
  }

  return {
    plan: (cues) => {
      const playing = new Set<() => void>();
      let cancelled = false;
      for (const cue of cues) {
        const { clip: name } = cue;
        invariant(isClipName(name), `${name} is the name of a clip`);
        const clip = bank.get(name);
        if (clip) start(cue, clip, playing);
        else
          void bank.load(name).then((late) => {
            if (late && !cancelled) start(cue, late, playing);
          });
      }
      return {
        cancel: () => {
          cancelled = true;
          for (const stop of playing) stop();
          playing.clear();
        },
      };
    },
  };
}

/** The first moment that a source can still be given: one hardware buffer may be rendered already. */
function soonest(context: BaseAudioContext): Seconds {
  const buffered = 'baseLatency' in context ? Number(context.baseLatency) : 0;
  return context.currentTime + (buffered || 0);
}
