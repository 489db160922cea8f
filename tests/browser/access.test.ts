import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';

import { faultsOf } from '../tools/access.ts';
import { openBrowser } from '../tools/browser.ts';
import { fingers } from '../tools/hands.ts';
import { Shooter } from '../tools/shooter.ts';

/*
 * Every screen in both lights on a tablet and a phone: axe-core finds nothing, nothing scrolls sideways, and every
 * target can be hit. WCAG 2.2, SC 2.5.8 (AA) asks for 24 by 24 CSS pixels; on court and after it, 64 is our own measure.
 */

const ANYWHERE = 24;
const ON_COURT = 64;

const url = inject('appUrl');

let browser: BrowserContext;
let page: Page;
let una: Shooter;
beforeAll(async () => {
  browser = await openBrowser({ hasTouch: true });
  page = await browser.newPage();
  una = new Shooter(page, fingers(page));
  await page.goto(url);
});
afterAll(() => browser.close());

/** What is wrong with the screen that stands now. */
const faults = (leastTarget: number): Promise<string[]> => faultsOf(page, { leastTarget });

test('the check sees a pale word, a small button and a page too wide', async () => {
  await page.evaluate(() => {
    document.body.insertAdjacentHTML(
      'beforeend',
      '<p id="bad" style="color: #888; width: 1300px">pale <button style="width: 20px; height: 20px">x</button></p>',
    );
  });
  const found = await faults(ANYWHERE);
  await page.locator('#bad').evaluate((bad) => bad.remove());
  expect(found).toContain('dark 390x844: color-contrast-enhanced #bad');
  expect(found).toContain('light 820x1180: x measures 20x20');
  expect(found).toContain('light 1180x820: scrolls sideways, 1300 in 1180');
});

describe('the first minutes', () => {
  test('the start screen', async () => {
    await una.button(/^Turn the sound on/).waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('the question whether the voice is heard, and what to do if not', async () => {
    await una.press(/^Turn the sound on/);
    expect.soft(await faults(ANYWHERE)).toEqual([]);
    await una.press('I hear nothing');
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('adding a shooter, with a fault', async () => {
    await una.press('Go on without sound');
    await una.press('Add this shooter');
    await page.getByRole('alert').waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('an empty bench', async () => {
    await una.addShooter('Una');
    await una.sees('Una');
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test.each(['result', 'method', 'rounds', 'stakes', 'cards', 'files', 'sound', 'court'] as const)(
    'an empty %s',
    async (place) => {
      await una.visit(place);
      await una.link(/Bench$/).waitFor();
      expect.soft(await faults(ANYWHERE)).toEqual([]);
    },
  );
});

describe('a relaxed round', () => {
  test('set up, with a fault', async () => {
    await una.visit('relaxed');
    await una.press(/^To the court/);
    await page.getByRole('alert').waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('before the first shot', async () => {
    await una.wish({ card: 'Ten free throws', missSides: true, nerves: 2 });
    await una.press(/^To the court/);
    await una.button('Start').waitFor();
    expect.soft(await faults(ON_COURT)).toEqual([]);
  });

  test('in play, with the sides of a miss', async () => {
    await una.go();
    await una.shoot('●○');
    expect.soft(await faults(ON_COURT)).toEqual([]);
  });

  test('paused, and about to be ended', async () => {
    await una.hands.pause();
    await una.press('End it here');
    expect.soft(await faults(ON_COURT)).toEqual([]);
  });

  test('left: the bench with an open round', async () => {
    await una.follow('Leave, go on later');
    await una.link(/^Go on at shot/).waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('over', async () => {
    await una.follow(/^Go on at shot/);
    await una.press('End it here');
    await una.press('Yes, end it');
    await una.sees('Round over');
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await una.rateAfter(2, 2);
  });
});

describe('a pressured round', () => {
  test('set up, with every ingredient', async () => {
    await una.visit('pressured');
    await una.wish({ card: 'Ten free throws', stake: 'Loser buys lunch', makesNeeded: 5, nerves: 5 });
    await una.wish({ clock: 'One for each shot', seconds: 4, seen: 'Someone watches' });
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('the countdown', async () => {
    await una.press(/^To the court/);
    await una.button('Start the countdown').waitFor();
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await una.press('Start the countdown');
    await page.locator('.countdown-figure').waitFor();
    expect.soft(await faults(ON_COURT)).toEqual([]);
    // It was the countdown to the end.
    expect(await page.locator('.countdown-figure').count()).toBe(1);
  });

  test('in play, and at the buzzer', async () => {
    await page.locator('.halves').waitFor();
    await una.shoot('●');
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await page.getByText('Time! Was a ball in the air?').waitFor();
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await una.press('No, nothing');
    await una.hands.pause();
    await una.press('End it here');
    await una.press('Yes, end it');
    await una.sees('You ended it early');
  });

  test('counted spot by spot, in play, at the buzzer and after it', async () => {
    await una.visit('pressured');
    await una.wish({ card: 'Pull-ups', count: 'A count for each spot', nerves: 5 });
    await una.wish({ clock: 'One for the round', seconds: 10 });
    await una.press(/^To the court/);
    await una.go();
    await page.keyboard.type('7');
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await page.getByText('Time! How many shots did you get off here?').waitFor();
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await una.hands.count(2);
    expect.soft(await faults(ON_COURT)).toEqual([]);
    await una.hands.count(2);
    await una.sees(/^Short of|^You beat/);
    expect.soft(await faults(ON_COURT)).toEqual([]);
  });
});

describe('a season', () => {
  beforeAll(async () => {
    await una.visit('shooter');
    await una.press('Load the demo season');
    await una.sees('Ines (demo)');
  });

  test('the bench', async () => {
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test.each(['result', 'method', 'rounds', 'stakes', 'shooter'] as const)('%s', async (place) => {
    await una.visit(place);
    await una.link(/Bench$/).waitFor();
    for (const more of await page.locator('summary').all()) await una.hands.press(more);
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('a pair, tossed', async () => {
    await una.visit('pair');
    await una.wish({});
    await una.press(/^Toss the coin/);
    await una.sees(/^The coin says/);
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('a card and a spot of one’s own', async () => {
    await una.visit('cards');
    await una.press('Make a card of your own');
    await una.press(/^Add this stop/);
    await una.press('Keep this card');
    await page.getByRole('alert').waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
    await una.press('Leave without it');
    await una.press('Add a spot');
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });

  test('a file that can be taken, and one that cannot', async () => {
    const header = 'date,session,round,condition,game,spot,shot,first,makes,attempts,nerves,shooter,note';
    const choose = (row: string) =>
      page.locator('input[type=file]').setInputFiles({
        name: 'paper.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(`${header}\n${row}\n`),
      });
    await una.visit('files');
    await choose('2026-11-24,1,1,relaxed,Threes,top,catch,0,3,5,2,Una,');
    await una.button('Yes, bring them in').waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
    await choose('2026-11-24,1,1,relaxed,Threes,top,catch,0,7,5,2,Una,');
    await page.getByRole('alert').waitFor();
    expect.soft(await faults(ANYWHERE)).toEqual([]);
  });
});

test('records that another window has', async () => {
  const first = page;
  page = await browser.newPage();
  await page.goto(url);
  await page.getByRole('alert').waitFor();
  expect.soft(await faults(ANYWHERE)).toEqual([]);
  await page.close();
  page = first;
});
