import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, request, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';

import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { SAFETY_HEADERS } from '../../electron/policy.ts';
import { HOST, PORT, serveForBrowser } from '../../electron/serve.ts';

let root: string;
let server: PreviewServer;
let port: number;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'loud-gym-serve-'));
  await mkdir(join(root, 'dist/renderer'), { recursive: true });
  await writeFile(join(root, 'dist/renderer/index.html'), '<title>Loud Gym</title>');
  await writeFile(join(root, 'dist/renderer/engine.wasm'), 'wasm');
  server = await serveForBrowser(root, 0);
  ({ port } = addressOf(server.httpServer));
});
afterAll(async () => {
  await server.close();
  await rm(root, { recursive: true, force: true });
});

function addressOf(listening: Pick<Server, 'address'>): AddressInfo {
  const address = listening.address();
  if (!address || typeof address === 'string') throw new Error('It listens on no port.');
  return address;
}

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
    expect(addressOf(server.httpServer).address).toBe('127.0.0.1');
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
    const other = createServer().listen(0, HOST);
    await once(other, 'listening');
    const taken = addressOf(other).port;
    try {
      await expect(serveForBrowser(root, taken)).rejects.toThrow(
        new RegExp(`^Port ${taken} is taken\\..*http://127\\.0\\.0\\.1:${taken}/.*"npm start" again`),
      );
    } finally {
      other.close();
    }
  });
});
