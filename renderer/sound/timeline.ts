import type { Seconds } from '../basics/units.ts';

/** A clock that something else keeps: an audio context, or the system. */
export type Source = () => Seconds;

/**
 * One unbroken clock over changing sources: where the audio clock starts, or is gone, the time goes on from where it was.
 */
export interface Timeline {
  now(): Seconds;
  /** Goes by another source from now on. */
  follow(source: Source): void;
  /** A moment of this clock, on its source. */
  toSource(at: Seconds): Seconds;
  /** A moment of the source, on this clock. */
  fromSource(at: Seconds): Seconds;
}

export function timeline(first: Source): Timeline {
  let source = first;
  let offset: Seconds = 0;
  return {
    now: () => source() + offset,
    follow: (next) => {
      const now = source() + offset;
      source = next;
      offset = now - next();
    },
    toSource: (at) => at - offset,
    fromSource: (at) => at + offset,
  };
}
