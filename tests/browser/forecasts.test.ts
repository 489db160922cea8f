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
  const panel = page.locator('details.fold').filter({ hasText: 'Do the forecasts keep their word?' });
  // The answer is there without opening.
  const says = panel.locator('.fold-says');
  await says.filter({ hasText: /latest \d+ rounds/ }).waitFor();
  await panel.locator('summary').first().click();
  const table = panel.getByRole('region', { name: 'Forecasts round by round' });
  await panel.getByText('The numbers round by round').click();
  expect(await table.locator('tbody tr').count()).toBeGreaterThan(30);
});
