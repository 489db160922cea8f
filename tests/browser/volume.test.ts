import { expect, inject, test } from 'vitest';

import { openBrowser } from '../tools/browser.ts';

declare global {
  interface Window {
    volumesSet: number[];
  }
}

test('the first sound after a start is as loud as the shooter left it', async () => {
  const browser = await openBrowser();
  try {
    await browser.addInitScript(() => {
      localStorage.setItem('loud-gym-settings', JSON.stringify({ volume: 0.05 }));
      window.volumesSet = [];
      const set = Reflect.get(AudioParam.prototype, 'setValueAtTime');
      AudioParam.prototype.setValueAtTime = new Proxy(set, {
        apply(_, param: AudioParam, given: [value: number, at: number]) {
          window.volumesSet.push(given[0]);
          return Reflect.apply(set, param, given);
        },
      });
    });
    const page = await browser.newPage();
    await page.goto(inject('appUrl'));
    await page.getByRole('button', { name: 'Turn the sound on' }).click();
    await page.getByRole('button', { name: 'I hear it' }).waitFor();
    await expect.poll(() => page.evaluate(() => window.volumesSet)).toContain(0.05);
    expect(await page.evaluate(() => window.volumesSet)).not.toContain(0.3);
  } finally {
    await browser.close();
  }
});
