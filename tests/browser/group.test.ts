import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import type { Round } from '../../renderer/log/book.ts';
import { openBrowser } from '../tools/browser.ts';
import { readCourt } from '../tools/court.ts';
import { keys } from '../tools/hands.ts';
import { copyLog } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';

/* Ada, Ben and Kim on one device, by keyboard alone. Each test goes on from the last. */

const url = inject('appUrl');

let browser: BrowserContext;
let page: Page;
let ada: Shooter;
beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
  ada = new Shooter(page, keys(page));
});
afterAll(() => browser.close());

const says = (words: string | RegExp): Promise<void> => page.getByText(words).first().waitFor();
const box = (name: string) => page.getByRole('checkbox', { name, exact: true });
/** Whose turn it is, as the screen says it. */
const onTurn = (): Promise<string | null> =>
  page
    .locator('.turn-name, .duel-side.on-turn .duel-name')
    .evaluate((name) => /^(?:▸ )?(.*) shoots$/.exec(name.textContent)?.[1] ?? null);
/** Everybody's place in the table at the end: name and makes of attempts. */
const table = (): Promise<string[]> =>
  page
    .locator('.standings li')
    .evaluateAll((rows) =>
      rows.map((row) => `${row.querySelector('p')?.firstChild?.textContent} ${row.lastChild?.textContent}`),
    );
const shots = ({ entries }: Round): string =>
  entries.map((entry) => (entry.kind === 'shot' && entry.made ? '●' : '○')).join('');

async function addGuest(name: string): Promise<void> {
  await ada.hands.write(page.getByLabel('Somebody else’s name'), name);
  await ada.press('Add');
}

/** Asks each of them in turn; who gives no number would rather not say. */
async function askEach(answers: readonly (readonly [name: string, nerves: number | null])[]): Promise<void> {
  await ada.press(/^On to each of you/);
  for (const [name, nerves] of answers) {
    await ada.sees(`${name}: before you shoot`);
    await ada.tellBody([]);
    if (nerves === null) {
      await ada.press('I would rather not say');
    } else {
      await ada.rateNerves(nerves);
      await ada.press(/^(Next: .*|To the court)$/);
    }
  }
  await page.locator('.court').waitFor();
}

test('a duel of two is set up by keys: a guest with a name, a fair head start, each asked alone', async () => {
  await ada.begin(url, 'Ada');
  await ada.follow(/^Play together/);
  await ada.sees('Play together');
  await expect.poll(() => ada.button(/^Who else plays\?/).isDisabled()).toBe(true);
  await addGuest('ada');
  await says(/^There is already a shooter called ada here/);
  await addGuest('Ben');
  await box('2. Ben').waitFor();

  await ada.choose('Which game?', 'Duel');
  await says(
    /^Both start level: Ada wins about 4\d times in 100, Ben about 4\d\. What is left ends level\.$/,
  );
  await ada.choose('A head start?', 'We choose it');
  await ada.press('Head start: less');
  await says('Ben 1 ahead');
  await ada.press('Head start: less');
  await says(/^Ben starts 2 ahead: Ada wins about [123]\d times in 100, Ben about [567]\d\./);
  await ada.choose('A head start?', 'None');
  await ada.choose('Who shoots first?', 'As named');
  await askEach([
    ['Ada', 3],
    ['Ben', null],
  ]);
  await says('Ada: Go to the free-throw line');
});

test('it is shot in turn, goes on after a reload at the right shot, and is over for both at once', async () => {
  await ada.go();
  await ada.shoot('●○●');
  await expect.poll(onTurn).toBe('Ben');
  // The one who shot last takes it back, whoever stands there now.
  await ada.hands.undo();
  await expect.poll(onTurn).toBe('Ada');
  await ada.shoot('●');
  await expect.poll(onTurn).toBe('Ben');

  await page.reload();
  await says('Ben: On you go, when you are ready');
  await expect.poll(() => readCourt(page)).toMatchObject({ shot: 2, of: 10 });
  await page.reload();
  await ada.follow('Leave, go on later');
  await says(/^Ben’s pressured round is not finished: Duel: Ten free throws, shot 2/);
  await says(/It is played together with Ada\./);
  await ada.follow('Go on at shot 2');
  await ada.go();
  await ada.shoot('○ ●○ ●○ ●○');
  await expect.poll(onTurn).toBe('Ada');
  await ada.shoot('●');
  await ada.sees('Ada won');
  expect(await table()).toEqual(['Ada 6 of 6', 'Ben 0 of 5']);
  await says(/^Before the first shot: about 4\d in 100$/);
});

test('the same again is set up as it was, with both asked once more', async () => {
  await ada.press(/^The same again/);
  await ada.sees('Play together');
  for (const name of ['1. Ada', '2. Ben']) expect(await box(name).isChecked()).toBe(true);
  expect(await ada.answer('Which game?', 'Duel').isChecked()).toBe(true);
  await askEach([
    ['Ada', 1],
    ['Ben', 2],
  ]);
  await ada.press('End it here');
  await says(/It ends for everyone\./);
  await ada.press('Yes, end it');
  await ada.sees('The game was ended early');
  await ada.done();
});

test('three play each their own mark, one has to go, and a reload comes in the middle', async () => {
  await ada.follow(/^Play together/);
  await ada.sees('Play together');
  await addGuest('Kim');
  await box('2. Kim').waitFor();
  await ada.hands.tick(box('Ben'));
  await box('3. Ben').waitFor();
  expect(await ada.answer('Which game?', 'Duel').isDisabled()).toBe(true);
  await ada.choose('Which game?', 'Lives');
  await ada.choose('Which one?', 'Six lives on the wings');
  await ada.choose('How hard for whom?', 'The same for all');
  await ada.choose('Who shoots first?', 'As named');
  await ada.choose('When does the turn pass?', 'After every spot');
  await askEach([
    ['Ada', 4],
    ['Kim', 5],
    ['Ben', null],
  ]);
  await ada.go();
  await ada.shoot('●●○');
  await expect.poll(onTurn).toBe('Ada');
  await page.reload();
  await says('Ada: On you go, when you are ready');

  await ada.press('Somebody has to go');
  await ada.press('Kim');
  await says(/^Undo the last: Kim has gone$/);
  await ada.go();
  await ada.shoot('●');
  await expect.poll(onTurn).toBe('Ben');
  await ada.shoot('○ ●○ ●○ ●');
  await expect.poll(onTurn).toBe('Ben');
  await ada.shoot('○○');
  await ada.sees('Ada won');
  expect(await table()).toEqual(['Ada 5 of 5', 'Kim 1 of 1', 'Ben 0 of 6']);
  await ada.done();
});

test('everybody’s shots are on their own record, with whom they were shot', async () => {
  await ada.sees('Ada');
  const { book } = await copyLog(ada);
  const all = [...book.rounds.values()].map((round) =>
    [book.shooters.get(round.shooter)?.name, round.nerves, shots(round), round.ending].join(' '),
  );
  expect(all.toSorted()).toEqual(
    [
      'Ada 3 ●●●●●● played-out',
      'Ben  ○○○○○ played-out',
      'Ada 1  stopped',
      'Ben 2  stopped',
      'Ada 4 ●●●●● played-out',
      'Kim 5 ● stopped',
      'Ben  ○○○○○○ played-out',
    ].toSorted(),
  );
  expect(book.skipped).toBe(0);
  await ada.visit('rounds');
  await ada.sees('Ada: all rounds');
  await says(/won: 6 to 0 · with Ben/);
  await says(/won: 5 made with 6 lives left · with (?:Kim and Ben|Ben and Kim)/);
});
