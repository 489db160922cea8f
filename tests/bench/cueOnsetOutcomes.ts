import { cueOnsets } from './cueOnsets.ts';
import type { Outcome } from './outcome.ts';

const CUES = 24;
const BUSY_MS = 300;
/** The audio clock moves in steps of 128 frames (W3C Web Audio, render quantum), here at the usual 48 kHz. */
const RENDER_QUANTUM_MS = (128 / 48_000) * 1000;

/** How far cues sound from where they were planned while the page hangs for 300 ms at a time. */
export async function cueOnsetOutcomes(): Promise<Outcome[]> {
  const { planned, rival } = await cueOnsets(CUES, BUSY_MS);
  const outcome = (share: 'p50' | 'max'): Outcome => ({
    what: `cue off its moment on a hanging page, ${share}`,
    unit: 'ms',
    figure: planned[share],
    rival: { what: 'a timer for each cue', figure: rival[share] },
    n: String(CUES),
    limit: { on: 'figure', most: RENDER_QUANTUM_MS, by: 'agreed' },
  });
  return [outcome('p50'), outcome('max')];
}
