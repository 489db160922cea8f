import { setTimeout as sleep } from 'node:timers/promises';

import { openBrowser } from '../tools/browser.ts';
import type { Outcome } from './outcome.ts';
import { steadyPercentile } from './samples.ts';
import { pageOf, type Stage } from './stage.ts';
import { FOOTING, MEASURED_SHOTS, type Taps } from './taps.ts';
import type {} from './storePage.ts';

const ROUNDS = 40;
/** Of 8 rounds here. */
const STRETCHES = 5;

interface Acknowledged {
  /** From a key to its shot being counted, in milliseconds. */
  readonly taps: readonly number[];
  readonly bare: readonly number[];
}

/**
 * From a tap to the moment its shot is durable and counted, against a bare commit of one row.
 *
 * The limit is held by the store and the log on a page without a screen. In the app the browser draws the tap before it
 * hands the log's answer to the page, so that figure, shown beside, says how long a frame takes.
 *
 * @param inApp taps in the app
 */
export async function tapToAck(stage: Stage, inApp: Taps): Promise<Outcome[]> {
  const store = await playStore(stage);
  const app = { taps: inApp.taps.map((tap) => tap.acknowledged), bare: inApp.bare };
  return [
    compare('tap to durable acknowledgement, p50', store, 0.5, false),
    compare('tap to durable acknowledgement, p99', store, 0.99, true),
    compare('tap to the count on the app’s screen, p50', app, 0.5, false),
    compare('tap to the count on the app’s screen, p99', app, 0.99, false),
  ];
}

async function playStore(stage: Stage): Promise<Acknowledged> {
  const browser = await openBrowser();
  try {
    const page = await pageOf(browser);
    await page.goto(stage.emptyUrl);
    await page.addScriptTag({ url: stage.storePageUrl, type: 'module' });
    const footing = await page.evaluate(() => window.storePage.open());
    if (footing.log !== FOOTING || footing.bare !== FOOTING) {
      throw new Error(
        `The log stands on ${footing.log}, the bare commit on ${footing.bare}, not on ${FOOTING}.`,
      );
    }
    const taps: number[] = [];
    const bare: number[] = [];
    // The first round warms everything up and is thrown away.
    for (let round = 0; round <= ROUNDS; round += 1) {
      await page.evaluate(() => window.storePage.startRound());
      for (let shot = 0; shot <= MEASURED_SHOTS; shot += 1) {
        await page.keyboard.press(shot % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
        await sleep(30);
        const took = await page.evaluate(() => window.storePage.acknowledged());
        const commit = await page.evaluate(() => window.storePage.bareCommit());
        await sleep(10);
        if (round === 0 || shot === MEASURED_SHOTS) continue;
        taps.push(took);
        bare.push(commit);
      }
    }
    return { taps, bare };
  } finally {
    await browser.close();
  }
}

function compare(what: string, { taps, bare }: Acknowledged, share: number, limited: boolean): Outcome {
  return {
    what,
    unit: 'ms',
    figure: steadyPercentile(taps, share, STRETCHES),
    rival: { what: 'a bare one-row commit', figure: steadyPercentile(bare, share, STRETCHES) },
    n: `${STRETCHES} × ${Math.floor(taps.length / STRETCHES)}`,
    limit: limited ? { on: 'ratio', most: 3, by: 'agreed' } : null,
  };
}
