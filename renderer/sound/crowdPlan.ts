import type { Seconds } from '../basics/units.ts';
import type { ClipName } from './clips.ts';
import type { Cue } from './cues.ts';

/* What the crowd does, as data: how loud its two layers become and when, and what it shouts. */

/** The murmur that is always there, and the noise that grows towards a shot. */
export type Layer = 'bed' | 'swell';

/** From `at` on, a layer approaches `level`; after three times `settle` it is 95 % there. */
export interface Ramp {
  readonly layer: Layer;
  readonly at: Seconds;
  /** 0 to 1. */
  readonly level: number;
  readonly settle: Seconds;
}

/** Replaces what was planned for the same layers from the first ramp of each on. */
export interface CrowdMove {
  readonly ramps: readonly Ramp[];
  readonly shouts: readonly (Cue & { readonly clip: ClipName })[];
}

/**
 * Levels of the layers. As the clips are mastered (voice -18 LUFS, murmur -23, swell -20), the voice stands 14 dB above the
 * murmur; while it speaks the whole crowd makes room (`ducking.ts`), so that it does above a full swell too. Words over a
 * crowd are understood from about 12 dB on (measured with synthetic speech over this crowd).
 */
const MURMUR = 0.35;
const HUSHED = 0.18;
const SWELL = { least: 0.2, most: 0.9 };
const SHOUT = { least: 0.35, most: 1 };

/** Time for a shout to reach the audio thread before it is due. */
const SOON: Seconds = 0.05;

/** From here on the crowd answers with the big clip. */
const BIG = 0.5;

/** Fades the murmur in. */
export function enterMove(now: Seconds): CrowdMove {
  return {
    ramps: [
      { layer: 'bed', at: now, level: MURMUR, settle: 0.8 },
      { layer: 'swell', at: now, level: 0, settle: 0.2 },
    ],
    shouts: [],
  };
}

/**
 * Grows towards a shot that is due in about `seconds`, and holds. The more the shot matters, the longer and the louder.
 * Where the shot does not come, the noise sinks to half: nobody shouts for ever.
 */
export function swellMove(now: Seconds, seconds: Seconds, weight: number): CrowdMove {
  const matters = unit(weight);
  const due = now + Math.max(0, seconds);
  const rise = Math.min(due - now, 2 + 3 * matters);
  const level = between(SWELL, matters);
  return {
    ramps: [
      { layer: 'swell', at: due - rise, level, settle: Math.max(0.2, rise / 3) },
      { layer: 'swell', at: due + 4 + 2 * matters, level: level / 2, settle: 2 },
    ],
    shouts: [],
  };
}

/**
 * Cheers a make or groans at a miss. The swell breaks off; after a make the murmur stays lively for a while, after a miss
 * it is hushed, the longer the more the shot mattered.
 */
export function answerMove(now: Seconds, made: boolean, weight: number): CrowdMove {
  const matters = unit(weight);
  const clip: ClipName = made
    ? matters >= BIG
      ? 'cheer-big'
      : 'cheer-small'
    : matters >= BIG
      ? 'groan-big'
      : 'groan-small';
  const mood = made ? MURMUR + 0.25 * matters : HUSHED;
  return {
    ramps: [
      { layer: 'swell', at: now, level: 0, settle: made ? 0.5 : 0.2 },
      { layer: 'bed', at: now, level: mood, settle: 0.3 },
      { layer: 'bed', at: now + 1 + 2 * matters, level: MURMUR, settle: 0.8 },
    ],
    shouts: [{ clip, at: now + SOON, gain: between(SHOUT, matters) }],
  };
}

/** How long the crowd takes to leave. */
export const LEAVING: Seconds = 2;

/** Fades out. */
export function leaveMove(now: Seconds): CrowdMove {
  return {
    ramps: [
      { layer: 'bed', at: now, level: 0, settle: LEAVING / 5 },
      { layer: 'swell', at: now, level: 0, settle: LEAVING / 10 },
    ],
    shouts: [],
  };
}

function unit(weight: number): number {
  return Math.max(0, Math.min(1, weight));
}

function between(range: { readonly least: number; readonly most: number }, matters: number): number {
  return range.least + (range.most - range.least) * matters;
}
