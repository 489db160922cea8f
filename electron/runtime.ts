import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What of a computer decides whether a desktop window can open on it. */
export interface Computer {
  readonly platform: NodeJS.Platform;
  /** The user's number; undefined where users have none. */
  readonly user: number | undefined;
  readonly env: NodeJS.ProcessEnv;
}

/** Why no desktop window opens on this computer, in plain words; null when nothing stands against it. */
export function hindrance({ platform, user, env }: Computer): string | null {
  if (platform === 'win32' || platform === 'darwin') return null;
  // Electron refuses root unless its sandbox is off, and the sandbox stays on.
  if (user === 0) return 'you are root, and Electron would have to run without its sandbox';
  if (!env['DISPLAY'] && !env['WAYLAND_DISPLAY']) return 'this computer has no display';
  return null;
}

/**
 * Electron's program file, if it is there. The npm package holds no runtime; its install script fetches one and writes the
 * program's path into a file. Asking the package itself would start the download.
 *
 * @param packageFolder the folder of the npm package `electron`
 */
export function findRuntime(packageFolder: string, env: NodeJS.ProcessEnv): string | null {
  const pathFile = join(packageFolder, 'path.txt');
  const path = existsSync(pathFile) ? readFileSync(pathFile, 'utf8').trim() : '';
  const elsewhere = env['ELECTRON_OVERRIDE_DIST_PATH'];
  const program = elsewhere ? join(elsewhere, path || 'electron') : path && join(packageFolder, 'dist', path);
  return program && existsSync(program) ? program : null;
}

/**
 * Fetches the runtime as `npx install-electron` does, without a word.
 *
 * @param limit how long it may take, in milliseconds
 * @returns why it could not be fetched, in plain words; null when the install script says it was
 */
export function fetchRuntime(packageFolder: string, limit: number): Promise<string | null> {
  return new Promise((resolve) => {
    const script = spawn(process.execPath, [join(packageFolder, 'install.js')], {
      stdio: 'ignore',
      timeout: limit,
      killSignal: 'SIGKILL',
    });
    script.once('error', () => resolve('Electron could not be downloaded'));
    script.once('exit', (code, signal) => {
      if (code === 0) resolve(null);
      else if (signal === 'SIGKILL')
        resolve('Electron was not downloaded in time (try "npx install-electron")');
      else resolve('Electron is not here and could not be downloaded');
    });
  });
}
