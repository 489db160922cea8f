import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

import { chromium, type BrowserContext } from 'playwright-core';

import { findBrowser } from './findBrowser.ts';

/** How Chromium is started for every test: no windows, no network of its own, sound without a first touch. */
const FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
];

export interface BrowserOptions {
  /** A folder that outlives the browser; without one the profile is fresh and is removed with it. */
  readonly profile?: string;
  /** More flags for Chromium. */
  readonly args?: readonly string[];
  /** Bigger than nothing where touch or a tablet's size is what the test is about. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly hasTouch?: boolean;
}

/** A browser, with a fresh profile unless one is given. Closing the context ends it and removes a fresh profile. */
export async function openBrowser(options: BrowserOptions = {}): Promise<BrowserContext> {
  const profile = options.profile ?? (await freshProfile());
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: findBrowser(),
    headless: true,
    args: [...FLAGS, ...(options.args ?? [])],
    viewport: options.viewport ?? { width: 1180, height: 820 },
    hasTouch: options.hasTouch ?? false,
  });
  if (options.profile !== undefined) return context;
  const close = context.close.bind(context);
  context.close = async (reason) => {
    await close(reason);
    await removeProfile(profile);
  };
  return context;
}

/** A browser in a process of our own, so that it can be killed. */
export interface KillableBrowser {
  readonly context: BrowserContext;
  /** Kills every process of it by signal 9: nothing is flushed, nothing is said goodbye to. */
  kill(): Promise<void>;
}

/** Starts a browser on a profile that outlives it. */
export async function startKillable(profile: string, args: readonly string[] = []): Promise<KillableBrowser> {
  const portFile = join(profile, 'DevToolsActivePort');
  await rm(portFile, { force: true });
  const browser = spawn(
    findBrowser(),
    [...FLAGS, ...args, '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'],
    // A process group of its own: the signal reaches its children, and nobody else's.
    { detached: process.platform !== 'win32', stdio: 'ignore' },
  );
  const abandon = (): void => killTree(browser);
  process.once('exit', abandon);
  const gone = new Promise<void>((resolve) => browser.once('exit', () => resolve()));
  const kill = async (): Promise<void> => {
    killTree(browser);
    await gone;
    process.off('exit', abandon);
  };
  try {
    const connected = await chromium.connectOverCDP(await addressIn(portFile));
    const [context] = connected.contexts();
    if (!context) throw new Error('The browser has no window to work in.');
    return { context, kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

export function freshProfile(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'loud-gym-profile-'));
}

/** Removes a profile; the browser may still be writing its last lines there. */
export async function removeProfile(profile: string): Promise<void> {
  await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
}

function killTree({ pid }: ChildProcess): void {
  if (pid === undefined) return;
  if (process.platform === 'win32') {
    spawnSync('taskkill', ['/pid', String(pid), '/t', '/f']);
    return;
  }
  try {
    process.kill(-pid, 'SIGKILL');
  } catch (error) {
    // Gone already, and all its children with it.
    if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
  }
}

/** Chromium writes the port it listens on into its profile. */
async function addressIn(portFile: string): Promise<string> {
  const deadline = Date.now() + 20_000;
  while (Date.now() < deadline) {
    if (existsSync(portFile)) {
      const [port, path] = (await readFile(portFile, 'utf8')).trim().split('\n');
      if (port && path) return `ws://127.0.0.1:${port}${path}`;
    }
    await sleep(10);
  }
  throw new Error('The browser did not start within 20 seconds.');
}
