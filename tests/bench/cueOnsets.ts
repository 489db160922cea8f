import { openBrowser } from '../tools/browser.ts';
import { serveSoundPage } from '../tools/soundPage.ts';
import type { Measured, Wanted } from '../browser/harness/sound/onsets.ts';
import type {} from '../browser/harness/sound/page.ts';

/** How far cues were from where they should have been, in milliseconds. */
export interface OnsetError {
  readonly p50: number;
  readonly max: number;
}

export interface CueOnsets {
  /** As the app does it: planned ahead on the audio clock. */
  readonly planned: OnsetError;
  /** The rival: a timer for each cue, and `play()`. */
  readonly rival: OnsetError;
}

/** A rival's cue that did not come out before the next one counts as this late. */
const EVERY = 0.8;

/**
 * Plays the same beeps in both ways on a page that is blocked for 300 ms at a time, in one browser one after the other,
 * and measures on the recorded sound when each beep was heard.
 */
export async function cueOnsets(cues = 24, busy = 300): Promise<CueOnsets> {
  const served = await serveSoundPage();
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(served.url);
    await page.evaluate(() => window.soundPage.unlock());
    const measure = (way: Wanted['way']) =>
      page.evaluate((wanted) => window.soundPage.onsets(wanted), {
        way,
        clips: Array.from({ length: cues }, () => 'beep-low'),
        every: EVERY,
        busy,
      });
    return { planned: errorsOf(await measure('planned')), rival: errorsOf(await measure('timers')) };
  } finally {
    await browser.close();
    await served.close();
  }
}

export function errorsOf({ late, sampleRate }: Measured): OnsetError {
  const errors = late
    .map((frames) => (frames === null ? EVERY * 1000 : (Math.abs(frames) / sampleRate) * 1000))
    .toSorted((one, other) => one - other);
  return { p50: errors[Math.floor(errors.length / 2)] ?? 0, max: errors.at(-1) ?? 0 };
}
