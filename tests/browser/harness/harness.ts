import { uuidV7 } from '../../../renderer/basics/ids.ts';
import type { LogEvent, StoredEvent } from '../../../renderer/log/envelope.ts';
import { StorageError, type Footing } from '../../../renderer/storage/messages.ts';
import { BROWSER, OpfsLog, type LogHost } from '../../../renderer/storage/opfsLog.ts';
import { fingerprint, overwrite } from './files.ts';

/* A page with nothing on it but the log, for tests that look at the log alone. All answers are plain data. */

/** What a harness event says: the batch it was appended in, its place in it, and how many there were. */
export interface Mark {
  readonly run: number;
  readonly batch: number;
  readonly place: number;
  readonly of: number;
}

const WORKERS = {
  usual: BROWSER.startWorker,
  oldBrowser: () => new Worker(new URL('./oldBrowser.ts', import.meta.url), { type: 'module' }),
  fragile: () => new Worker(new URL('./fragile.ts', import.meta.url), { type: 'module' }),
};

let worker: Worker | null = null;
let log = newLog('usual');
let stored: readonly StoredEvent[] = [];
const lost: string[] = [];

function newLog(kind: keyof typeof WORKERS): OpfsLog {
  const host: LogHost = {
    ...BROWSER,
    startWorker: () => {
      worker = WORKERS[kind]();
      return worker;
    },
  };
  const fresh = new OpfsLog(host);
  fresh.onLost((error) => lost.push(failureOf(error)));
  return fresh;
}

/** `ok`, or the name of the failure. */
async function outcome(work: Promise<unknown>): Promise<string> {
  try {
    await work;
    return 'ok';
  } catch (error) {
    return failureOf(error);
  }
}

async function readLog(takeOver: boolean): Promise<void> {
  stored = await log.open(takeOver);
}

function failureOf(error: unknown): string {
  return error instanceof StorageError ? error.failure : `not a StorageError: ${String(error)}`;
}

function batchOf(run: number, batch: number, of: number, padding = 0): LogEvent[] {
  return Array.from({ length: of }, (_, place) => {
    const at = Date.now();
    const id = uuidV7(at, crypto.getRandomValues(new Uint8Array(16)));
    const body = { run, batch, place, of, padding: ' '.repeat(padding) };
    return { id, at, zone: 0, device: 'harness', type: 'HarnessShot', v: 1, body } as unknown as LogEvent;
  });
}

const harness = {
  /** Starts over with another kind of worker. */
  async use(kind: keyof typeof WORKERS): Promise<void> {
    await log.close();
    log = newLog(kind);
  },
  open: (takeOver = false): Promise<string> => outcome(readLog(takeOver)),
  close: (): Promise<void> => log.close(),
  footing: (): Footing | null => log.footing,
  lost: (): readonly string[] => lost,
  /** What stood in the log when it was opened. */
  marks: (): Mark[] => stored.map((event) => event.body as Mark),
  /** Appends one batch. */
  append: (run: number, batch: number, of: number, padding = 0): Promise<string> =>
    outcome(log.append(batchOf(run, batch, of, padding))),
  /** Appends batches of 1, 2 or 3 without end, as fast as the log takes them, and tells `acknowledged` of each. */
  async play(run: number): Promise<string> {
    for (let batch = 0; ; batch += 1) {
      const said = await harness.append(run, batch, 1 + (batch % 3));
      if (said !== 'ok') return said;
      window.acknowledged?.(batch);
    }
  },
  breakWorker: (): void => worker?.postMessage('break'),
  /** The whole database, in base64. */
  async file(): Promise<string> {
    const bytes = await log.exportFile();
    return btoa(Array.from(bytes, (byte) => String.fromCodePoint(byte)).join(''));
  },
  fingerprint,
  overwrite,
};

declare global {
  interface Window {
    harness: typeof harness;
    /** Put there by a test that wants to know. */
    acknowledged?: (batch: number) => void;
  }
}

window.harness = harness;
