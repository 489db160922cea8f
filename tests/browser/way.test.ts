import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import { openBrowser } from '../tools/browser.ts';
import { readCourt, watchCountdown, type Court } from '../tools/court.ts';
import { fingers } from '../tools/hands.ts';
import { listen, plannedSounds } from '../tools/listen.ts';
import { readResult } from '../tools/result.ts';
import { Shooter } from '../tools/shooter.ts';

/* Ada's first afternoon, from an empty device to what pressure does to her, by touch. Each test goes on from the last. */

const url = inject('appUrl');
/** Whatever the page asked another place for. */
const foreign: string[] = [];

let browser: BrowserContext;
let page: Page;
let ada: Shooter;
beforeAll(async () => {
  browser = await openBrowser({ hasTouch: true });
  await listen(browser);
  browser.on('request', (request) => {
    if (!request.url().startsWith(url) && !/^(data|blob):/.test(request.url())) foreign.push(request.url());
  });
  page = await browser.newPage();
  ada = new Shooter(page, fingers(page));
});
afterAll(() => browser.close());

const court = (): Promise<Court> => readCourt(page);
const alert = (): Promise<string> => page.getByRole('alert').innerText();
const says = (words: string | RegExp): Promise<void> => page.getByText(words).first().waitFor();

test('asks for the sound first, then for a name of one’s own', async () => {
  await page.goto(url);
  await ada.press(/^Turn the sound on/);
  await says('Do you hear the voice?');
  await says(/Loud sound can hurt your hearing/);
  await ada.press('I hear it');

  await ada.sees('Who is shooting?');
  await ada.press('Add this shooter');
  expect(await alert()).toMatch(/^Please give a name/);
  await ada.addShooter('Ada');
  await ada.sees('Ada');
  await says('No rounds yet.');

  await ada.follow('Shooters');
  await ada.addShooter(' ADA ');
  expect(await alert()).toMatch(/^There is already a shooter called ADA here/);
  await ada.choose('Lines on your court', 'NFHS (US high schools)');
  await ada.addShooter('Ben');
  await ada.sees('Ben');
  await ada.follow('Shooters');
  await ada.follow('Ada');
  await ada.sees('Ada');
});

test('keeps a relaxed round through undo, pause, leaving and a reload', async () => {
  await ada.follow(/^Relaxed round/);
  await ada.wish({ card: 'Threes' });
  await ada.press(/^To the court/);
  expect(await alert()).toMatch(/^Please tap a number first/);
  await ada.rateNerves(2);
  await ada.press(/^To the court/);
  await says('Take your time. Nothing is on the line.');

  await ada.go();
  await ada.shoot('●●○');
  await expect.poll(court).toMatchObject({
    spot: 'Left corner',
    shot: 4,
    of: 25,
    figures: { 'made of 3': '2' },
    dots: '●●○..',
  });
  await ada.hands.undo();
  await expect.poll(court).toMatchObject({ shot: 3, figures: { 'made of 2': '2' }, dots: '●●...' });
  await ada.shoot('●●○ ○');
  await expect.poll(court).toMatchObject({ spot: 'Left wing', shot: 7, dots: '○....' });

  await ada.hands.pause();
  await says('On you go, when you are ready');
  await ada.follow('Leave, go on later');
  await page.reload();
  await says('Ada’s relaxed round is not finished: Threes, five spots by five, shot 7 of 25.');
  await expect.poll(() => ada.button(/^Relaxed round/).isDisabled()).toBe(true);

  await ada.follow('Go on at shot 7');
  await says('On you go, when you are ready');
  await expect.poll(court).toMatchObject({
    spot: 'Left wing',
    shot: 7,
    figures: { 'made of 6': '4' },
    dots: '○....',
  });
  await ada.go();
  await ada.shoot('●○●● ●○●●○ ○●●○● ●○●●');
  await expect.poll(court).toMatchObject({ spot: 'Right corner', shot: 25, figures: { 'made of 24': '16' } });
  await ada.shoot('○');

  await ada.sees('Round over');
  await says('16 of 25');
  await page.getByLabel('Anything to remember?').fill('Left shoe untied');
  await ada.rateAfter(3, 5);
  const { headline, rounds } = await readResult(page);
  expect(headline).toBe('16 of 25 relaxed so far.');
  expect(rounds).toHaveLength(1);
  for (const words of ['relaxed', '16 of 25', 'nerves 2 before, 3 during', 'Left shoe untied']) {
    expect(rounds[0]).toContain(words);
  }
});

