import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { SAFETY_HEADERS } from '../../electron/policy.ts';
import { addressOf, HOST, PORT, serveForBrowser } from '../../electron/serve.ts';

/** What `npm start` does once the app is built, at any free port. */
const PROGRAM = `
  const { addressOf, endOnInterrupt, serveForBrowser } = await import('./electron/serve.ts');
  const server = await serveForBrowser(process.argv[1], 0);
  endOnInterrupt(server);
  console.log(addressOf(server));
`;

let root: string;
let server: PreviewServer;
let port: number;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'loud-gym-serve-'));
  await mkdir(join(root, 'dist/renderer'), { recursive: true });
  await writeFile(join(root, 'dist/renderer/index.html'), '<title>Loud Gym</title>');
  await writeFile(join(root, 'dist/renderer/engine.wasm'), 'wasm');
  server = await serveForBrowser(root, 0);
  port = Number(new URL(addressOf(server)).port);
});
afterAll(async () => {
  await server.close();
  await rm(root, { recursive: true, force: true });
});

function get(path: string, host = `${HOST}:${port}`): Promise<IncomingMessage> {
  return new Promise((resolve, reject) => {
    request({ host: HOST, port, path, headers: { host } }, (answer) => resolve(answer.resume()))
      .once('error', reject)
      .end();
  });
}

describe('the app served for a browser', () => {
  test('has one fixed address on this computer alone', () => {
    expect([HOST, PORT]).toEqual(['127.0.0.1', 4173]);
    expect(addressOf(server)).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  });

  test.each(['/', '/engine.wasm'])(
    '%s comes with the same safety headers as on the desktop',
    async (path) => {
      const { statusCode, headers } = await get(path);
      expect(statusCode).toBe(200);
      for (const [name, value] of Object.entries(SAFETY_HEADERS)) {
        expect(headers[name.toLowerCase()]).toBe(value);
      }
    },
  );

  test('sends localhost on to the one address, where the log is', async () => {
    const { statusCode, headers } = await get('/?round=1', `localhost:${port}`);
    expect(statusCode).toBe(307);
    expect(headers.location).toBe(`http://127.0.0.1:${port}/?round=1`);
  });

  test('is refused to a page that calls it by a strange name', async () => {
    expect((await get('/', 'other.example')).statusCode).toBe(403);
  });

  test('says what to do when the port is taken', async () => {
    await expect(serveForBrowser(root, port)).rejects.toThrow(
      new RegExp(`^Port ${port} is taken\\..*http://127\\.0\\.0\\.1:${port}/.*"npm start" again`),
    );
  });

  test('ends well on Ctrl+C, also with a page still connected', async () => {
    const program = spawn(
      process.execPath,
      ['--import', 'tsx', '--input-type=module', '--eval', PROGRAM, root],
      {
        cwd: join(import.meta.dirname, '../..'),
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    const [said]: unknown[] = await once(program.stdout, 'data');
    const page = connect(Number(new URL(String(said).trim()).port), HOST);
    await once(page, 'connect');
    program.kill('SIGINT');
    expect(await once(program, 'exit')).toEqual([0, null]);
    page.destroy();
  });
});
