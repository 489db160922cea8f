import { join } from 'node:path';

import { build, preview } from 'vite';

const root = join(import.meta.dirname, '../..');
const outDir = join(root, 'dist/sound-page');

export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

/** Builds and serves the page with nothing but the loudspeaker on it, and the clips. */
export async function serveSoundPage(): Promise<ServedPage> {
  const page = {
    configFile: false,
    root: join(root, 'tests/browser/harness/sound'),
    base: './',
    publicDir: join(root, 'assets/public'),
    worker: { format: 'es' },
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true, target: 'es2022' },
    preview: { host: '127.0.0.1', port: 0 },
  } as const;
  await build(page);
  const server = await preview(page);
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('The server has no port.');
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
}
