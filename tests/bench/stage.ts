import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import type { BrowserContext, Page } from 'playwright-core';
import { build } from 'vite';

import { addressOf, serveForBrowser } from '../../electron/serve.ts';

const root = join(import.meta.dirname, '../..');
/** A folder that looks to the app's server like the app's own, so that other builds are not in the way. */
const folder = join(root, 'dist/bench');
const outDir = join(folder, 'dist/renderer');

const EMPTY_PAGE = `<!doctype html>
<html lang="en">
  <head><meta charset="utf-8" /><title>Empty</title></head>
  <body><p>Nothing.</p></body>
</html>
`;

/** The app as `npm start` builds and serves it, with the rivals beside it. */
export interface Stage {
  readonly appUrl: string;
  /** A page without a script, a style or a font. */
  readonly emptyUrl: string;
  /** tapProbe.ts and storePage.ts, as scripts of a page. */
  readonly tapProbeUrl: string;
  readonly storePageUrl: string;
  /** The load probe, as a file. */
  readonly loadProbe: string;
  /** Where the served files are. */
  readonly files: string;
  /** Calls back with the path of every file that is asked for; returns the way to stop. */
  onRequest(asked: (path: string) => void): () => void;
  close(): Promise<void>;
}

export async function openStage(): Promise<Stage> {
  await build({
    configFile: join(root, 'renderer/vite.config.ts'),
    logLevel: 'error',
    build: { outDir, emptyOutDir: true },
  });
  await build({
    configFile: false,
    root: import.meta.dirname,
    base: './',
    publicDir: false,
    logLevel: 'error',
    build: {
      outDir: join(outDir, 'probes'),
      emptyOutDir: true,
      target: 'es2022',
      rolldownOptions: {
        input: ['tapProbe', 'storePage', 'loadProbe'].map((name) => join(import.meta.dirname, `${name}.ts`)),
        output: { entryFileNames: '[name].js' },
      },
    },
    worker: { format: 'es' },
  });
  await writeFile(join(outDir, 'empty.html'), EMPTY_PAGE);
  const server = await serveForBrowser(folder, 0);
  const appUrl = addressOf(server);
  return {
    appUrl,
    emptyUrl: `${appUrl}empty.html`,
    tapProbeUrl: `${appUrl}probes/tapProbe.js`,
    storePageUrl: `${appUrl}probes/storePage.js`,
    loadProbe: join(outDir, 'probes/loadProbe.js'),
    files: outDir,
    onRequest: (asked) => {
      const listen = (request: { url?: string }): void => asked(new URL(request.url ?? '/', appUrl).pathname);
      server.httpServer.on('request', listen);
      return () => server.httpServer.off('request', listen);
    },
    close: () => server.close(),
  };
}

export async function pageOf(browser: BrowserContext): Promise<Page> {
  return browser.pages()[0] ?? (await browser.newPage());
}

/** From an empty profile to the bench of the invented season's first shooter. */
export async function loadSeason(page: Page, appUrl: string): Promise<void> {
  await page.goto(appUrl);
  await page.getByRole('button', { name: 'Go on without sound' }).click();
  await page.getByRole('button', { name: 'Load the demo season' }).click();
  await page.locator('.bench').waitFor();
}
