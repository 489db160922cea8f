import { readdir } from 'node:fs/promises';
import { extname, join } from 'node:path';

import type { BrowserContext } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import type { ShellBridge } from '../../electron/bridge.ts';
import { contentTypeOf } from '../../electron/contentTypes.ts';
import { runShell, type Shell } from '../electron/standIn.ts';
import { openBrowser } from '../tools/browser.ts';

declare global {
  interface Window {
    /** What the policy stopped, as "directive address". */
    stopped: string[];
  }
}

const root = join(import.meta.dirname, '../..');

let browser: BrowserContext;
let shell: Shell;
/** What the policy stopped in the page's workers, which only the console tells. */
let complaints: string[];

beforeEach(async () => {
  // No name but the stand-in's own leads anywhere.
  browser = await openBrowser({ args: ['--host-resolver-rules=MAP * ~NOTFOUND'] });
  complaints = [];
  browser.on('console', (message) => {
    if (message.text().includes('Content Security Policy')) complaints.push(message.text());
  });
  await browser.addInitScript(() => {
    window.stopped = [];
    addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
      window.stopped.push(`${effectiveDirective} ${blockedURI}`),
    );
  });
  shell = await runShell(root, browser);
});
afterEach(() => browser.close());

describe('the built shell', () => {
  test('opens the page from its own files, under its own policy, and from nowhere else', async () => {
    const { page, foreign } = shell;
    expect(await page.title()).toMatch(/Loud Gym$/);
    await expect.poll(() => page.locator('#app').evaluate((app) => app.childElementCount)).toBeGreaterThan(0);
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate(() => window.stopped)).toEqual([]);
    expect(complaints).toEqual([]);
    expect(foreign).toEqual([]);
  });

  test('gives the log what it needs: a secure place, compiled code in a worker, private files', async () => {
    expect(await shell.page.evaluate(() => isSecureContext)).toBe(true);
    const hasFile = (): Promise<boolean> =>
      shell.page.evaluate(async () => {
        const folder = await navigator.storage.getDirectory();
        return !(await folder.keys().next()).done;
      });
    await expect.poll(hasFile, { timeout: 20_000 }).toBe(true);
  });

  test('knows the kind of every file in the build', async () => {
    const files = await readdir(join(root, 'dist/renderer'), { recursive: true, withFileTypes: true });
    const unknown = files.filter((file) => file.isFile() && contentTypeOf(file.name) === null);
    expect(unknown.map((file) => extname(file.name))).toEqual([]);
  });
});

describe('the bridge', () => {
  test('holds two things, and lets nothing of Electron or Node through', async () => {
    const seen = await shell.page.evaluate(() => ({
      bridge: Object.keys(window.loudGymShell ?? {}),
      platform: window.loudGymShell?.platform,
      node: ['require', 'process', 'Buffer', 'module'].filter((name) => name in window),
    }));
    expect(seen).toEqual({ bridge: ['keepAwake', 'platform'], platform: process.platform, node: [] });
  });

  test('keeps the display awake while a round is on', async () => {
    const { page, held } = shell;
    await page.evaluate(() => window.loudGymShell?.keepAwake(true));
    expect([...held.values()]).toEqual(['prevent-display-sleep']);
    await page.evaluate(() => window.loudGymShell?.keepAwake(false));
    expect(held.size).toBe(0);
  });

  test('lets the display sleep when the page is loaded anew in the middle of a round', async () => {
    const { page, held } = shell;
    await page.evaluate(() => window.loudGymShell?.keepAwake(true));
    expect(held.size).toBe(1);
    await page.reload();
    expect(held.size).toBe(0);
  });

  test('tells the page when it asks for something else', async () => {
    const asked = shell.page.evaluate(async () => {
      const bridge: ShellBridge | undefined = window.loudGymShell;
      // Types would not let it pass.
      if (bridge) await Reflect.apply(bridge.keepAwake, bridge, ['please']);
    });
    await expect(asked).rejects.toThrow(/true or false/);
  });
});

describe('a page gone wrong', () => {
  test('can run no script that was typed into it, nor text turned into a script', async () => {
    const { page } = shell;
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken"';
      document.head.append(script);
      // Out of the tool's own call, which may do more than a page.
      return new Promise<string>((resolve) => {
        setTimeout(() => {
          try {
            resolve(String(Reflect.construct(Function, ['return 1'])));
          } catch (error) {
            resolve(error instanceof Error ? error.name : 'unknown');
          }
        });
      });
    });
    expect(ran).toBe('EvalError');
    expect(await page.title()).toMatch(/Loud Gym$/);
    expect(await page.evaluate(() => window.stopped)).toEqual(['script-src-elem inline', 'script-src eval']);
  });

  test('cannot send a shot elsewhere, nor hold another page', async () => {
    const { page, foreign } = shell;
    const sent = await page.evaluate(async () => {
      const frame = document.createElement('iframe');
      frame.src = 'https://other.example/';
      document.body.append(frame);
      return fetch('https://other.example/shots').then(
        () => 'sent',
        () => 'stopped',
      );
    });
    expect(sent).toBe('stopped');
    await expect
      .poll(() => page.evaluate(() => window.stopped.toSorted()))
      .toEqual(['connect-src https://other.example/shots', 'frame-src https://other.example']);
    expect(foreign).toEqual([]);
  });

  test('stays where it is when it wants to go elsewhere', async () => {
    const { page, foreign } = shell;
    await page.evaluate(() => {
      window.stopped.push('still here');
      location.assign('https://other.example/');
    });
    await expect.poll(() => foreign).toEqual(['https://other.example/']);
    await expect.poll(() => page.evaluate(() => window.stopped)).toEqual(['still here']);
  });
});
