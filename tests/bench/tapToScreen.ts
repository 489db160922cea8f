import type { Outcome } from './outcome.ts';
import { median, steadyPercentile } from './samples.ts';
import type { Taps } from './taps.ts';

/** Of whole rounds of 24 shots each. */
const STRETCHES = 5;
/** Taps for which the browser reports no display time took less than this. In milliseconds. */
const LEAST_DISPLAYED = 16;

/** From a tap in the real app to the frame that shows it, against the length of a frame. */
export function tapToScreen(relaxed: Taps, pressured: Taps): Outcome[] {
  return [
    outcome('tap to changed screen, relaxed round, p50', relaxed, drawn, 0.5),
    outcome('tap to changed screen, relaxed round, p95', relaxed, drawn, 0.95),
    outcome('tap to changed screen, pressured round, p95', pressured, drawn, 0.95),
    outcome('tap to the display in steps of 8 ms, relaxed, p95', relaxed, displayed, 0.95),
    outcome('tap to the display in steps of 8 ms, pressured, p95', pressured, displayed, 0.95),
  ];
}

function outcome(
  what: string,
  { taps, frames }: Taps,
  timesOf: (taps: Taps['taps']) => number[],
  share: number,
): Outcome {
  return {
    what,
    unit: 'ms',
    figure: steadyPercentile(timesOf(taps), share, STRETCHES),
    rival: { what: 'one frame', figure: median(frames) },
    n: `${STRETCHES} × ${Math.floor(taps.length / STRETCHES)}`,
    limit: share === 0.95 ? { on: 'ratio', most: 2, by: 'agreed' } : null,
  };
}

/** The frame was worked out and handed on. */
function drawn(taps: Taps['taps']): number[] {
  return taps.map((tap) => tap.drawn);
}

function displayed(taps: Taps['taps']): number[] {
  return taps.map((tap) => tap.displayed ?? LEAST_DISPLAYED);
}
