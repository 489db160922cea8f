import { expect, test } from 'vitest';

import { faultsOf } from '../tools/access.ts';
import { atBench } from '../tools/atBench.ts';

/* The screens of games in both lights on a tablet and a phone, as access.test.ts looks at all others. */

const ANYWHERE = 24;

test('the list of games, a file refused and a file asked about', async ({ onTestFinished }) => {
  const { page } = await atBench('Una', onTestFinished);
  const faults = () => faultsOf(page, { leastTarget: ANYWHERE });
  await page.evaluate(() => {
    window.location.hash = '#/games';
  });
  await page.locator('.game-row').nth(29).waitFor();
  expect.soft(await faults()).toEqual([]);
  const choose = (text: string) =>
    page
      .locator('input[type=file]')
      .setInputFiles({ name: 'game.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await choose('nothing');
  await page.getByRole('alert').waitFor();
  expect.soft(await faults()).toEqual([]);
  await choose(
    JSON.stringify({
      kind: 'loud-gym-game',
      version: 1,
      name: 'A very long name for a game that goes on and on until 60 let',
      stops: [{ spot: 'Bleachers', shot: 'catch', attempts: 5 }],
      plan: { family: 'reach', needed: 3 },
      clock: null,
      crowd: true,
      spots: [],
    }),
  );
  await page.getByText('Yes, keep it').waitFor();
  expect.soft(await faults()).toEqual([]);
  await page.getByText('Yes, keep it').tap();
  await page.getByText('Your own', { exact: true }).first().waitFor();
  await page.getByRole('button', { name: /^Remove/ }).tap();
  await page.getByText('Yes, remove it').waitFor();
  expect.soft(await faults()).toEqual([]);
});

test(
  'the making of games of several kinds, and their set-up',
  { timeout: 180_000 },
  async ({ onTestFinished }) => {
    const una = await atBench('Una', onTestFinished);
    const { page } = una;
    const faults = () => faultsOf(page, { leastTarget: ANYWHERE });
    for (const id of ['race-edge', 'trip-down-one', 'last-top', 'climb-out', 'duel-arc']) {
      await una.visit('game', id);
      await una.press('Play it once now');
      await page.getByRole('img', { name: /^The chance of winning/ }).waitFor();
      await page.getByText('Shot by shot', { exact: true }).tap();
      await una.press('Keep this game');
      await page.getByRole('alert').waitFor();
      expect.soft(await faults(), `the making of ${id}`).toEqual([]);
      await una.visit('pressured', id);
      await page.getByRole('region', { name: 'The game' }).waitFor();
      expect.soft(await faults(), `the set-up of ${id}`).toEqual([]);
    }
  },
);
