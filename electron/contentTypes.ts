import { extname } from 'node:path';

/** Every kind of file the build makes; a file of any other kind is not served. */
const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.m4a': 'audio/mp4',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webm': 'audio/webm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** The content type of a file by the end of its name; null when the app has no such files. */
export function contentTypeOf(file: string): string | null {
  return TYPES[extname(file).toLowerCase()] ?? null;
}
