import { expect, inject, test } from 'vitest';

import type { Body } from '../../renderer/log/events.ts';
import { atBench } from '../tools/atBench.ts';
import { openBrowser } from '../tools/browser.ts';
import { readCourt } from '../tools/court.ts';
import { keys } from '../tools/hands.ts';
import { readResult } from '../tools/result.ts';
import { copyLog, save } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';

/** What the list says of a game: wins in 100. */
async function listed({ page }: Shooter, name: string): Promise<number> {
  const row = page.locator('.game-row').filter({ has: page.getByRole('heading', { name, exact: true }) });
  const figure = row.locator('.figure').filter({ hasText: /\d/ });
  return Number(await figure.innerText());
}

/** Chooses a game file on the list of games. */
async function choose({ page }: Shooter, name: string, content: string): Promise<void> {
  await page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
}

test('by keys: a game of the list is made harder, played to its end and won; every shot is on the record', async ({
  onTestFinished,
}) => {
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const page = await browser.newPage();
  const kim = new Shooter(page, keys(page));
  await kim.begin(inject('appUrl'), 'Kim');
  await kim.follow(/^Games/);
  await kim.sees('Games');
  await kim.choose('Which kind?', 'Lives');
  const said = await listed(kim, 'One miss and it is over');
  await kim.follow(/^Play ?: One miss and it is over$/);
  await kim.sees('One miss and it is over');
  const panel = page.getByRole('region', { name: 'The game' });
  // Without a record it is a guess, and says so.
  await panel.getByText('You have not shot from here yet.').waitFor();
  expect(Number(await panel.locator('.figure').innerText())).toBe(said);

  await kim.wish({ nerves: 6, crowd: false });
  await kim.choose('How hard should it be?', 'Two in three');
  await panel.getByText(/^Make 4 before [2-9] misses to win\.$/).waitFor();
  const easier = Number(await panel.locator('.figure').innerText());
  expect(Math.abs(easier - 67)).toBeLessThan(20);
  await kim.choose('How hard should it be?', 'As it is');
  await panel.getByText('Make 4 before 1 miss to win.').waitFor();
  await kim.press(/^To the court/);
  await kim.go();
  await kim.shoot('●●●');
  await expect.poll(() => readCourt(page)).toMatchObject({ shot: 4, of: 4 });
  await kim.shoot('●');
  await kim.sees('You won');
  await kim.rateAfter(7, 2);

  const { rates, rounds } = await readResult(page);
  expect(rates['pressured']?.[0]).toBe('4 of 4');
  expect(rounds[0]).toContain('One miss and it is over');
  const { events } = await copyLog(kim);
  const started = events.find(({ type }) => type === 'RoundStarted')?.body as Body<'RoundStarted'>;
  expect(started).toMatchObject({ condition: 'pressured', entry: 'each-shot', nerves: 6 });
  expect(started.pressure).toMatchObject({
    mark: null,
    game: { name: 'One miss and it is over', plan: { family: 'lives', needed: 4, lives: 1 } },
    ingredients: ['must-make'],
  });
  expect(Math.round(100 * (started.pressure?.game?.chance ?? 0))).toBe(said);
});

test('a game is made, tried, kept, handed on and brought in by somebody else', async ({ onTestFinished }) => {
  const ada = await atBench('Ada', onTestFinished);
  const { page } = ada;
  await ada.follow(/^Games/);
  await ada.follow('Make a game of your own');
  await ada.choose('What kind of game?', 'In a row');
  await ada.choose('Which shots?', 'Ten free throws');
  await ada.step('In a row', 2);
  await ada.step('Over after so many shots at most', 5);
  const worth = page.getByRole('region', { name: 'What it is worth to you' });
  await worth.getByText('Make 2 in a row to win, within 5 shots.').waitFor();
  const even = Number(await worth.locator('.figure').innerText());
  await ada.step('In a row', 5);
  await expect.poll(async () => Number(await worth.locator('.figure').innerText())).toBeLessThan(even);
  await ada.step('In a row', 6);
  await worth.getByText('A run of 6 does not fit into 5 shots.').waitFor();
  await expect.poll(() => ada.button('Play it once now').count()).toBe(0);
  await ada.press('Keep this game');
  await page.getByRole('alert').getByText('A run of 6 does not fit into 5 shots.').waitFor();
  await ada.step('In a row', 3);

  await ada.choose('Who shoots?', '90 in 100');
  await ada.press('Play it once now');
  await page.getByText(/^(Won|Lost) after [1-5] shots?\.$/).waitFor();
  await page.getByRole('img', { name: /^The chance of winning after each of \d shots/ }).waitFor();

  await ada.hands.write(page.getByLabel('Name of the game'), 'Ten in a row at the line');
  await ada.press('Keep this game');
  await page.getByText('There is already a game called Ten in a row at the line.').waitFor();
  await ada.hands.write(page.getByLabel('Name of the game'), 'Three of five <b>');
  await ada.press('Keep this game');
  await page.getByText('Three of five <b> is kept.').waitFor();
  const { name, content } = await save(ada, 'Hand it on');
  expect(name).toBe('loud-gym-game-three-of-five-b.json');
  await ada.hands.press(ada.page.locator('form').getByRole('link', { name: 'All games' }));
  await ada.sees('Games');
  expect(await page.locator('.game-row h3').first().innerText()).toBe('Three of five <b>');

  const ben = await atBench('Ben', onTestFinished);
  await ben.follow(/^Games/);
  await choose(ben, 'photo.json', '{"kind": "photo", "version": 1}');
  await ben.page
    .getByText('photo.json cannot be taken. It is not a game of Loud Gym. Nothing was written.')
    .waitFor();
  const later = JSON.stringify({ ...(JSON.parse(content.toString()) as object), version: 2 });
  await choose(ben, 'later.json', later);
  await ben.page.getByText(/saved by a newer Loud Gym/).waitFor();
  await choose(ben, name, content.toString());
  await ben.page.getByText('Make 3 in a row to win, within 5 shots.').waitFor();
  await ben.press('No, leave it');
  expect(await ben.page.locator('.game-row').count()).toBe(30);
  await choose(ben, name, content.toString());
  await ben.press('Yes, keep it');
  await ben.page.getByText('Three of five <b> is kept. It stands first in the list.').waitFor();
  expect(await ben.page.locator('.game-row h3').first().innerText()).toBe('Three of five <b>');
  await choose(ben, name, content.toString());
  await ben.page.getByText('You have this very game already.').waitFor();
  await ben.press('Close');
  await ben.press(/^Remove ?: Three of five <b>$/);
  await ben.press('Yes, remove it');
  await expect.poll(() => ben.page.locator('.game-row').count()).toBe(30);
  const { book } = await copyLog(ben);
  expect(book.games.size).toBe(0);
});
