import type { BareAnswer } from './bareCommit.ts';

/* The page's end of the rival worker in bareCommit.ts. */

const worker = new Worker(new URL('./bareCommit.ts', import.meta.url), { type: 'module' });
const answer = (): Promise<BareAnswer> =>
  new Promise((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<BareAnswer>) => resolve(data), { once: true });
    worker.addEventListener('error', () => reject(new Error('The bare worker broke.')), { once: true });
  });
const ready = answer();

/** What the bare commits stand on: locking mode, journal mode and synchronous. */
export async function bareFooting(): Promise<string> {
  return (await ready).footing;
}

/** Commits one row as long as a shot's. @returns the milliseconds it took inside its worker */
export async function bareCommit(): Promise<number> {
  const committed = answer();
  worker.postMessage(JSON.stringify({ id: crypto.randomUUID(), body: 'x'.repeat(220) }));
  return (await committed).took;
}
