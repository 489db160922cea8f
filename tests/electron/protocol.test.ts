import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { APP_SCHEME, serveFile } from '../../electron/protocol.ts';

const SECRET = 'not for the page';
const TUNE = Uint8Array.from({ length: 1000 }, (_, index) => index % 251);

let outside: string;
let folder: string;
beforeAll(async () => {
  outside = await mkdtemp(join(tmpdir(), 'loud-gym-files-'));
  folder = join(outside, 'page');
  await mkdir(join(folder, 'sound'), { recursive: true });
  await mkdir(join(outside, 'page-too'));
  await writeFile(join(folder, 'index.html'), '<title>Loud Gym</title>');
  await writeFile(join(folder, 'a wide shot.svg'), '<svg/>');
  await writeFile(join(folder, 'engine.wasm'), 'wasm');
  await writeFile(join(folder, 'notes.doc'), 'no such kind');
  await writeFile(join(folder, 'sound/crowd.webm'), TUNE);
  await writeFile(join(folder, 'sound/crowd.m4a'), TUNE);
  await writeFile(join(outside, 'secret.txt'), SECRET);
  await writeFile(join(outside, 'page-too/secret.txt'), SECRET);
});
afterAll(() => rm(outside, { recursive: true, force: true }));

const get = (path: string, headers: Record<string, string> = {}): Promise<Response> =>
  serveFile(folder, new Request(`app://bundle${path}`, { headers }));

describe('the app’s own files', () => {
  test('come from a standard, secure scheme that can be fetched and streamed', () => {
    expect(APP_SCHEME).toEqual({
      scheme: 'app',
      privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true },
    });
  });

  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/index.html', 'text/html; charset=utf-8'],
    ['/index.html?again=1#top', 'text/html; charset=utf-8'],
    ['/a%20wide%20shot.svg', 'image/svg+xml'],
    ['/engine.wasm', 'application/wasm'],
    ['/sound/crowd.webm', 'audio/webm'],
    ['/sound/crowd.m4a', 'audio/mp4'],
  ])('%s is there, as %s', async (path, type) => {
    const response = await get(path);
    expect(response.status).toBe(200);
    expect(response.headers.get('Content-Type')).toBe(type);
    expect(response.headers.get('X-Content-Type-Options')).toBe('nosniff');
    const body = await response.arrayBuffer();
    expect(response.headers.get('Content-Length')).toBe(String(body.byteLength));
  });

  test.each([
    '/missing.js',
    '/sound',
    '/sound/',
    '/index.html/',
    '/index.html/x.js',
    '/notes.doc',
    '/%zz.js',
  ])('%s is not there', async (path) => {
    expect((await get(path)).status).toBe(404);
  });

  test.each(['/', '/engine.wasm', '/missing.js'])('%s carries the content security policy', async (path) => {
    expect((await get(path)).headers.get('Content-Security-Policy')).toContain("default-src 'none'");
  });

  test('are not given to another host or scheme, and cannot be written', async () => {
    expect((await serveFile(folder, new Request('app://other/index.html'))).status).toBe(404);
    expect((await serveFile(folder, new Request('https://bundle/index.html'))).status).toBe(404);
    const put = await serveFile(folder, new Request('app://bundle/index.html', { method: 'PUT', body: 'x' }));
    expect(put.status).toBe(405);
    expect(put.headers.get('Allow')).toBe('GET, HEAD');
  });

  test('answer HEAD with the headers alone', async () => {
    const response = await serveFile(folder, new Request('app://bundle/engine.wasm', { method: 'HEAD' }));
    expect(response.status).toBe(200);
    expect(response.headers.get('Content-Length')).toBe('4');
    expect(await response.text()).toBe('');
  });
});

describe('a part of a file', () => {
  test.each([
    ['bytes=0-', 0, 999],
    ['bytes=100-199', 100, 199],
    ['bytes=999-5000', 999, 999],
    ['bytes=-10', 990, 999],
  ])('%s gives bytes %i to %i', async (range, first, last) => {
    const response = await get('/sound/crowd.webm', { Range: range });
    expect(response.status).toBe(206);
    expect(response.headers.get('Content-Range')).toBe(`bytes ${first}-${last}/1000`);
    expect(response.headers.get('Content-Length')).toBe(String(last - first + 1));
    expect(new Uint8Array(await response.arrayBuffer())).toEqual(TUNE.slice(first, last + 1));
  });

  test('beyond the end is refused with the length', async () => {
    const response = await get('/sound/crowd.webm', { Range: 'bytes=1000-' });
    expect(response.status).toBe(416);
    expect(response.headers.get('Content-Range')).toBe('bytes */1000');
  });

  test.each(['bytes=0-1,5-6', 'lines=1-2', 'bytes=9-2'])('%s gives the whole file', async (range) => {
    expect((await get('/sound/crowd.webm', { Range: range })).status).toBe(200);
  });
});

describe('nothing outside the folder is read', () => {
  test.each([
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/sound/..%2f..%2fsecret.txt',
    '/..%2fpage-too%2fsecret.txt',
    '/..%5csecret.txt',
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '//secret.txt',
    '/index.html%00.txt',
  ])('%s', async (path) => {
    expect((await get(path)).status).toBe(404);
  });

  test('by the whole path of a file either', async () => {
    expect((await get(`/${encodeURIComponent(join(outside, 'secret.txt'))}`)).status).toBe(404);
  });

  test('whatever the path is made of', async () => {
    const piece = fc.constantFrom(
      '..',
      '.',
      '%2e%2e',
      '%2f',
      '/',
      '%5c',
      '\\',
      'sound',
      'page-too',
      'secret.txt',
      '%252e',
      '%00',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 10 }), async (pieces) => {
        const response = await get(`/${pieces.join('')}`);
        expect(await response.text()).not.toBe(SECRET);
      }),
      { numRuns: 500 },
    );
  });
});
