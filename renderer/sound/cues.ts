import type { Seconds } from '../basics/units.ts';

/** One clip at one moment. */
export interface Cue {
  /** A name from `clips.ts`. */
  readonly clip: string;
  /** When its sound is to be heard, on the clock that it is planned by. */
  readonly at: Seconds;
  /** 0 to 1. */
  readonly gain: number;
}

/** Cues that were planned and can still be called off. */
export interface Planned {
  /** Silences every cue of the plan, sounding or still to come. */
  cancel(): void;
}
