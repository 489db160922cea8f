import type { Seconds } from '../basics/units.ts';
import { clipSeconds, isClipName, isSpoken } from './clips.ts';
import type { Cue } from './cues.ts';

/* The crowd makes room for a voice: words over a crowd are understood only well above it. */

/** A step of the crowd's level: from `at` on it approaches `level`. */
export interface Duck {
  readonly at: Seconds;
  readonly level: number;
  readonly settle: Seconds;
}

const MADE_ROOM = 0.25;
const EARLY: Seconds = 0.12;
const SETTLE: Seconds = 0.04;
const BACK: Seconds = 0.25;
/** Words closer together than this are one stretch. */
const BREATH: Seconds = 0.7;
/** A plan whose cues are that long gone has nothing more to say. */
const LONG_PAST: Seconds = 10;

/** Keeps a gain ducked under every word that is planned. */
export interface Ducking {
  /** Makes room for the words among these cues; returns the way to take that back. */
  add(cues: readonly Cue[]): () => void;
}

export function ducking(context: BaseAudioContext, gain: AudioParam): Ducking {
  const plans = new Set<readonly Cue[]>();

  function redraw(): void {
    const now = context.currentTime;
    for (const cues of plans) if (cues.every(({ at }) => at < now - LONG_PAST)) plans.delete(cues);
    const steps = duckUnder([...plans].flat());
    const present = steps.findLast(({ at }) => at <= now);
    gain.cancelScheduledValues(now);
    gain.setTargetAtTime(present?.level ?? 1, now, present?.settle ?? BACK);
    for (const { at, level, settle } of steps) if (at > now) gain.setTargetAtTime(level, at, settle);
  }

  return {
    add: (cues) => {
      plans.add(cues);
      redraw();
      return () => {
        plans.delete(cues);
        redraw();
      };
    },
  };
}

/** The level of the crowd around spoken cues; other cues cut through by themselves. */
export function duckUnder(cues: readonly Cue[]): Duck[] {
  return stretches(cues).flatMap(({ start, end }) => [
    { at: start - EARLY, level: MADE_ROOM, settle: SETTLE },
    { at: end, level: 1, settle: BACK },
  ]);
}

interface Stretch {
  readonly start: Seconds;
  readonly end: Seconds;
}

function stretches(cues: readonly Cue[]): Stretch[] {
  const words = cues
    .flatMap(({ clip, at }) =>
      isClipName(clip) && isSpoken(clip) ? [{ start: at, end: at + clipSeconds(clip) }] : [],
    )
    .toSorted((one, other) => one.start - other.start);
  const merged: Stretch[] = [];
  for (const word of words) {
    const last = merged.at(-1);
    if (last && word.start - last.end < BREATH)
      merged[merged.length - 1] = { start: last.start, end: Math.max(last.end, word.end) };
    else merged.push(word);
  }
  return merged;
}
