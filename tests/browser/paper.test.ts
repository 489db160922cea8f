import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';

import { openBrowser } from '../tools/browser.ts';
import { fingers } from '../tools/hands.ts';
import { Shooter } from '../tools/shooter.ts';

/* What comes out of a printer. Upright A4 with margins of 14 mm is 688 CSS pixels wide. */

const PAPER = { width: 688, height: 1016 };

let browser: BrowserContext;
let page: Page;
let una: Shooter;
beforeAll(async () => {
  browser = await openBrowser({ hasTouch: true });
  page = await browser.newPage();
  una = new Shooter(page, fingers(page));
  await una.begin(inject('appUrl'), 'Una');
  await una.visit('shooter');
  await una.press('Load the demo season');
  await una.sees('Ines (demo)');
});
afterAll(() => browser.close());

describe('the form for the court', () => {
  test('stands on paper alone', async () => {
    await una.visit('files');
    await una.button('Print a form for the court').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.paper-form').isVisible()).toBe(true);
    expect(await page.locator('.page').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });
});

/** After the form: what hides the rest of that screen must not hide this one. */
describe('the result', () => {
  beforeAll(async () => {
    await una.visit('result');
    await page.getByRole('heading', { name: 'Week by week' }).waitFor();
    await page.setViewportSize(PAPER);
    await page.emulateMedia({ media: 'print' });
  });
  afterAll(() => page.emulateMedia({ media: 'screen' }));

  test('has nothing to press, and everything unfolded', async () => {
    const seen = await page.evaluate(() => {
      // All that is folded away but what is there to be pressed.
      const FOLDED = 'details:not([open]) > :not(summary, .choice)';
      const visible = (selector: string): number =>
        [...document.querySelectorAll(selector)].filter((one) =>
          one.checkVisibility({ contentVisibilityAuto: true, visibilityProperty: true }),
        ).length;
      return {
        controls: visible('button, .button, input, select, textarea'),
        folded: document.querySelectorAll(FOLDED).length,
        told: visible(FOLDED),
        rows: visible('[aria-label="Numbers week by week"] tbody tr'),
      };
    });
    expect(seen.controls).toBe(0);
    expect(seen.folded).toBeGreaterThan(3);
    expect(seen.told).toBe(seen.folded);
    expect(seen.rows).toBe(10);
  });

  test('is dark on white, whatever the light in the gym', async () => {
    const colours = await page.evaluate(() => {
      document.documentElement.dataset['theme'] = 'dark';
      const { color, backgroundColor } = getComputedStyle(document.querySelector('.panel') as Element);
      return { color, backgroundColor };
    });
    expect(colours).toEqual({ color: 'rgb(0, 0, 0)', backgroundColor: 'rgb(255, 255, 255)' });
  });

  test('fits the width of the page, tables and whole seasons too', async () => {
    const wide = await page.evaluate(() => {
      const room = document.documentElement.clientWidth;
      return [...document.querySelectorAll('.panel, .panel svg, table, p')]
        .filter((one) => one.getBoundingClientRect().right > room + 0.5)
        .map((one) => `${one.tagName} ${one.getAttribute('class')}`);
    });
    expect(wide).toEqual([]);
    const weeks = page.getByRole('region', { name: 'Drawing week by week' });
    expect(await weeks.locator('.mark.drop').count()).toBe(10);
  });

  test('says when it was printed', async () => {
    const printed = page.locator('.printed');
    expect(await printed.isVisible()).toBe(true);
    const today = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
    const words = await page.evaluate(() => document.querySelector('.printed')?.textContent);
    expect(words).toBe(`Printed on ${today.format(new Date())}`);
    const sheet = await page.evaluate(() =>
      getComputedStyle(document.documentElement).getPropertyValue('--sheet'),
    );
    expect(sheet).toContain('what pressure does · printed on');
  });

  test('is many pages, none of them for nothing', async () => {
    const pdf = await page.pdf({ preferCSSPageSize: true });
    // A page is an object of this type (ISO 32000-1, 7.7.3.3).
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
    expect(pages.length).toBeGreaterThan(3);
    expect(pages.length).toBeLessThan(14);
  });
});

/** Some browsers say that they print, and let the page's own media alone. */
test('a chart is drawn to the paper before the browser goes on', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  const drawing = page.locator('.over-time .scroll svg').first();
  await expect.poll(async () => Number(await drawing.getAttribute('width'))).toBeLessThan(400);
  const widths = await page.evaluate(async () => {
    const width = (): number =>
      Number(document.querySelector('.over-time .scroll svg')?.getAttribute('width'));
    const found = [width()];
    for (const moment of ['beforeprint', 'afterprint']) {
      window.dispatchEvent(new Event(moment));
      // No timer: the paper does not wait for one.
      await Promise.resolve();
      found.push(width());
    }
    return found;
  });
  // 864 less the axis: seven ninths of it fit between the margins.
  expect(widths[1]).toBe(824);
  expect(widths[2]).toBe(widths[0]);
});
