import { readFile } from 'node:fs/promises';
import { isAbsolute, join, relative } from 'node:path';

import type { CustomScheme } from 'electron';

import { isOwn, SCHEME } from './address.ts';
import { contentTypeOf } from './contentTypes.ts';
import { SAFETY_HEADERS } from './policy.ts';
import { byteRange } from './range.ts';

/** Standard and secure, so that the page has an origin, and with it storage, workers and the audio clock. */
export const APP_SCHEME: CustomScheme = {
  scheme: SCHEME,
  privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true },
};

/**
 * Answers a request for one of the app's own files.
 *
 * @param folder the built page; nothing outside it is ever read
 * @returns 200, or 206 for a part; 404 for a foreign host, a path out of the folder, an unknown kind or a missing file;
 *   405 for anything but GET and HEAD; 416 for a part beyond the end
 */
export async function serveFile(folder: string, request: Request): Promise<Response> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return refusal(405, 'Files can only be read.', { Allow: 'GET, HEAD' });
  }
  const file = isOwn(request.url) ? fileFor(folder, new URL(request.url).pathname) : null;
  const type = file === null ? null : contentTypeOf(file);
  // Whole: the files are small, and reading a part from inside the packaged archive would copy the whole file out first.
  const bytes = file === null || type === null ? null : await bytesOf(file);
  if (bytes === null || type === null) return refusal(404, 'There is no such file.');

  const range = byteRange(request.headers.get('Range'), bytes.length);
  if (range === 'unsatisfiable') {
    return refusal(416, 'The file ends before that.', { 'Content-Range': `bytes */${bytes.length}` });
  }
  const { start, end } = range ?? { start: 0, end: bytes.length };
  const headers: Record<string, string> = {
    ...SAFETY_HEADERS,
    'Content-Type': type,
    'Content-Length': String(end - start),
    'Accept-Ranges': 'bytes',
    'Cache-Control': 'no-cache',
  };
  if (range) headers['Content-Range'] = `bytes ${start}-${end - 1}/${bytes.length}`;
  const body = request.method === 'HEAD' ? null : bytes.subarray(start, end);
  return new Response(body, { status: range ? 206 : 200, headers });
}

/** The file a path stands for; null when it lies outside the folder or is no path at all. */
function fileFor(folder: string, path: string): string | null {
  let name: string;
  try {
    name = decodeURIComponent(path);
  } catch {
    return null;
  }
  if (name.includes('\0')) return null;
  const file = join(folder, name === '/' ? 'index.html' : name);
  const inside = relative(folder, file);
  // On Windows a backslash is a separator, and another drive's path is absolute.
  return inside === '' || inside.startsWith('..') || isAbsolute(inside) ? null : file;
}

async function bytesOf(file: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return await readFile(file);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code === 'ENOENT' || code === 'EISDIR' || code === 'ENOTDIR') return null;
    throw error;
  }
}

function refusal(status: number, words: string, headers: Record<string, string> = {}): Response {
  return new Response(words, {
    status,
    headers: { ...SAFETY_HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...headers },
  });
}
