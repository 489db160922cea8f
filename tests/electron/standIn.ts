import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { compileFunction } from 'node:vm';

import type { BrowserWindowConstructorOptions } from 'electron';
import type { BrowserContext, Page } from 'playwright-core';

import { StandInWindow, type FileHandler, type Listener, type World } from './standInWindow.ts';

/** What the shell did, as far as a test can look into it. */
export interface Shell {
  readonly page: Page;
  readonly options: BrowserWindowConstructorOptions;
  /** The kinds of the power save blockers that are held, by their numbers. */
  readonly held: ReadonlyMap<number, string>;
  /** Every address outside the app that was asked for, whether the shell let it or not. */
  readonly foreign: readonly string[];
}

/**
 * Runs the built main and preload scripts, unchanged, on a stand-in of the `electron` module that drives Chromium.
 *
 * Real here: the shell's own code, the engine, the files, their headers, the page. Not real: the scheme (the page is at an
 * https address), the wall between preload script and page, the sandbox, and Electron's own events and messages.
 *
 * @param root the folder of package.json, with the built app in dist/
 * @throws Error with the words of the error box that the shell would show
 */
export function runShell(root: string, context: BrowserContext): Promise<Shell> {
  return new Promise((resolve, reject) => {
    const held = new Map<number, string>();
    const foreign: string[] = [];
    const world: World = {
      context,
      files: new Map<string, FileHandler>(),
      channels: new Map<string, Listener>(),
      foreign,
      opened: (page, options) => resolve({ page, options, held, foreign }),
    };
    runMain(root, moduleFor(root, world, held, reject));
  });
}

/** As much of the `electron` module as a main script of ours uses; whatever else it reached for would be undefined. */
function moduleFor(
  root: string,
  world: World,
  held: Map<number, string>,
  fail: (error: Error) => void,
): object {
  const app = Object.assign(new EventEmitter(), {
    enableSandbox: nothing,
    requestSingleInstanceLock: () => true,
    whenReady: () => Promise.resolve(),
    getAppPath: () => root,
    exit: nothing,
    quit: nothing,
  });
  let blockers = 0;
  return {
    app,
    BrowserWindow: class extends StandInWindow {
      constructor(options: BrowserWindowConstructorOptions) {
        super(world, options);
        app.emit('web-contents-created', {}, this.webContents);
      }
    },
    dialog: { showErrorBox: (title: string, words: string) => fail(new Error(`${title}. ${words}`)) },
    ipcMain: { handle: (channel: string, listener: Listener) => world.channels.set(channel, listener) },
    powerSaveBlocker: {
      start: (kind: string) => {
        blockers += 1;
        held.set(blockers, kind);
        return blockers;
      },
      stop: (id: number) => held.delete(id),
    },
    protocol: {
      registerSchemesAsPrivileged: nothing,
      handle: (scheme: string, handler: FileHandler) => world.files.set(scheme, handler),
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: nothing,
        setPermissionCheckHandler: nothing,
        setDevicePermissionHandler: nothing,
      },
    },
  };
}

/** Runs the script that package.json names as `main`; the real `electron` package would download its runtime. */
function runMain(root: string, electron: object): void {
  const require = createRequire(join(root, 'package.json'));
  const { main }: { main: string } = require('./package.json');
  const load = (name: string): unknown => (name === 'electron' ? electron : require(name));
  const script = compileFunction(readFileSync(join(root, main), 'utf8'), ['require', 'module', 'exports'], {
    filename: join(root, main),
  });
  const module = { exports: {} };
  script(load, module, module.exports);
}

function nothing(): void {}
