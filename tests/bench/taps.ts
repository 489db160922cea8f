import { setTimeout as sleep } from 'node:timers/promises';

import type { Page } from 'playwright-core';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { openBrowser } from '../tools/browser.ts';
import { loadSeason, pageOf, type Stage } from './stage.ts';
import type { Tap } from './tapProbe.ts';

/** The card of five spots by five. Its last shot ends the round and with it the screen, so it is not measured. */
export const MEASURED_SHOTS = 24;
/** What the log stands on, and a bare commit too, to be a fair rival. */
export const FOOTING = 'exclusive wal 2';

export interface Taps {
  /** Alternately by pointer and by key. */
  readonly taps: readonly Tap[];
  /** Milliseconds of one bare commit after each tap. */
  readonly bare: readonly number[];
  /** Milliseconds between frames on the court screen at rest. */
  readonly frames: readonly number[];
}

/** Plays rounds in the real app with the demo season in its log; after every tap one bare commit. */
export async function playTaps(stage: Stage, condition: Condition, rounds: number): Promise<Taps> {
  const browser = await openBrowser();
  try {
    const page = await pageOf(browser);
    await loadSeason(page, stage.appUrl);
    await page.addScriptTag({ url: stage.tapProbeUrl, type: 'module' });
    const footing = await page.evaluate(() => window.tapProbe.bareFooting());
    if (footing !== FOOTING) throw new Error(`The bare commit stands on ${footing}, not on ${FOOTING}.`);
    const rng = rngFromSeed(5);
    const taps: Tap[] = [];
    const bare: number[] = [];
    const frames: number[] = [];
    // The first round warms everything up and is thrown away.
    for (let round = 0; round <= rounds; round += 1) {
      await toCourt(page, condition);
      frames.push(...(await page.evaluate(() => window.tapProbe.frames(20))));
      for (let shot = 0; shot < MEASURED_SHOTS; shot += 1) {
        // Under pressure all are misses: once the mark is reached, the screen counts no more.
        const made = condition === 'relaxed' && rng.chance(0.5);
        await point(page, made);
        // The page is at rest before the tap, and nothing is asked of it while the tap is on its way. Every second tap is
        // the pointer's, and the app takes no two of these within 300 ms.
        await sleep(100 + rng.below(17));
        await (shot % 2 === 0 ? click(page) : press(page, made));
        await sleep(60);
        const done = await page.evaluate(() => window.tapProbe.last());
        const commit = await page.evaluate(() => window.tapProbe.bareCommit());
        if (round === 0) continue;
        taps.push(done);
        bare.push(commit);
      }
      await press(page, true);
      await toBench(page);
    }
    return { taps, bare, frames };
  } finally {
    await browser.close();
  }
}

/** Puts the pointer on one half of the screen. */
async function point(page: Page, made: boolean): Promise<void> {
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 };
  await page.mouse.move(width * (made ? 0.75 : 0.25), height * 0.7);
}

/** Not a finger: the driver keeps an invented finger back until the next frame, and that wait would be counted. */
async function click(page: Page): Promise<void> {
  await page.mouse.down();
  await page.mouse.up();
}

function press(page: Page, made: boolean): Promise<void> {
  return page.keyboard.press(made ? 'ArrowRight' : 'ArrowLeft');
}

async function toCourt(page: Page, condition: Condition): Promise<void> {
  const relaxed = condition === 'relaxed';
  await page.getByRole('link', { name: relaxed ? /^Relaxed round/ : /^Pressured round/ }).click();
  await page.getByRole('radio', { name: '3', exact: true }).check({ force: true });
  const well = page.getByRole('button', { name: 'No to all three' });
  if (await well.isVisible()) await well.click();
  await page.getByRole('button', { name: /^To the court/ }).click();
  await page.getByRole('button', { name: relaxed ? 'Start' : 'Start the countdown', exact: true }).click();
  await page.locator('.halves').waitFor();
}

async function toBench(page: Page): Promise<void> {
  await page.waitForURL(/#\/after\//);
  await page.getByRole('link', { name: /Bench$/ }).click();
  await page.locator('.bench').waitFor();
}
