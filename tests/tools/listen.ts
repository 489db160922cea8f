import type { BrowserContext, Page } from 'playwright-core';

/** A sound that was planned. All times are seconds on the audio clock. */
export interface PlannedSound {
  /** The moment at which it was planned. */
  readonly asked: number;
  /** The moment for which it was planned. */
  readonly at: number;
  readonly length: number;
  readonly loops: boolean;
}

declare global {
  interface Window {
    plannedSounds: PlannedSound[];
  }
}

/** Writes down every sound that pages of this browser plan from now on. */
export async function listen(browser: BrowserContext): Promise<void> {
  await browser.addInitScript(() => {
    window.plannedSounds = [];
    type When = [at?: number, offset?: number, length?: number];
    const start = Reflect.get(AudioBufferSourceNode.prototype, 'start');
    AudioBufferSourceNode.prototype.start = new Proxy(start, {
      apply(_, source: AudioBufferSourceNode, given: When) {
        const asked = source.context.currentTime;
        const { buffer, loop: loops } = source;
        window.plannedSounds.push({ asked, at: given[0] ?? asked, length: buffer?.duration ?? 0, loops });
        Reflect.apply(start, source, given);
      },
    });
  });
}

/** The sounds planned since the page was loaded, in the order of asking. */
export function plannedSounds(page: Page): Promise<PlannedSound[]> {
  return page.evaluate(() => window.plannedSounds);
}
