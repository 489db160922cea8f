import { spawn } from 'node:child_process';

/** How the desktop app ended: `refused` when it could not even start. */
export type Ending = 'closed' | 'crashed' | 'refused';

/**
 * Runs the built desktop app and waits until its window is closed.
 *
 * @param program Electron's program file
 * @param folder the folder of package.json, whose `main` Electron runs
 * @param opening a program that fails sooner than this never had its window open; in milliseconds
 */
export function runDesktop(program: string, folder: string, opening = 10_000): Promise<Ending> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env; // some editors' terminals set it, and no window would open
  const started = performance.now();
  const child = spawn(program, ['.'], { cwd: folder, env, stdio: 'inherit' });
  let told = false;
  const end = (): void => {
    told = true;
    child.kill();
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
  return new Promise<Ending>((resolve) => {
    child.once('error', () => resolve('refused'));
    child.once('exit', (code) => {
      if (code === 0 || told) resolve('closed');
      else resolve(performance.now() - started < opening ? 'refused' : 'crashed');
    });
  }).finally(() => {
    process.off('SIGINT', end);
    process.off('SIGTERM', end);
  });
}