test('plays the same card under pressure, with a mark whose chance can be followed', async () => {
  await ada.follow(/Bench$/);
  await ada.follow(/^Pressured round/);
  await ada.wish({ nerves: 6, stake: 'Loser buys lunch', makesNeeded: 12, seconds: 180 });
  const [, chance = ''] = /about (\d+) times in 100/.exec(await page.locator('main').innerText()) ?? [];
  await says(/record .*is still short/);
  await ada.press(/^To the court/);
  await says('On the line: Loser buys lunch');
  await says('Make 12 to win');
  await says('180 seconds for the round');

  const before = (await plannedSounds(page)).length;
  const countdown = await watchCountdown(page);
  await ada.go();
  const { shown, seconds } = await countdown();
  expect(shown.slice(0, 5)).toEqual(['5', '4', '3', '2', '1']);
  expect(seconds).toBeGreaterThan(4.8);

  // The count, its "go", the last seconds and the buzzer: all were planned before the first of them was due.
  const sounds = (await plannedSounds(page)).slice(before);
  const calls = sounds.filter(({ loops }) => !loops).slice(0, 12);
  const [five = 0] = calls.map(({ at }) => at);
  expect(calls.map(({ at }) => Math.round((at - five) * 100) / 100)).toEqual([
    0, 1, 2, 3, 4, 5, 180, 181, 182, 183, 184, 185,
  ]);
  expect(Math.max(...calls.map(({ asked }) => asked))).toBeLessThan(five);
  expect(sounds.some(({ loops, length }) => loops && length > 5)).toBe(true);

  await expect.poll(court).toMatchObject({
    figures: {
      'needed of 25 left': '12',
      'round clock': expect.stringMatching(/^(3:00|2:5\d)$/),
      'wins in 100, time aside': chance,
    },
  });
  const wins = async (): Promise<number> =>
    Number((await readCourt(page)).figures['wins in 100, time aside']);
  await ada.shoot('●');
  await expect.poll(court).toMatchObject({ figures: expect.objectContaining({ 'needed of 24 left': '11' }) });
  const afterMake = await wins();
  expect(afterMake).toBeGreaterThan(Number(chance));
  await ada.shoot('○');
  await expect.poll(court).toMatchObject({ figures: expect.objectContaining({ 'needed of 23 left': '11' }) });
  expect(await wins()).toBeLessThan(afterMake);
  await ada.shoot('○●○ ●●○○● ○●●○○ ●●●●');
  await expect.poll(court).toMatchObject({
    figures: { 'needed of 6 left': '1', 'round clock': expect.stringMatching(/^2:/) },
  });
  await ada.shoot('●');
  await expect.poll(court).toMatchObject({ figures: { 'Mark reached': '0', 'you have won': '–' } });
  await ada.shoot('○○○○○');

  await ada.sees('You beat the mark');
  await says('12 of 25');
  await says(new RegExp(`^The mark was 12\\..* about ${chance} times in 100`));
  await says(/^Owed to you: Loser buys lunch\./);
  await ada.rateAfter(7, 5);
});

test('keeps the stake until it is settled', async () => {
  await ada.follow(/Bench$/);
  await ada.follow('Stakes: 1 open');
  const owed = page.getByRole('region', { name: 'Owed to Ada' });
  await owed.getByText('Loser buys lunch').first().waitFor();
  await ada.press(/^Settle it ?: Loser buys lunch/);
  await page.getByRole('region', { name: 'Settled' }).getByText('Loser buys lunch').first().waitFor();
  expect(await owed.getByRole('listitem').count()).toBe(0);
  await page.reload();
  await page.getByRole('region', { name: 'Settled' }).getByText('Loser buys lunch').first().waitFor();
  await ada.follow(/Bench$/);
  await ada.link('Stakes').waitFor();
});

test('says what both records are worth, and no more', async () => {
  await ada.follow('See the whole result');
  const { headline, more, rates, drop, spots, rounds } = await readResult(page);
  expect(headline).toBe('Too early to say.');
  expect(more).toMatch(
    /^So far 64 % relaxed and 48 % pressured, but .* could be luck\. 75 more pressured shots and 3 more sessions .* a first verdict is due\.$/,
  );
  expect(rates).toEqual({
    relaxed: ['64 %', expect.stringContaining('16 of 25')],
    pressured: ['48 %', expect.stringContaining('12 of 25')],
  });
  expect(drop).toMatch(/^Drop 16 points, from −\d+ to \d\d\.$/);
  expect(Object.keys(spots)).toEqual(
    ['Left corner', 'Left wing', 'Top of the key', 'Right wing', 'Right corner'].map(
      (spot) => `${spot}, catch-and-shoot`,
    ),
  );
  expect(spots['Right corner, catch-and-shoot']?.map((cell) => cell.slice(0, 6))).toEqual([
    '3 of 5',
    '0 of 5',
    '60 poi',
  ]);
  expect(rounds).toHaveLength(2);
  expect(rounds[0]).toContain('mark 12 beaten');
});

test('asks nobody else for anything on the whole way', () => {
  expect(foreign).toEqual([]);
});
