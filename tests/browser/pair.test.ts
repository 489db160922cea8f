import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import { conditionInPair, pairOrderFor } from '../../renderer/log/begin.ts';
import { openBrowser } from '../tools/browser.ts';
import { readCourt } from '../tools/court.ts';
import { fingers } from '../tools/hands.ts';
import { readResult } from '../tools/result.ts';
import { copyLog } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';

const url = inject('appUrl');

let browser: BrowserContext;
let page: Page;
let pia: Shooter;
beforeAll(async () => {
  browser = await openBrowser({ hasTouch: true });
  page = await browser.newPage();
  pia = new Shooter(page, fingers(page));
  await pia.begin(url, 'Pia');
});
afterAll(() => browser.close());

/** Shoots ten free throws: ten of ten relaxed, five of ten pressured. */
async function shootOut(condition: string): Promise<void> {
  await page
    .getByText(condition === 'relaxed' ? 'Nothing is on the line.' : 'On the line: A round of lemonade')
    .waitFor();
  await pia.go();
  await expect.poll(() => readCourt(page)).toMatchObject({ shot: 1, of: 10 });
  // The chance is hidden, as she asked.
  const { figures } = await readCourt(page);
  expect(Object.keys(figures)).toEqual([condition === 'relaxed' ? 'made of 0' : 'needed of 10 left']);
  await pia.shoot(condition === 'relaxed' ? '●●●●● ●●●●●' : '●○●○● ○●○●○');
}

test('a pair is tossed once, goes by its seed, and outlives a reload between its rounds', async () => {
  await pia.follow(/^A pair/);
  await pia.wish({
    card: 'Ten free throws',
    stake: 'A round of lemonade',
    makesNeeded: 8,
    showChance: false,
    clock: 'None',
  });
  await pia.press(/^Toss the coin/);

  // The seed is on the screen, and whoever has it can toss again and get the same.
  await page.getByText('How the coin was tossed').tap();
  const seed = Number(/from the number (\d+)/.exec(await page.locator('main').innerText())?.[1]);
  const order = pairOrderFor(seed);
  const [first, second] = [conditionInPair(order, 1), conditionInPair(order, 2)];
  await pia.sees(`The coin says: ${first} first`);
  await expect.poll(() => pia.button(/^To the court/).isDisabled()).toBe(true);
  await pia.rateNerves(3);
  await pia.press(/^To the court/);
  await shootOut(first);
  await pia.rateAfter(3, 2);
  await pia.sees(`Second round: ${second}`);

  await page.reload();
  await pia.sees(`Second round: ${second}`);
  await page.goto(`${url}#/bench`);
  await page.reload();
  await page.getByText('Your pair is half played.').waitFor();
  await pia.follow('On to round 2 of 2');
  await pia.sees(`Second round: ${second}`);
  await page.getByText('How the coin was tossed').tap();
  await page.getByText(`The order follows from the number ${seed}, drawn before the first shot`).waitFor();
  expect(await pia.button(/^Toss/).count()).toBe(0);
  await pia.rateNerves(6);
  await pia.press(/^To the court/);
  await shootOut(second);
  await pia.rateAfter(6, 2);

  const { rates, rounds } = await readResult(page);
  expect(rates).toMatchObject({
    relaxed: ['10 of 10', expect.anything()],
    pressured: ['5 of 10', expect.anything()],
  });
  expect(rounds).toHaveLength(2);
  expect(rounds[0]).toContain('second of a pair');
  expect(rounds[1]).toContain('first of a pair');

  const { events, book } = await copyLog(pia);
  expect(events.filter(({ type }) => type === 'PairTossed')).toHaveLength(1);
  expect([...book.pairs.values()]).toEqual([expect.objectContaining({ seed, order })]);
  expect([...book.rounds.values()].map(({ condition }) => condition)).toEqual([first, second]);
});
