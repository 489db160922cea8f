import type { Seconds } from '../basics/units.ts';
import type { ClipName } from './clips.ts';
import type { Cue } from './cues.ts';

/** How a countdown sounds. */
export type CountdownKind = 'voice' | 'beeps';

type CountdownCue = Cue & { readonly clip: ClipName };

const NUMBERS = ['count-1', 'count-2', 'count-3', 'count-4', 'count-5'] as const satisfies ClipName[];

/** The longest countdown there is. */
export const LONGEST_COUNT = NUMBERS.length;

/**
 * The countdown before a start: one cue a second, then the word or the tone that says go.
 *
 * @param liveAt when it is over
 * @param count how many numbers are called, from 1 to {@link LONGEST_COUNT}; a fraction is dropped
 * @param from nothing is planned before this moment: a countdown that begins late calls what still lies ahead
 */
export function startCountdown(
  liveAt: Seconds,
  count: number,
  kind: CountdownKind,
  from: Seconds,
): CountdownCue[] {
  const end = kind === 'voice' ? 'go' : 'beep-high';
  return [...numbers(liveAt, count, kind), cue(end, liveAt)].filter(({ at }) => at >= from);
}

/** The last seconds of a clock, and the buzzer. Arguments as for {@link startCountdown}. */
export function endCountdown(
  overAt: Seconds,
  count: number,
  kind: CountdownKind,
  from: Seconds,
): CountdownCue[] {
  return [...numbers(overAt, count, kind), cue('buzzer', overAt)].filter(({ at }) => at >= from);
}

function numbers(end: Seconds, count: number, kind: CountdownKind): CountdownCue[] {
  return NUMBERS.slice(0, Math.max(0, Math.floor(count)))
    .map((clip, before) => cue(kind === 'voice' ? clip : 'beep-low', end - before - 1))
    .toReversed();
}

function cue(clip: ClipName, at: Seconds): CountdownCue {
  return { clip, at, gain: 1 };
}
