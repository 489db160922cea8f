import type { Locator } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';

import { faultsOf } from '../tools/access.ts';
import { atBench } from '../tools/atBench.ts';
import type { Shooter } from '../tools/shooter.ts';

/* What may be on the line: how the body is, the ladder, money, double or nothing, and who is under 18. */

const LEAST_TARGET = 24;

const bench = (name: string): Promise<Shooter> => atBench(name, (away) => onTestFinished(away));
const says = (shooter: Shooter, words: string | RegExp): Promise<void> =>
  shooter.page.getByText(words).first().waitFor();
const region = (shooter: Shooter, name: string): Locator => shooter.page.getByRole('region', { name });
const rungs = async (shooter: Shooter): Promise<string[]> => {
  const texts = await shooter.page.locator('.rung').allInnerTexts();
  return texts.map((text) => text.replaceAll(/\s*\n\s*/g, ': '));
};

/** Plays ten free throws for a mark of five, all made or none. */
async function play(shooter: Shooter, how: 'won' | 'lost' | 'given up'): Promise<void> {
  await shooter.wish({ card: 'Ten free throws', makesNeeded: 5, clock: 'None', nerves: 6 });
  await shooter.press(/^To the court/);
  await shooter.go();
  if (how === 'given up') {
    await shooter.shoot('○○');
    await shooter.hands.pause();
    await shooter.press('End it here');
    await shooter.press('Yes, end it');
    await shooter.sees('You ended it early');
    return;
  }
  await shooter.shoot(how === 'won' ? '●●●●● ●●●●●' : '○○○○○ ○○○○○');
  await shooter.sees(how === 'won' ? 'You beat the mark' : 'Short of the mark');
}

test('a debt is doubled, kept through a round that is given up, doubled again, and then it is settled', async () => {
  const ada = await bench('Ada');
  await ada.visit('pressured');
  await ada.wish({ stake: 'Loser buys lunch' });
  await play(ada, 'lost');
  await says(ada, /^You owe: Loser buys lunch\. It stands/);
  await ada.rateAfter(6, 2);

  await ada.visit('stakes');
  const owes = region(ada, 'Ada owes');
  await owes.getByText('Loser buys lunch', { exact: true }).waitFor();
  await ada.follow(/^Double or nothing/);
  await ada.sees('Double or nothing');
  await says(ada, /^Win, and you owe nothing any more\. Fall short, and you owe it 2 times\. After this/);
  await ada.wish({ hard: 'No mark', nerves: 5 });
  await ada.press(/^To the court/);
  expect(await ada.page.getByRole('alert').innerText()).toBe('Double or nothing needs a mark to beat.');
  await ada.wish({ hard: 'Even' });
  expect.soft(await faultsOf(ada.page, { leastTarget: LEAST_TARGET })).toEqual([]);

  await play(ada, 'given up');
  await says(ada, 'The debt it was shot for stays as it was.');
  await ada.done();
  await ada.visit('stakes');
  await owes.getByText('Loser buys lunch', { exact: true }).waitFor();

  await ada.follow(/^Double or nothing/);
  await play(ada, 'lost');
  await says(ada, /^You owe: Loser buys lunch, 2 times\./);
  await ada.done();
  await ada.visit('stakes');
  await ada.follow(/^Double or nothing/);
  await says(ada, /This is the last time it can be doubled/);
  await play(ada, 'lost');
  await ada.done();

  await ada.visit('stakes');
  await owes.getByText('Loser buys lunch, 4 times').waitFor();
  await says(ada, 'Doubled twice: it grows no further. Now it is settled.');
  expect(await ada.link(/^Double or nothing/).count()).toBe(0);
  expect(await owes.getByRole('listitem').count()).toBe(1);
  expect.soft(await faultsOf(ada.page, { leastTarget: LEAST_TARGET })).toEqual([]);
  await ada.press(/^Settle it ?: Loser buys lunch$/);
  await region(ada, 'Settled').getByText('Loser buys lunch, 4 times').waitFor();
  await ada.page.reload();
  await region(ada, 'Settled').getByText('Loser buys lunch, 4 times').waitFor();
});

test('double or nothing that is won wipes the debt out, and its old address leads nowhere', async () => {
  const bea = await bench('Bea');
  await bea.visit('pressured');
  await bea.wish({ stake: 'Loser sweeps the court' });
  await play(bea, 'lost');
  await bea.done();
  await bea.visit('stakes');
  await bea.follow(/^Double or nothing/);
  const address = bea.page.url();
  await play(bea, 'won');
  await says(bea, 'Double or nothing: Loser sweeps the court is off. Nothing is owed any more.');
  await bea.done();
  await bea.visit('stakes');
  await region(bea, 'Settled').getByText('Double or nothing: nothing is owed any more.').waitFor();
  await bea.page.goto(address);
  await bea.sees('Nothing to double');
  await bea.follow(/Bench$/);
  await bea.link('Stakes').waitFor();
  expect(await bea.link(/^Stakes: \d/).count()).toBe(0);
});

