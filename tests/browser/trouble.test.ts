import { join } from 'node:path';

import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest';

import { PLACES } from '../../renderer/store/places.ts';
import { faultsOf } from '../tools/access.ts';
import { openBrowser, type BrowserOptions } from '../tools/browser.ts';
import { readCourt } from '../tools/court.ts';
import { fingers, keys } from '../tools/hands.ts';
import { copyLog } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';
import type {} from './harness/harness.ts';
import { INSECURE_ARGS, INSECURE_HOST } from './serve.ts';

/* What can go wrong with the records, as a shooter meets it: a plain sentence, what to do, and nothing lost. */

const url = inject('appUrl');

let away: (() => Promise<void>)[] = [];
beforeEach(() => {
  away = [];
});
afterEach(async () => {
  await Promise.all(away.map((close) => close()));
});

async function someone(options: BrowserOptions = {}): Promise<Shooter> {
  const browser = await openBrowser({ hasTouch: true, ...options });
  away.push(() => browser.close());
  const page = await browser.newPage();
  return new Shooter(page, fingers(page));
}

const alert = (page: Page): Promise<string> => page.getByRole('alert').innerText();

test('a second window says so, may take over, and the first is told', async () => {
  const tara = await someone();
  await tara.begin(url, 'Tara');
  await tara.setUp('Relaxed round', { card: 'Ten free throws', nerves: 1 });
  await tara.go();
  await tara.shoot('●○●');
  await expect.poll(() => readCourt(tara.page)).toMatchObject({ figures: { 'made of 3': '2' } });

  const second = await tara.page.context().newPage();
  const there = new Shooter(second, fingers(second));
  await second.goto(url);
  await there.sees('Loud Gym is open in another window');
  expect(await alert(second)).toContain('Go on in the other window, or take them over into this one.');

  await there.press('Use it in this window');
  await there.sees('Loud Gym');
  await tara.sees('Another window has taken over');
  expect(await alert(tara.page)).toContain('Your records now belong to the window that was opened last.');
  expect(await tara.page.locator('.halves').count()).toBe(0);

  await there.press('Go on without sound');
  await there.follow('Go on at shot 4');
  await expect.poll(() => readCourt(second)).toMatchObject({ shot: 4, figures: { 'made of 3': '2' } });
});

test('a browser without storage is told so, and no round can be started', async () => {
  const theo = await someone({ args: INSECURE_ARGS });
  await theo.page.goto(url.replace('127.0.0.1', INSECURE_HOST));
  await theo.sees('This browser keeps no records');
  expect(await alert(theo.page)).toContain('no shot could be saved');
  for (const place of PLACES) {
    await theo.visit(place);
    await theo.sees('This browser keeps no records');
    expect(await theo.page.getByRole('button').allInnerTexts()).toEqual(['Try again']);
  }
});

test('on a full device a shot that is not saved does not count, and says so', async () => {
  const { page } = await someone();
  // Keys, since it takes many shots.
  const finn = new Shooter(page, keys(page));
  const session = await page.context().newCDPSession(page);
  const { origin } = new URL(url);
  const court = () => readCourt(page);
  await finn.begin(url, 'Finn');
  await finn.setUp('Relaxed round', { card: 'The whole card', nerves: 1 });
  await finn.go();
  await finn.shoot('●○●');
  await expect.poll(court).toMatchObject({ figures: { 'made of 3': '2' } });

  const setRoom = (room?: { quotaSize: number }) =>
    session.send('Storage.overrideQuotaForOrigin', { origin, ...room });

  // What the log has reserved is used up first.
  await setRoom({ quotaSize: 1 });
  const trouble = page.getByRole('alert').filter({ hasText: 'An entry was not saved and does not count.' });
  let saved = 3;
  for (; saved < 45; saved += 1) {
    const counts = page.getByText(`made of ${saved + 1}`, { exact: true });
    await finn.shoot('●');
    await trouble.or(counts).waitFor();
    if (await trouble.isVisible()) break;
  }
  expect(await trouble.innerText()).toContain('There is no room left to save on this device. Free some room');
  expect(await faultsOf(page, { leastTarget: 64 })).toEqual([]);
  const stands = { shot: saved + 1, figures: { [`made of ${saved}`]: String(saved - 1) } };
  await expect.poll(court).toMatchObject(stands);
  await finn.shoot('●');
  await finn.press('I have seen this');
  await expect.poll(court).toMatchObject(stands);

  await setRoom();
  await finn.shoot('○');
  await expect
    .poll(court)
    .toMatchObject({ shot: saved + 2, figures: { [`made of ${saved + 1}`]: String(saved - 1) } });
  await page.reload();
  await expect
    .poll(court)
    .toMatchObject({ shot: saved + 2, figures: { [`made of ${saved + 1}`]: String(saved - 1) } });
  const { book } = await copyLog(finn);
  expect(book.open?.entries).toHaveLength(saved + 1);
});

describe('records of a newer version', () => {
  test('are named so and left alone', async () => {
    const nora = await someone();
    const { page } = nora;
    await nora.begin(url, 'Nora');
    /** Goes to the bare log under the app's own address, and writes a version into the closed file. */
    const writeVersion = async (version: number): Promise<void> => {
      await page.goto(`${url}harness/index.html`);
      // Whatever still stands in the journal goes into the file.
      await page.evaluate(() => window.harness.open());
      await page.evaluate(() => window.harness.close());
      await page.evaluate((bytes) => window.harness.overwrite(60, bytes), [0, 0, 0, version]);
    };
    await page.route(`${url}harness/**`, (route) =>
      route.fulfill({
        path: join(import.meta.dirname, '../../dist', new URL(route.request().url()).pathname),
      }),
    );
    await writeVersion(99);
    await page.goto(url);
    await nora.sees('Your records come from a newer Loud Gym');
    expect(await alert(page)).toContain('Update the app, or reload the page. Nothing has been changed.');

    await writeVersion(1);
    await page.goto(`${url}#/bench`);
    await nora.sees('Nora');
    expect((await copyLog(nora)).events).toHaveLength(1);
  });
});
