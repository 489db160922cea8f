import { afterEach, expect, test, vi } from 'vitest';

import { findBrowser } from './findBrowser.ts';

afterEach(() => vi.unstubAllEnvs());

test('the browser that CHROMIUM_PATH names is the one', () => {
  vi.stubEnv('CHROMIUM_PATH', process.execPath);
  expect(findBrowser()).toBe(process.execPath);
});

test('a CHROMIUM_PATH that leads nowhere is said, not passed over', () => {
  vi.stubEnv('CHROMIUM_PATH', '/nowhere/chromium');
  expect(() => findBrowser()).toThrow('CHROMIUM_PATH names /nowhere/chromium, and there is no such file.');
});
