import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest';

import { openBrowser } from '../tools/browser.ts';
import { INSECURE_ARGS, INSECURE_HOST } from './serve.ts';
import type {} from './harness/harness.ts';

const url = inject('harnessUrl');

let browser: BrowserContext;
beforeEach(async () => {
  browser = await openBrowser();
});
afterEach(async () => browser.close());

async function newPage(): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(url);
  return page;
}

const open = (page: Page, takeOver = false): Promise<string> =>
  page.evaluate((take) => window.harness.open(take), takeOver);

const append = (page: Page, run: number, batch: number, of = 1, padding = 0): Promise<string> =>
  page.evaluate((args) => window.harness.append(...args), [run, batch, of, padding] as const);

/** The batches in the log as it was read, in order, as `run/batch`. */
async function batches(page: Page): Promise<string[]> {
  const marks = await page.evaluate(() => window.harness.marks());
  return marks.filter((mark) => mark.place === 0).map((mark) => `${mark.run}/${mark.batch}`);
}

describe('the log in a browser', () => {
  test('owns its file alone, journals ahead, and flushes every commit', async () => {
    const page = await newPage();
    expect(await open(page)).toBe('ok');
    expect(await page.evaluate(() => window.harness.footing())).toEqual({
      locking: 'exclusive',
      journal: 'wal',
      synchronous: 2,
    });
  });

  test('gives back what was acknowledged, in order, after the page is loaded again', async () => {
    const page = await newPage();
    await open(page);
    for (const batch of [0, 1, 2]) expect(await append(page, 0, batch, 2)).toBe('ok');
    for (let again = 0; again < 5; again += 1) {
      await page.reload();
      expect(await open(page)).toBe('ok');
      expect(await batches(page)).toEqual(['0/0', '0/1', '0/2']);
    }
  });

  test('opens again after its worker broke, and says so to whoever waited', async () => {
    const page = await newPage();
    await page.evaluate(() => window.harness.use('fragile'));
    await open(page);
    await append(page, 0, 0);
    await page.evaluate(() => window.harness.breakWorker());
    await expect.poll(() => page.evaluate(() => window.harness.lost())).toEqual(['broken']);
    expect(await append(page, 0, 1)).toBe('broken');
    expect(await open(page)).toBe('ok');
    expect(await batches(page)).toEqual(['0/0']);
    expect(await append(page, 0, 1)).toBe('ok');
  });
});

describe('a second window', () => {
  test('is refused, may take over, and the first is told', async () => {
    const first = await newPage();
    await open(first);
    await append(first, 1, 0);

    const second = await newPage();
    expect(await open(second)).toBe('second-window');
    expect(await append(second, 2, 0)).toBe('broken');
    expect(await append(first, 1, 1)).toBe('ok');

    expect(await open(second, true)).toBe('ok');
    expect(await batches(second)).toEqual(['1/0', '1/1']);
    expect(await first.evaluate(() => window.harness.lost())).toEqual(['taken-over']);
    expect(await append(first, 1, 2)).toBe('taken-over');
    expect(await append(second, 2, 0)).toBe('ok');

    expect(await open(first)).toBe('second-window');
    expect(await open(first, true)).toBe('ok');
    expect(await batches(first)).toEqual(['1/0', '1/1', '2/0']);
    expect(await second.evaluate(() => window.harness.lost())).toEqual(['taken-over']);
  });

  test('finds every shot that was acknowledged while it took over', async () => {
    const first = await newPage();
    const acknowledged: number[] = [];
    await first.exposeFunction('acknowledged', (batch: number) => acknowledged.push(batch));
    await open(first);
    const playing = first.evaluate(() => window.harness.play(1));
    await expect.poll(() => acknowledged.length).toBeGreaterThan(20);

    const second = await newPage();
    expect(await open(second, true)).toBe('ok');
    expect(await playing).toBe('taken-over');
    expect(await batches(second)).toEqual(acknowledged.map((batch) => `1/${batch}`));
  });

  test('may open once the first is closed', async () => {
    const first = await newPage();
    await open(first);
    await append(first, 1, 0);
    const second = await newPage();
    await first.close();
    expect(await open(second)).toBe('ok');
    expect(await batches(second)).toEqual(['1/0']);
  });
});

