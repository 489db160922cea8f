import { expect, onTestFinished, test } from 'vitest';

import { atBench } from '../tools/atBench.ts';

/* Whether the forecasts keep their word, in the app with the worker behind it. */

test('the forecasts of a season are scored, round by round', async () => {
  const noa = await atBench('Noa', onTestFinished);
  const { page } = noa;
  await noa.visit('shooter');
  await noa.press('Load the demo season');
  await noa.sees('Ines (demo)');
  await noa.visit('result');
  const heading = page.getByRole('heading', { name: 'Do the forecasts keep their word?' });
  await heading.waitFor();
  await page.getByText(/ of the latest \d+ rounds /).waitFor();
  await heading.click();
  await page.getByText('The numbers round by round').click();
  const table = page.getByRole('region', { name: 'Forecasts round by round' });
  expect(await table.locator('tbody tr').count()).toBeGreaterThan(30);
});
