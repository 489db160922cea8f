import type { Seconds } from '../basics/units.ts';

/** One look at an audio clock. */
export interface ClockReading {
  /** The audio context's own time; moves in lumps of one hardware buffer. */
  readonly currentTime: Seconds;
  /** What is reaching the ear, and the system time (ms) of that: `AudioContext.getOutputTimestamp()`. */
  readonly contextTime: Seconds;
  readonly performanceTime: number;
  /** The system time of this look, ms. */
  readonly systemTime: number;
}

/** Offsets are smoothed over about this long. */
const SMOOTH: Seconds = 0.5;
/** A clock that is off by more has stood still or was changed: follow at once. */
const JUMP: Seconds = 0.1;
/** The ear is never ahead of what was rendered; the slack covers the lumps of `currentTime`. */
const SLACK: Seconds = 0.05;

/**
 * The audio clock as it reaches the ear, for drawing: `contextTime + (now - performanceTime) / 1000`
 * (W3C, Web Audio API, `getOutputTimestamp`), its jitter smoothed away, and never going back.
 *
 * @returns the time to draw for each reading
 */
export function shownClock(): (reading: ClockReading) => Seconds {
  let offset: Seconds | null = null;
  let last: Seconds = Number.NEGATIVE_INFINITY;
  let lookedAt = 0;

  return (reading) => {
    const system = reading.systemTime / 1000;
    const seen = offsetOf(reading);
    if (offset === null || Math.abs(seen - offset) > JUMP) offset = seen;
    else offset += (seen - offset) * (1 - Math.exp(-Math.max(0, system - lookedAt) / SMOOTH));
    lookedAt = system;
    last = Math.max(last, Math.min(offset + system, reading.currentTime + SLACK));
    return last;
  };
}

/** Audio time minus system time, in seconds. Browsers give zeros until sound comes out. */
function offsetOf({ currentTime, contextTime, performanceTime, systemTime }: ClockReading): Seconds {
  const given = performanceTime > 0 && contextTime > 0;
  return given ? contextTime - performanceTime / 1000 : currentTime - systemTime / 1000;
}
