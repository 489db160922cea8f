import { inject } from 'vitest';

import { openBrowser } from './browser.ts';
import { fingers } from './hands.ts';
import { Shooter } from './shooter.ts';

/**
 * A shooter at the bench of a device of their own, with touch.
 *
 * @param whenOver the test's `onTestFinished`: the device is put away then
 */
export async function atBench(name: string, whenOver: (away: () => Promise<void>) => void): Promise<Shooter> {
  const browser = await openBrowser({ hasTouch: true });
  whenOver(() => browser.close());
  const page = await browser.newPage();
  const shooter = new Shooter(page, fingers(page));
  await shooter.begin(inject('appUrl'), name);
  return shooter;
}
