import { expect, test } from 'vitest';

import { faultsOf } from '../tools/access.ts';
import { atBench } from '../tools/atBench.ts';

/* The screens of several shooters in both lights on a tablet and a phone, as access.test.ts looks at all others. */

const ANYWHERE = 24;
const ON_COURT = 64;
/** Long names, so that they have to wrap. */
const BEN = 'Benedikt-Maximilian';
const KIM = 'Kimberley of the second team';

test('playing together, from the set-up to the end', { timeout: 240_000 }, async ({ onTestFinished }) => {
  const una = await atBench('Una', onTestFinished);
  const { page } = una;
  const faults = (leastTarget = ANYWHERE) => faultsOf(page, { leastTarget });
  const box = (name: string) => page.getByRole('checkbox', { name, exact: true });
  await una.follow(/^Play together/);
  await una.press('Add');
  await page.getByRole('alert').waitFor();
  expect.soft(await faults()).toEqual([]);

  for (const [at, name] of [BEN, KIM].entries()) {
    await una.hands.write(page.getByLabel('Somebody else’s name'), name);
    await una.press('Add');
    await box(`${at + 2}. ${name}`).waitFor();
  }
  await una.choose('Which game?', 'Lives');
  await una.choose('Which one?', 'One miss and it is over');
  await una.choose('How hard for whom?', 'The same for all');
  await una.choose('Who shoots first?', 'As named');
  expect.soft(await faults()).toEqual([]);

  await una.press(/^On to each of you/);
  await una.sees('Una: before you shoot');
  await una.press('I would rather not say');
  await page.getByRole('alert').waitFor();
  expect.soft(await faults()).toEqual([]);
  await una.tellBody([]);
  await una.press('I would rather not say');
  await una.sees(`${BEN}: before you shoot`);
  await una.tellBody(['Sore']);
  await una.press('I would rather not say');
  await una.sees(`${KIM}: before you shoot`);
  await una.tellBody([]);
  await una.press('I would rather not say');
  // Being watched would be a step up for a sore body.
  await una.sees('Not like this today');
  expect.soft(await faults()).toEqual([]);
  await una.press(`Play without ${BEN}`);

  await page.locator('.court').waitFor();
  expect.soft(await faults(ON_COURT)).toEqual([]);
  await una.press('Somebody has to go');
  await una.button('Nobody').waitFor();
  expect.soft(await faults(ON_COURT)).toEqual([]);
  await una.press('Nobody');
  await una.go();
  await una.shoot('●');
  expect.soft(await faults(ON_COURT)).toEqual([]);
  await una.shoot('○○');
  await una.sees('Nobody won this time');
  expect.soft(await faults()).toEqual([]);
});

test('duels: against whom, and how they are set up', { timeout: 240_000 }, async ({ onTestFinished }) => {
  const una = await atBench('Una', onTestFinished);
  const { page } = una;
  const faults = () => faultsOf(page, { leastTarget: ANYWHERE });
  await una.setUp('Relaxed round', { card: 'Ten free throws', nerves: 2, count: 'Tap every shot' });
  await una.go();
  await una.shoot('●●○●○ ●●●○○');
  await una.sees('Round over');
  await una.done();

  await una.visit('duel');
  await una.sees('A duel');
  await una.choose('How good?', 'So many in ten');
  expect.soft(await faults()).toEqual([]);
  await una.hands.press(page.getByRole('link', { name: /6 of 10$/ }));
  await page.locator('.start-bar').waitFor();
  await una.choose('How hard should it be?', 'Even');
  expect.soft(await faults()).toEqual([]);

  await page.evaluate(() => {
    window.location.hash = '#/duel/nobody';
  });
  await page.getByText('That round or card is not here any more.').waitFor();
  await una.follow('Two on one device');
  await una.sees('Play together');
  await una.hands.write(page.getByLabel('Somebody else’s name'), KIM);
  await una.press('Add');
  await page.getByRole('checkbox', { name: `2. ${KIM}`, exact: true }).waitFor();
  await una.choose('A head start?', 'We choose it');
  expect.soft(await faults()).toEqual([]);
});
