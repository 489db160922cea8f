import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';

import { faultsOf } from '../tools/access.ts';
import { openBrowser } from '../tools/browser.ts';
import { readCourt, type Court } from '../tools/court.ts';
import { fingers, keys } from '../tools/hands.ts';
import { Shooter } from '../tools/shooter.ts';

/* Games on the one court screen: by touch, by keyboard, and two shooters on one device. */

const url = inject('appUrl');

/** Our own measure for targets on court, in CSS pixels. */
const ON_COURT = { leastTarget: 64 };

/** From the bench to the court with a game of the list, as it is. */
async function setUp(shooter: Shooter, kind: string, game: string, nerves: number): Promise<void> {
  await shooter.follow(/^Games/);
  await shooter.choose('Which kind?', kind);
  await shooter.follow(new RegExp(`^Play ?: ${game}$`));
  await shooter.wish({ nerves });
  await shooter.press(/^To the court/);
  await shooter.page.locator('.court').waitFor();
}

describe('by touch', () => {
  let browser: BrowserContext;
  let page: Page;
  let ada: Shooter;
  beforeAll(async () => {
    browser = await openBrowser({ hasTouch: true });
    page = await browser.newPage();
    ada = new Shooter(page, fingers(page));
    await ada.begin(url, 'Ada');
  });
  afterAll(() => browser.close());
  const court = (): Promise<Court> => readCourt(page);
  const says = (words: string | RegExp): Promise<void> => page.getByText(words).first().waitFor();

  test('three lives: what is needed and left, the last miss, and back again', async () => {
    await setUp(ada, 'Lives', 'Three lives at the line', 5);
    await says('Make 10 before 3 misses to win');
    await ada.go();
    await ada.shoot('●●○●');
    await expect.poll(court).toMatchObject({
      spot: 'Free-throw line',
      shot: 5,
      of: 12,
      figures: { 'makes needed': '7', 'lives left': '2' },
      dots: '●●○●......',
    });
    await ada.hands.undo();
    await expect.poll(court).toMatchObject({ shot: 4, figures: { 'makes needed': '8', 'lives left': '2' } });
    await ada.shoot('○');
    await expect.poll(court).toMatchObject({ figures: { 'makes needed': '8', 'life left': '1' } });
    expect((await court()).figures).toHaveProperty('wins in 100');
    expect.soft(await faultsOf(page, ON_COURT)).toEqual([]);
    await ada.shoot('○');

    await ada.sees('Not this time');
    await says('2 of 5');
    await says('Three lives at the line: 2 made of 10, no life left.');
    await ada.press('The last entry was wrong: take it back');
    await says('On you go, when you are ready');
    await expect.poll(court).toMatchObject({ figures: { 'makes needed': '8', 'life left': '1' } });
  });

  test('left early: the shots count, the game does not', async () => {
    await ada.press('End it here');
    await says(/The shots count, the game does not/);
    await ada.press('Yes, end it');
    await ada.sees('You ended it early');
    await says('2 of 4');
    await ada.rateAfter(5, 3);
    await ada.visit('rounds');
    await ada.sees('Ada: all rounds');
    const [row] = await page.locator('.round-row').allInnerTexts();
    expect(row).toMatch(/stopped, no game: 2 made of 10, 1 life left/);
    await ada.visit('bench');
  });

  test('two on one device: whose shot it is, undone across turns, to the end', async () => {
    await ada.follow(/^Play together/);
    await ada.hands.write(page.getByLabel('Somebody else’s name'), 'Ben');
    await ada.press('Add');
    await ada.choose('Which game?', 'Duel');
    await ada.choose('A head start?', 'None');
    await ada.choose('Who shoots first?', 'As named');
    await ada.press(/^On to each of you/);
    for (const [name, onward] of [
      ['Ada', 'Next: Ben'],
      ['Ben', 'To the court'],
    ] as const) {
      await ada.sees(`${name}: before you shoot`);
      await ada.tellBody([]);
      await ada.rateNerves(4);
      await ada.press(onward);
    }
    await says('Ada: Go to the free-throw line');
    await ada.go();
    await expect.poll(court).toMatchObject({ players: ['▸ Ada 0', 'Ben 0'], shot: 1 });
    await ada.shoot('●');
    await expect.poll(court).toMatchObject({ players: ['Ada 1', '▸ Ben 0'], figures: { behind: '1' } });
    await ada.shoot('○●');
    await expect.poll(court).toMatchObject({ players: ['Ada 2', '▸ Ben 0'], figures: { behind: '2' } });
    expect.soft(await faultsOf(page, ON_COURT)).toEqual([]);
    await page.getByRole('button', { name: 'Undo the last: Ada, make' }).tap();
    await expect.poll(court).toMatchObject({ players: ['▸ Ada 1', 'Ben 0'], shot: 2 });
    await page.getByRole('button', { name: 'Undo the last: Ben, miss' }).tap();
    await expect.poll(court).toMatchObject({ players: ['Ada 1', '▸ Ben 0'] });
    // Six to none with four left for Ben: he cannot catch up any more.
    await ada.shoot('○ ●○ ●○ ●○ ●○ ●');

    await ada.sees('Ada won');
    const rows = page.locator('.standings li');
    await expect
      .poll(() => rows.allInnerTexts())
      .toEqual([
        expect.stringMatching(/Ada won[^]*6 to 0[^]*6 of 6/),
        expect.stringMatching(/Ben lost[^]*0 to 6[^]*0 of 5/),
      ]);
    await ada.choose('Who wants to say how it felt?', 'Ben');
    expect.soft(await faultsOf(page, ON_COURT)).toEqual([]);
    await ada.choose('How nervous were you during the round?', '6');
    await ada.press(/^Done/);
    await ada.sees('Ada');
  });

  test('what one of two said is on that one’s round alone', async () => {
    await ada.visit('rounds');
    await says('nerves 4');
    await says(/won: 6 to 0/);
    await says('with Ben');
    expect(await page.getByText('6 during').count()).toBe(0);
  });
});

