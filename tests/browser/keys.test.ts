import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import type { Body } from '../../renderer/log/events.ts';
import { openBrowser } from '../tools/browser.ts';
import { readCourt, type Court } from '../tools/court.ts';
import { keys } from '../tools/hands.ts';
import { readResult } from '../tools/result.ts';
import { copyLog } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';

/* The whole way through by keyboard alone. The page counts what a mouse or a finger would have done. */

declare global {
  interface Window {
    pointed: number;
  }
}

const url = inject('appUrl');

let browser: BrowserContext;
let page: Page;
let kim: Shooter;
beforeAll(async () => {
  browser = await openBrowser();
  await browser.addInitScript(() => {
    window.pointed = 0;
    for (const kind of ['pointerdown', 'mousedown', 'touchstart', 'wheel']) {
      addEventListener(kind, () => (window.pointed += 1), { capture: true });
    }
  });
  page = await browser.newPage();
  kim = new Shooter(page, keys(page));
});
afterAll(() => browser.close());

const court = (): Promise<Court> => readCourt(page);

test('by keys: sound on, a shooter added, a relaxed round with the sides of the misses', async () => {
  await kim.begin(url, 'Kim');
  await kim.setUp('Relaxed round', { card: 'Ten free throws', missSides: true, nerves: 0 });
  await kim.go();
  await kim.hands.make();
  await kim.hands.miss();
  await kim.hands.miss('long');
  await kim.hands.miss('short');
  await kim.hands.miss('left');
  await kim.hands.miss('right');
  await expect.poll(court).toMatchObject({ shot: 7, figures: { 'made of 6': '1' }, dots: '●○○○○○....' });

  await kim.hands.undo();
  await expect.poll(court).toMatchObject({ shot: 6, figures: { 'made of 5': '1' } });
  await kim.hands.pause();
  await page.getByText('On you go, when you are ready').waitFor();
  // A shot is no shot while the round is paused.
  await kim.hands.make();
  await kim.go();
  await expect.poll(court).toMatchObject({ shot: 6, figures: { 'made of 5': '1' } });

  await kim.shoot('●●●●●');
  await kim.sees('Round over');
  await page.getByText('6 of 10').waitFor();
  await kim.rateAfter(1, 2);
  expect((await readResult(page)).headline).toBe('6 of 10 relaxed so far.');
  const { events } = await copyLog(kim);
  const sides = events.flatMap(({ type, body }) =>
    type === 'ShotTaken' ? [(body as Body<'ShotTaken'>).side] : [],
  );
  expect(sides.slice(0, 6)).toEqual([null, null, 'long', 'short', 'left', 'right']);
});

test('by keys: a pressured round with its countdown, to the verdict and the ledger', async () => {
  await kim.follow(/Bench$/);
  await kim.setUp('Pressured round', {
    card: 'Ten free throws',
    stake: 'Loser carries the balls',
    makesNeeded: 4,
    clock: 'One for the round',
    nerves: 7,
  });
  await kim.go();
  await kim.shoot('●○●○ ●○○○○');
  await expect.poll(court).toMatchObject({ figures: { 'needed of 1 left': '1' } });
  await kim.shoot('●');
  await kim.sees('You beat the mark');
  await kim.rateAfter(8, 2);
  const { rates, rounds } = await readResult(page);
  expect(rates).toMatchObject({
    relaxed: ['6 of 10', expect.anything()],
    pressured: ['4 of 10', expect.anything()],
  });
  expect(rounds).toHaveLength(2);

  await kim.follow(/Bench$/);
  await kim.follow('Stakes: 1 open');
  await kim.press(/^Settle it ?: Loser carries the balls$/);
  await kim.button(/^Open it again/).waitFor();
});

test('by keys: counts for each spot, typed and sent with Enter', async () => {
  await kim.follow(/Bench$/);
  await kim.setUp('Relaxed round', { card: 'Pull-ups', count: 'A count for each spot', nerves: 1 });
  await kim.go();
  await kim.hands.count(3);
  await expect.poll(court).toMatchObject({ spot: 'Right elbow', shot: 6, figures: { 'made of 5': '3' } });
  await kim.hands.undo();
  await expect.poll(court).toMatchObject({ spot: 'Left elbow', shot: 1 });
  await kim.hands.count(2);
  await expect.poll(court).toMatchObject({ spot: 'Right elbow', figures: { 'made of 5': '2' } });
  await kim.hands.count(5);
  await kim.sees('Round over');
  await page.getByText('7 of 10').waitFor();
});

test('no mouse and no finger was used', async () => {
  expect(await page.evaluate(() => window.pointed)).toBe(0);
});
