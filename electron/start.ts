/** `npm start`: builds the app and opens it, on the desktop where Electron runs, else for a browser. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

import { build, createBuilder } from 'vite';

import { runDesktop } from './desktop.ts';
import { fetchRuntime, findRuntime, hindrance } from './runtime.ts';
import { addressOf, endOnInterrupt, serveForBrowser } from './serve.ts';
import shellConfig from './vite.config.ts';

/** How long Electron's runtime, about 120 MB, may take to arrive. In milliseconds. */
const DOWNLOAD_LIMIT = 5 * 60_000;

const root = join(import.meta.dirname, '..');
const electron = dirname(createRequire(import.meta.url).resolve('electron/package.json'));

try {
  await start();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

async function start(): Promise<void> {
  console.log('Building Loud Gym. This takes a few seconds.');
  await build({ configFile: join(root, 'renderer/vite.config.ts'), logLevel: 'error' });
  const shell = await createBuilder({ ...shellConfig, configFile: false, logLevel: 'error' });
  await shell.buildApp();

  const reason = await openDesktop();
  if (reason === null) return;
  console.log(`No desktop window: ${reason}. Loud Gym is served for a browser instead.`);
  const server = await serveForBrowser(root);
  endOnInterrupt(server);
  console.log(`Open ${addressOf(server)} in a browser. Ctrl+C ends it.`);
}

/** Opens the desktop app and waits for its end; or says why it could not be opened. */
async function openDesktop(): Promise<string | null> {
  const { platform, env } = process;
  const stopped = hindrance({ platform, user: process.getuid?.(), env });
  if (stopped) return stopped;
  let program = findRuntime(electron, env);
  if (program === null) {
    console.log('Fetching Electron, about 120 MB, this one time.');
    const failed = await fetchRuntime(electron, DOWNLOAD_LIMIT);
    program = findRuntime(electron, env);
    if (failed || program === null) return failed ?? 'Electron was downloaded and is not where it should be';
  }
  const ending = await runDesktop(program, root);
  if (ending === 'crashed')
    throw new Error('Loud Gym ended with a fault. Every shot it showed as counted is kept.');
  return ending === 'refused' ? 'Electron could not start on this computer' : null;
}
