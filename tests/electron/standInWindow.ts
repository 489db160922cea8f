import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';

import type { BrowserWindowConstructorOptions } from 'electron';
import type { BrowserContext, Page, Request as PageRequest, Route } from 'playwright-core';

export type FileHandler = (request: Request) => Promise<Response>;
export type Listener = (event: object, ...args: readonly unknown[]) => unknown;

/** What the windows of one run share. */
export interface World {
  readonly context: BrowserContext;
  /** Who serves the files of a scheme. */
  readonly files: Map<string, FileHandler>;
  /** Who answers on a channel. */
  readonly channels: Map<string, Listener>;
  /** Every address outside the app that was asked for, whether the shell let it or not. */
  readonly foreign: string[];
  /** Told when a window's page has been loaded. */
  readonly opened: (page: Page, options: BrowserWindowConstructorOptions) => void;
}

const APP = 'app://bundle';
/** Chromium knows no scheme of ours; this host has an origin of its own, and counts as secure. */
const WEB = 'https://bundle.app.localhost';

/** Stands in for Electron's window: a page in Chromium, whose every request goes through the shell. */
export class StandInWindow extends EventEmitter {
  readonly webContents = Object.assign(new EventEmitter(), { setWindowOpenHandler: () => undefined });
  readonly #world: World;
  readonly #options: BrowserWindowConstructorOptions;

  constructor(world: World, options: BrowserWindowConstructorOptions) {
    super();
    this.#world = world;
    this.#options = options;
  }

  show(): void {}

  async loadURL(url: string): Promise<void> {
    const { context, channels, opened } = this.#world;
    const page = await context.newPage();
    await page.route('**/*', (route) => this.#answer(route));
    await page.exposeBinding('standInInvoke', ({ frame }, channel: string, ...args: unknown[]) => {
      const senderFrame = { url: toApp(frame.url()), parent: frame.parentFrame() };
      return channels.get(channel)?.({ senderFrame }, ...args);
    });
    await page.addInitScript(preloadScript(this.#options.webPreferences?.preload ?? ''));
    await page.goto(url.replace(APP, WEB));
    this.emit('ready-to-show');
    opened(page, this.#options);
  }

  async #answer(route: Route): Promise<void> {
    const request = route.request();
    const url = toApp(request.url());
    const handler = this.#world.files.get(new URL(url).protocol.slice(0, -1));
    if (!handler) this.#world.foreign.push(url);
    if (!this.#mayGo(request, url)) return route.abort('aborted');
    // The rest of the world answers whoever gets that far: nothing but the shell keeps the page at home.
    if (!handler)
      return route.fulfill({ headers: { 'Access-Control-Allow-Origin': '*' }, body: 'Elsewhere' });
    const { method, headers } = { method: request.method(), headers: await request.allHeaders() };
    const response = await handler(new Request(url, { method, headers }));
    return route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    });
  }

  /** Asks the shell, as Electron does, before a page is loaded in place of the one that is there. */
  #mayGo(request: PageRequest, url: string): boolean {
    if (!request.isNavigationRequest()) return true;
    const isMainFrame = request.frame().parentFrame() === null;
    let stopped = false;
    const event = { url, isMainFrame, isSameDocument: false, preventDefault: () => (stopped = true) };
    this.webContents.emit('will-frame-navigate', event);
    if (!stopped) this.webContents.emit('did-start-navigation', event);
    return !stopped;
  }
}

function toApp(url: string): string {
  return url.startsWith(`${WEB}/`) ? url.replace(WEB, APP) : url;
}

/** The built preload script, with no more around it than a sandboxed one is given. */
function preloadScript(file: string): string {
  return `(() => {
    const require = (name) => {
      if (name !== 'electron') throw new Error('A sandboxed preload script cannot load ' + name);
      return {
        contextBridge: {
          exposeInMainWorld: (key, value) => Object.defineProperty(window, key, { value: Object.freeze(value) }),
        },
        ipcRenderer: { invoke: (channel, ...args) => window.standInInvoke(channel, ...args) },
      };
    };
    const process = { platform: ${JSON.stringify(process.platform)} };
    ${readFileSync(file, 'utf8')}
  })();`;
}
