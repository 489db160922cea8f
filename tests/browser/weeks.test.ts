import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';

import { atBench } from '../tools/atBench.ts';

/* The season week by week, in the app with the model behind it. */

async function seasonOnAPhone(): Promise<Page> {
  const una = await atBench('Una', onTestFinished);
  await una.page.setViewportSize({ width: 390, height: 844 });
  await una.visit('shooter');
  await una.press('Load the demo season');
  await una.sees('Ines (demo)');
  await una.visit('result');
  await una.page.getByRole('heading', { name: 'Week by week' }).waitFor();
  return una.page;
}

test('any two weeks can be compared', async () => {
  const page = await seasonOnAPhone();
  const answer = page.locator('.between-weeks .lead');
  const from = page.getByLabel('From the week of');
  const to = page.getByLabel('To the week of');
  const days = await from.locator('option').allTextContents();
  expect(days).toHaveLength(10);
  const short = (day: string | undefined): string => (day ?? '').replace(/ \d{4}$/, '');
  const told = (one: string | undefined, other: string | undefined): RegExp =>
    new RegExp(`From the week of ${short(one)}(?: \\d{4})? to the week of ${short(other)}`);
  await expect.poll(() => answer.innerText()).toMatch(told(days[0], days[9]));

  await from.selectOption({ label: days[4] ?? '' });
  await expect.poll(() => answer.innerText()).toMatch(told(days[4], days[9]));
  // The earlier week comes first, whichever was chosen where.
  await to.selectOption({ label: days[1] ?? '' });
  await expect.poll(() => answer.innerText()).toMatch(told(days[1], days[4]));
  await to.selectOption({ label: days[4] ?? '' });
  await page.getByText('Choose two different weeks.').waitFor();
});

test('the newest weeks are in view, and earlier ones a key away', async () => {
  const page = await seasonOnAPhone();
  const drawing = page.getByRole('region', { name: 'Drawing week by week' });
  const hidden = () =>
    drawing.evaluate(({ scrollLeft, scrollWidth, clientWidth }) => ({
      left: scrollLeft,
      right: scrollWidth - clientWidth - scrollLeft,
    }));
  const before = await hidden();
  expect(before.left).toBeGreaterThan(10);
  expect(before.right).toBeLessThan(1);
  await drawing.focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(async () => (await hidden()).right).toBeGreaterThan(10);
});

test('the whole season is fitted to the screen, and back', async () => {
  const page = await seasonOnAPhone();
  const drawing = page.getByRole('region', { name: 'Drawing week by week' });
  const slides = () => drawing.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
  const whole = page.getByRole('button', { name: 'Whole season' }).first();
  await expect.poll(slides).toBeGreaterThan(10);
  await whole.tap();
  await expect.poll(slides).toBe(0);
  expect(await drawing.locator('.mark.drop').count()).toBe(10);
  expect(await whole.getAttribute('aria-pressed')).toBe('true');
  await whole.tap();
  await expect.poll(slides).toBeGreaterThan(10);
});
