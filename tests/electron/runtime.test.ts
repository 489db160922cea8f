import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import { runDesktop } from '../../electron/desktop.ts';
import { fetchRuntime, findRuntime, hindrance } from '../../electron/runtime.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loud-gym-runtime-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const write = (file: string, code: string): Promise<void> => writeFile(join(folder, file), code);

describe('why no desktop window opens', () => {
  test('on Linux: as root, and without a display', () => {
    const screen = { DISPLAY: ':0' };
    expect(hindrance({ platform: 'linux', user: 0, env: screen })).toMatch(/root.*sandbox/);
    expect(hindrance({ platform: 'linux', user: 1000, env: {} })).toMatch(/no display/);
    expect(hindrance({ platform: 'linux', user: 1000, env: screen })).toBeNull();
    expect(hindrance({ platform: 'linux', user: 1000, env: { WAYLAND_DISPLAY: 'wayland-0' } })).toBeNull();
  });

  test('elsewhere nothing stands against it', () => {
    expect(hindrance({ platform: 'win32', user: undefined, env: {} })).toBeNull();
    expect(hindrance({ platform: 'darwin', user: 0, env: {} })).toBeNull();
  });
});

describe('Electron’s program', () => {
  test('is not there in a fresh package', () => {
    expect(findRuntime(folder, {})).toBeNull();
  });

  test('is not there when the path was written and the program is gone', async () => {
    await writeFile(join(folder, 'path.txt'), 'electron');
    expect(findRuntime(folder, {})).toBeNull();
  });

  test('is where the path file says', async () => {
    const path = 'Electron.app/Contents/MacOS/Electron';
    await mkdir(join(folder, 'dist/Electron.app/Contents/MacOS'), { recursive: true });
    await writeFile(join(folder, 'dist', path), '');
    await writeFile(join(folder, 'path.txt'), path);
    expect(findRuntime(folder, {})).toBe(join(folder, 'dist', path));
  });

  test('may be elsewhere', async () => {
    await mkdir(join(folder, 'own'));
    await writeFile(join(folder, 'own/electron'), '');
    expect(findRuntime(folder, { ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'own') })).toBe(
      join(folder, 'own/electron'),
    );
    expect(findRuntime(folder, { ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'none') })).toBeNull();
  });
});

describe('fetching it', () => {
  test('is done when the install script ends well', async () => {
    await write('install.js', 'require("node:fs").writeFileSync(__dirname + "/came", "")');
    expect(await fetchRuntime(folder, 20_000)).toBeNull();
  });

  test('says so when it fails, and when the script is missing', async () => {
    expect(await fetchRuntime(folder, 20_000)).toMatch(/could not be downloaded/);
    await write('install.js', 'console.error("fetch failed"); process.exit(1)');
    expect(await fetchRuntime(folder, 20_000)).toMatch(/could not be downloaded/);
  });

  test('is given up after a while', async () => {
    await write('install.js', 'setInterval(() => {}, 1000)');
    expect(await fetchRuntime(folder, 300)).toMatch(/not downloaded in time/);
  });
});

// Node stands in for Electron: it, too, runs the folder it is given.
describe('the desktop app', () => {
  test('was closed when it ends well', async () => {
    await write('index.js', 'process.exit(0)');
    expect(await runDesktop(process.execPath, folder)).toBe('closed');
  });

  test('could not start when it fails at once, or is no program', async () => {
    await write('index.js', 'process.exit(127)');
    expect(await runDesktop(process.execPath, folder)).toBe('refused');
    expect(await runDesktop(join(folder, 'no-such-program'), folder)).toBe('refused');
  });

  test('crashed when it fails later', async () => {
    await write('index.js', 'process.exit(127)');
    expect(await runDesktop(process.execPath, folder, 0)).toBe('crashed');
  });

  test('is not turned into a plain Node by the terminal it starts from', async () => {
    await write('index.js', 'process.exit("ELECTRON_RUN_AS_NODE" in process.env ? 1 : 0)');
    process.env['ELECTRON_RUN_AS_NODE'] = '1';
    try {
      expect(await runDesktop(process.execPath, folder)).toBe('closed');
    } finally {
      delete process.env['ELECTRON_RUN_AS_NODE'];
    }
  });
});
