import { expect, onTestFinished, test } from 'vitest';

import { atBench } from '../tools/atBench.ts';

/* What the shot loses when much hangs on it, in the app with the worker behind it. */

test('what hung on the shots of a season is told, and how to learn more', async () => {
  const ada = await atBench('Ada', onTestFinished);
  const { page } = ada;
  await ada.visit('shooter');
  await ada.press('Load the demo season');
  await ada.sees('Ines (demo)');
  await ada.visit('result');
  const panel = page.locator('section.panel').filter({ hasText: 'When much hangs on the shot' });
  // Ninety pressured rounds with a mark, and no double ball yet.
  await panel.getByRole('img', { name: /^Much against little: .* shots in 90 rounds/ }).waitFor();
  expect(await panel.textContent()).toContain('would be a fair test of it');
  await panel.getByText('The numbers by what hung on the shot').click();
  const table = panel.getByRole('region', { name: 'Numbers by what hung on the shot' });
  expect(await table.locator('tbody tr').count()).toBe(5);

  await ada.follow('How this is worked out');
  await page.getByText(/a good or a bad round lies about \d/).waitFor();
  await ada.visit('result');
  await panel.getByRole('link', { name: 'Games' }).waitFor();
  await panel.getByRole('link', { name: 'Games' }).click();
  await ada.sees('Games');
});