describe('no storage', () => {
  test('is said where the browser is too old for files of its own', async () => {
    const page = await newPage();
    await page.evaluate(() => window.harness.use('oldBrowser'));
    expect(await open(page)).toBe('no-storage');
    expect(await append(page, 0, 0)).toBe('broken');
  });

  test('is said where the page is not served securely', async () => {
    const insecure = await openBrowser({ args: INSECURE_ARGS });
    try {
      const page = await insecure.newPage();
      await page.goto(url.replace('127.0.0.1', INSECURE_HOST));
      expect(await open(page)).toBe('no-storage');
      expect(await append(page, 0, 0)).toBe('broken');
    } finally {
      await insecure.close();
    }
  });
});

describe('a file that cannot be used', () => {
  /** SQLite keeps its user_version at byte 60, four bytes long (sqlite.org/fileformat.html, 1.3). */
  const VERSION_AT = 60;
  /** The page size this build of SQLite starts a file with. */
  const PAGE = 8192;

  async function filledAndClosed(): Promise<Page> {
    const page = await newPage();
    await open(page);
    await append(page, 0, 0, 500);
    await append(page, 0, 1);
    await page.evaluate(() => window.harness.close());
    return page;
  }

  test('from a newer version is refused and left exactly as it was', async () => {
    const page = await filledAndClosed();
    await page.evaluate((at) => window.harness.overwrite(at, [0, 0, 0, 99]), VERSION_AT);
    const before = await page.evaluate(() => window.harness.fingerprint());

    expect(await open(page)).toBe('newer-database');
    expect(await page.evaluate(() => window.harness.fingerprint())).toBe(before);

    await page.evaluate((at) => window.harness.overwrite(at, [0, 0, 0, 1]), VERSION_AT);
    expect(await open(page)).toBe('ok');
    expect(await batches(page)).toEqual(['0/0', '0/1']);
  });

  test.each([
    ['its first bytes', 0],
    ['the page with the list of tables', 100],
    ['the tree of events', PAGE],
    ['the index of their ids', 2 * PAGE],
    ['the words of an event', 5 * PAGE - 100],
  ])('is called damaged, and kept, where noise stands in %s', async (_, offset) => {
    const page = await filledAndClosed();
    const noise = Array.from({ length: 64 }, (__, at) => (at * 37 + 11) % 251);
    await page.evaluate((args) => window.harness.overwrite(...args), [offset, noise] as const);
    const before = await page.evaluate(() => window.harness.fingerprint());

    expect(await open(page)).toBe('damaged');
    expect(await page.evaluate(() => window.harness.fingerprint())).toBe(before);
  });
});

describe('a full disk', () => {
  const ROOM = 400_000;

  test('is said, keeps what was acknowledged, and is over once there is room', async () => {
    const page = await newPage();
    await open(page);
    const session = await browser.newCDPSession(page);
    const setQuota = async (quota?: number): Promise<void> => {
      const origin = new URL(url).origin;
      await session.send(
        'Storage.overrideQuotaForOrigin',
        quota === undefined ? { origin } : { origin, quotaSize: quota },
      );
    };
    const { usage = 0 } = await page.evaluate(() => navigator.storage.estimate());
    await setQuota(usage + ROOM);

    const written: string[] = [];
    let said = 'ok';
    for (let batch = 0; said === 'ok' && batch < 1000; batch += 1) {
      said = await append(page, 0, batch, 3, 4000);
      if (said === 'ok') written.push(`0/${batch}`);
    }
    expect(said).toBe('full');
    expect(written.length).toBeGreaterThan(5);
    expect(await append(page, 8, 0, 3, 4000)).toBe('full');

    await page.reload();
    expect(await open(page)).toBe('ok');
    expect(await batches(page)).toEqual(written);

    await setQuota();
    expect(await append(page, 9, 0, 3, 4000)).toBe('ok');
    await page.reload();
    await open(page);
    expect(await batches(page)).toEqual([...written, '9/0']);
  });
});
