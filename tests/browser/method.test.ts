import { expect, onTestFinished, test } from 'vitest';

import { atBench } from '../tools/atBench.ts';

/* The page on how the drop is worked out, and what may be chosen there. */

test('the drop can be asked for free throws alone, and for the mix of today', async () => {
  const pia = await atBench('Pia', onTestFinished);
  const { page } = pia;
  const headline = page.locator('.drop-headline');
  await pia.visit('shooter');
  await pia.press('Load the demo season');
  await pia.sees('Ines (demo)');
  await headline.filter({ hasText: /weeks, you lost about/ }).waitFor();

  await pia.visit('result');
  await pia.follow('How this is worked out');
  await pia.sees('How this is worked out');
  await page.getByText(/^Yours: kept since /).waitFor();
  await pia.choose('Which shots is your drop worked out for?', 'Free throws only');
  await pia.visit('bench');
  await headline.filter({ hasText: /weeks, at the free-throw line, you lost about/ }).waitFor();

  await pia.visit('method');
  await pia.choose('Which shots is your drop worked out for?', 'Your own mix');
  await pia.press('Work it out for my mix as it is today');
  await page.getByRole('status').filter({ hasText: 'Kept from today on.' }).waitFor();
  await pia.follow('The result');
  await headline.filter({ hasText: /weeks, you lost about/ }).waitFor();
  // In the drawing, and in the table behind it.
  expect(
    await page.getByRole('region', { name: 'How sure' }).getByText('Coin-ordered pairs alone').count(),
  ).toBe(2);
});