test('money is refused, kindly, and nothing is started for it', async () => {
  const cem = await bench('Cem');
  await cem.visit('pressured');
  await cem.press(/^To the court/);
  expect(await cem.page.getByRole('alert').innerText()).toMatch(/^Please say first how your body is/);
  await cem.wish({ card: 'Ten free throws', stake: 'Loser pays 5 euro', nerves: 3 });
  await says(cem, 'Not money. What about the washing-up?');
  await cem.press(/^To the court/);
  expect(await cem.page.getByRole('alert').innerText()).toBe('Not money. What about the washing-up?');
  expect.soft(await faultsOf(cem.page, { leastTarget: LEAST_TARGET })).toEqual([]);
  await cem.wish({ stake: 'The washing-up' });
  expect(await cem.page.getByText('Not money.').count()).toBe(0);
  await cem.press(/^To the court/);
  await says(cem, 'On the line: The washing-up');
});

describe('the body comes first', () => {
  test('sore: nothing goes up, something else is offered, and the word stands for the visit', async () => {
    const dee = await bench('Dee');
    await dee.visit('pressured');
    await dee.wish({ body: ['Sore', 'Slept badly'] });
    await dee.page.getByRole('heading', { name: 'No step up today: you are sore and slept badly' }).waitFor();
    await says(dee, /a relaxed round, the same shots in your head .* slow breathing/);
    await says(dee, /decided by someone licensed/);
    await says(dee, /^Nothing today: you are sore/);
    expect(await dee.page.getByLabel('In your own words').count()).toBe(0);
    for (const onlooker of ['Someone watches', 'A friend films it', 'Someone judges it']) {
      expect(await dee.answer('Who sees this round?', onlooker).isDisabled()).toBe(true);
    }
    expect(await rungs(dee)).toEqual([
      'Something is on the line',
      'Someone judges it',
      'A friend films it',
      'Someone watches',
      'It goes on your record: this round, suggested',
    ]);
    await dee.page.getByText('Signs that cannot wait').tap();
    await says(dee, 'new trouble with bladder or bowels');
    expect.soft(await faultsOf(dee.page, { leastTarget: LEAST_TARGET })).toEqual([]);

    await dee.page.reload();
    await dee.visit('pair');
    await dee.page.getByRole('heading', { name: /^No step up today/ }).waitFor();
    await dee.follow('A relaxed round instead');
    await dee.sees('A relaxed round');
    expect(await dee.button('No to all three').count()).toBe(0);

    await dee.visit('pressured');
    await dee.press('That has changed');
    await dee.tellBody([]);
    await dee.page.getByLabel('In your own words').waitFor();
  });

  test('the ladder says where one stands, and takes the shooter’s word that it was too much', async () => {
    const eli = await bench('Eli');
    await eli.visit('pressured');
    await eli.wish({ seen: 'Someone watches' });
    expect((await rungs(eli)).at(-2)).toBe('Someone watches: this round');
    await play(eli, 'won');
    await eli.choose('Was the pressure too much today?', 'Yes');
    await eli.done();
    await eli.visit('pressured');
    await says(eli, 'Last time was too much. One step down: “It goes on your record”.');
    expect((await rungs(eli)).slice(-2)).toEqual([
      'Someone watches: last time',
      'It goes on your record: this round, suggested',
    ]);
    await eli.wish({ stake: 'Loser sings' });
    await says(eli, /^That is 3 steps above last time/);
  });
});

test('under 18 nothing is on the line until an adult takes a step, and favours come from a list', async () => {
  const fay = await bench('Fay');
  await fay.visit('pressured');
  await fay.wish({ stake: 'Loser buys lunch' });
  await fay.choose('Is Fay under 18?', 'Yes');
  await says(fay, /^Nothing: Fay is under 18\./);
  await fay.wish({ seen: 'A friend films it', nerves: 4 });
  await fay.press(/^To the court/);
  expect(await fay.page.getByRole('alert').innerText()).toMatch(
    /needs the word of a parent or guardian first/,
  );
  await fay.choose('Has a parent or guardian agreed to this video?', 'Yes');

  await fay.follow('Where that is set');
  await fay.sees('Change the shooter');
  await says(fay, 'Nothing is on the line, alone or in a group.');
  await fay.press('An adult: allow small favours');
  await says(fay, /This is a promise, not a lock/);
  const sum = fay.page.getByLabel(/^To allow small favours: what is/);
  const [, one, other] = /what is (\d+) \+ (\d+)/.exec(await fay.page.locator('main').innerText()) ?? [];
  await fay.hands.write(sum, '1');
  await fay.press('I promise');
  expect(await fay.page.getByRole('alert').innerText()).toBe('That is not the sum. Nothing was changed.');
  expect.soft(await faultsOf(fay.page, { leastTarget: LEAST_TARGET })).toEqual([]);
  await fay.hands.write(sum, String(Number(one) + Number(other)));
  await fay.press('I promise');
  await says(
    fay,
    /^On the line alone: small favours, allowed by an adult on \d+ \w+ \d{4}\. In a group: nothing\./,
  );

  await fay.visit('pressured');
  expect(await fay.page.getByLabel('In your own words').count()).toBe(0);
  await fay.choose('A small favour', 'Carries the balls');
  expect.soft(await faultsOf(fay.page, { leastTarget: LEAST_TARGET })).toEqual([]);
  await play(fay, 'lost');
  await says(fay, /^You owe: Carries the balls\./);
  await fay.done();
  await fay.visit('stakes');
  await region(fay, 'Fay owes').getByText('Carries the balls', { exact: true }).waitFor();
  await says(fay, /and nothing is doubled/);
  expect(await fay.link(/^Double or nothing/).count()).toBe(0);
});
