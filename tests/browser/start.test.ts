import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { text } from 'node:stream/consumers';

import { afterEach, beforeEach, expect, test } from 'vitest';

import { HOST, PORT } from '../../electron/serve.ts';

const root = join(import.meta.dirname, '../..');

/** Where a runtime that cannot start is put, by the names it has on the three systems. */
const PROGRAMS = ['electron', 'electron.exe', 'Electron.app/Contents/MacOS/Electron'];

let runtime: string;
beforeEach(async () => {
  runtime = await mkdtemp(join(tmpdir(), 'loud-gym-runtime-'));
  await Promise.all(
    PROGRAMS.map(async (name) => {
      await mkdir(dirname(join(runtime, name)), { recursive: true });
      await writeFile(join(runtime, name), '');
    }),
  );
});
afterEach(() => rm(runtime, { recursive: true, force: true }));

test('npm start builds, says in one line why no window opens, and what to do about a taken port', async () => {
  // Taken by this test, or by another program: either way it is taken.
  const other = createServer().once('error', () => undefined);
  other.listen(PORT, HOST);
  try {
    const start = spawn(process.execPath, ['--import', 'tsx', 'electron/start.ts'], {
      cwd: root,
      env: { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: runtime },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const [said, complained, [code]] = await Promise.all([
      text(start.stdout),
      text(start.stderr),
      once(start, 'exit'),
    ]);
    const lines = said.trim().split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^Building Loud Gym/);
    expect(lines[1]).toMatch(/^No desktop window: .+\. Loud Gym is served for a browser instead\.$/);
    expect(complained.trim().split('\n').at(-1)).toMatch(/^Port 4173 is taken\. /);
    expect(code).toBe(1);
  } finally {
    other.close();
  }
});
