import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

declare global {
  interface Window {
    axe: { run(place: Document, options: RunOptions): Promise<AxeResults> };
  }
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A tablet lying and standing, and a phone, in CSS pixels. */
export const SIZES = [
  { width: 1180, height: 820 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

/** The rules of WCAG 2.2 up to AA that axe-core knows, its best practices, and the contrast of 7:1 this app aims at. */
const OPTIONS: RunOptions = {
  resultTypes: ['violations'],
  rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
};

/** What is wrong with one screen as it stands, in both lights and at every size. */
export async function faultsOf(page: Page, options: { readonly leastTarget: number }): Promise<string[]> {
  const before = page.viewportSize();
  const faults: string[] = [];
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const theme of ['dark', 'light']) {
      await page.evaluate((light) => (document.documentElement.dataset['theme'] = light), theme);
      const found = [...(await axeFaults(page)), ...(await page.evaluate(layoutFaults, options.leastTarget))];
      faults.push(...found.map((fault) => `${theme} ${size.width}x${size.height}: ${fault}`));
    }
  }
  if (before) await page.setViewportSize(before);
  return faults;
}

async function axeFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const { violations } = await page.evaluate((run) => window.axe.run(document, run), OPTIONS);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} ${target.join(' ')}`));
}

/** Runs in the page: targets smaller than they should be, and a page wider than the screen. */
function layoutFaults(least: number): string[] {
  const faults: string[] = [];
  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth > clientWidth) faults.push(`scrolls sideways, ${scrollWidth} in ${clientWidth}`);
  for (const target of document.querySelectorAll<HTMLElement>(
    'a, button, input, textarea, select, summary',
  )) {
    const { width, height } = target.getBoundingClientRect();
    if (width === 0 || height === 0) continue;
    if (Math.min(width, height) < least - 0.01) {
      const words = target.textContent || target.getAttribute('aria-label') || target.tagName;
      faults.push(`${words} measures ${Math.round(width)}x${Math.round(height)}`);
    }
  }
  return faults;
}