describe('by keyboard', () => {
  let browser: BrowserContext;
  let page: Page;
  let kim: Shooter;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await browser.newPage();
    kim = new Shooter(page, keys(page));
    await kim.begin(url, 'Kim');
  });
  afterAll(() => browser.close());
  const court = (): Promise<Court> => readCourt(page);

  test('last shots: each counted in, one lost at the buzzer, another in the air', async () => {
    await setUp(kim, 'Last shots', 'The last shot, from the top', 3);
    await page.getByText(/^Make 2 of 5 last shots to win/).waitFor();
    const clock = Number((await court()).figures['game clock']);
    expect(clock).toBeGreaterThanOrEqual(2);
    expect(clock).toBeLessThanOrEqual(5);
    await kim.go();
    await kim.hands.make();
    await page.getByText('On you go, when you are ready').waitFor();
    // A shot is no shot before the next countdown.
    await kim.hands.make();
    await expect.poll(court).toMatchObject({ shot: 2, of: 5, figures: { 'needed of 4 left': '1' } });
    await kim.go();
    await page.getByText('Time! Was a ball in the air?').waitFor();
    await page.keyboard.press('n');
    await expect.poll(court).toMatchObject({ shot: 3, dots: '●-...' });
    await kim.go();
    await page.getByText('Time! Was a ball in the air?').waitFor();
    await kim.hands.make();
    await expect.poll(court).toMatchObject({ shot: 4, figures: { 'goal reached': '0' } });
    await kim.go();
    await kim.hands.miss();
    await kim.go();
    await kim.hands.make();
    await kim.sees('You won');
    await page.getByText('3 of 4', { exact: true }).waitFor();
    await kim.rateAfter(3, 1);
  });

  test('a run that needs more shots than its card: round and round, best run kept', async () => {
    await kim.visit('bench');
    await setUp(kim, 'In a row', 'Three threes in a row', 4);
    await kim.go();
    await kim.shoot('●●○ ○○');
    await expect.poll(court).toMatchObject({
      shot: 6,
      of: 30,
      spot: 'Top of the key',
      figures: { 'in a row, of 3': '0', 'best run': '2', 'shots left': '25' },
      dots: '.....',
    });
    await kim.hands.undo();
    await expect.poll(court).toMatchObject({ shot: 5, dots: '●●○○.' });
    await kim.shoot('●●●');
    await kim.sees('You won');
    await page.getByText('5 of 7', { exact: true }).waitFor();
    await page.getByText('Three threes in a row: best run 3 of 3.').waitFor();
  });
});
