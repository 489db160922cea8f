import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

import { freshProfile, openBrowser, removeProfile } from '../tools/browser.ts';
import { loadSeason, pageOf, type Stage } from './stage.ts';

/** A browser just started is busy with itself for a while. */
const SETTLE_MS = 1000;

/** Does something with a profile that has the demo season in its log. */
export async function withSeason<T>(stage: Stage, work: (profile: string) => Promise<T>): Promise<T> {
  const profile = await freshProfile();
  try {
    const browser = await openBrowser({ profile });
    await loadSeason(await pageOf(browser), stage.appUrl);
    await browser.close();
    return await work(profile);
  } finally {
    await removeProfile(profile);
  }
}

/**
 * Loads a page in a browser process of its own, with nothing of it in any cache.
 *
 * @returns milliseconds from the start of the navigation until the page could be used
 */
export async function loadCold(profile: string, stage: Stage, url: string): Promise<number> {
  for (const cache of ['Cache', 'Code Cache', 'GPUCache']) {
    await rm(join(profile, 'Default', cache), { recursive: true, force: true });
  }
  const browser = await openBrowser({ profile });
  try {
    const page = await pageOf(browser);
    await page.addInitScript({ path: stage.loadProbe });
    await sleep(SETTLE_MS);
    await page.goto(url);
    const usable = await page.waitForFunction(() => window.usableAt);
    return (await usable.jsonValue()) ?? Number.NaN;
  } finally {
    await browser.close();
  }
}
