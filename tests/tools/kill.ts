import { setTimeout as sleep } from 'node:timers/promises';

import type { Page } from 'playwright-core';

import { startKillable } from './browser.ts';

/** What is done in a browser that will be killed. */
export interface Play {
  readonly url: string;
  /** Looks at what the last kill left behind, before the play goes on. */
  readonly look: (page: Page) => Promise<unknown>;
  /** Plays, and calls `window.acknowledged(value)` in the page for everything the log has acknowledged. */
  readonly play: (page: Page) => Promise<unknown>;
}

/**
 * Plays in a browser on this profile and kills it by signal 9 some time after the first acknowledgement.
 *
 * @param afterMs from the first acknowledgement to the kill
 * @returns everything acknowledged, as far as the news got out of the browser before it died
 */
export async function playUntilKilled<Ack>(
  profile: string,
  { url, look, play }: Play,
  afterMs: number,
): Promise<Ack[]> {
  const browser = await startKillable(profile);
  const acknowledged: Ack[] = [];
  try {
    const page = browser.context.pages()[0] ?? (await browser.context.newPage());
    const first = new Promise<void>((resolve) => {
      void page.exposeFunction('acknowledged', (ack: Ack) => {
        acknowledged.push(ack);
        resolve();
      });
    });
    await page.goto(url);
    await look(page);
    const played = play(page).then(
      (end) => `came to an end: ${String(end)}`,
      (error: unknown) => `failed: ${String(error)}`,
    );
    const end = await Promise.race([played, first.then(() => sleep(afterMs))]);
    if (end !== undefined) throw new Error(`The play was to be killed, but it ${end}`);
    const dead = new Promise((resolve) => browser.context.once('close', resolve));
    await browser.kill();
    // News that was on its way is still read.
    await dead;
  } finally {
    await browser.kill();
  }
  return acknowledged;
}
