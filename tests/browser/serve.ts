import { existsSync } from 'node:fs';
import { join } from 'node:path';

import { build, preview, type InlineConfig, type PreviewServer } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served. */
    readonly appUrl: string;
    /** Where the bare log is served, for tests of the log alone. */
    readonly harnessUrl: string;
  }
}

/** Resolves to 127.0.0.1 in a browser started with {@link INSECURE_ARGS}; browsers do not trust it. */
export const INSECURE_HOST = 'gym.test';
export const INSECURE_ARGS = [`--host-resolver-rules=MAP ${INSECURE_HOST} 127.0.0.1`];

const root = join(import.meta.dirname, '../..');

/** Serves the built app, and a page with nothing but the log on it, while the tests in the browser run. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(join(root, 'dist/renderer/index.html'))) {
    throw new Error('The app is not built: run "npm run build" before the tests in a browser.');
  }
  await build({
    ...base(join(import.meta.dirname, 'harness'), join(root, 'dist/harness')),
    logLevel: 'warn',
  });
  const servers = await Promise.all([
    preview(base(root, join(root, 'dist/renderer'))),
    preview(base(root, join(root, 'dist/harness'))),
  ]);
  const [app, harness] = servers.map(addressOf);
  if (!app || !harness) throw new Error('The pages are not served.');
  project.provide('appUrl', app);
  project.provide('harnessUrl', harness);
  return async () => {
    await Promise.all(servers.map((server) => server.close()));
  };
}

function base(folder: string, outDir: string): InlineConfig {
  return {
    configFile: false,
    root: folder,
    base: './',
    publicDir: false,
    worker: { format: 'es' },
    optimizeDeps: { exclude: ['@sqlite.org/sqlite-wasm'] },
    build: { outDir, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 900 },
    preview: { host: '127.0.0.1', port: 0, allowedHosts: [INSECURE_HOST] },
  };
}

function addressOf(server: PreviewServer): string {
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('The server has no port.');
  return `http://127.0.0.1:${address.port}/`;
}
