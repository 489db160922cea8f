import type { Database, SAHPoolUtil, Sqlite3Static } from '@sqlite.org/sqlite-wasm';

import { StorageError } from './messages.ts';

/** The folder in the origin's private file system. Changing it would orphan every log written so far. */
const FOLDER = 'loud-gym';
const FILE = '/log.sqlite3';

/** Files the pool keeps at hand: the database, its journals, and room for copies. */
const CAPACITY = 40;

/** How long to wait for another window, or the page before a reload, to let go of the files. */
const PATIENCE_MS = 5000;
const PAUSE_MS = 40;

/**
 * Opens the private file system's files for this worker alone.
 *
 * @throws StorageError `no-storage` where there is no such file system, `second-window` where another window keeps the
 *   files open
 */
export async function openPool(sqlite: Sqlite3Static): Promise<SAHPoolUtil> {
  await checkFileSystem();
  return tryUntil(performance.now() + PATIENCE_MS, sqlite);
}

async function tryUntil(deadline: number, sqlite: Sqlite3Static): Promise<SAHPoolUtil> {
  try {
    const pool = await sqlite.installOpfsSAHPoolVfs(POOL);
    await pool.reserveMinimumCapacity(CAPACITY);
    return pool;
  } catch (error) {
    if (!isHeldElsewhere(error)) throw error;
    if (performance.now() > deadline) {
      throw new StorageError('second-window', 'another window keeps the files open');
    }
  }
  await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  return tryUntil(deadline, sqlite);
}

/** The log's database in the pool; empty where there is none yet. */
export function openFile(pool: SAHPoolUtil): Database {
  return new pool.OpfsSAHPoolDb(FILE);
}

const POOL = {
  name: FOLDER,
  directory: FOLDER,
  initialCapacity: CAPACITY,
  // Without it the library answers a file that is held elsewhere by deleting the whole folder, log and all.
  preserveOnInitFailure: true,
  forceReinitIfPreviouslyFailed: true,
};

async function checkFileSystem(): Promise<void> {
  const files = globalThis.FileSystemFileHandle;
  if (!navigator.storage?.getDirectory || !files || !('createSyncAccessHandle' in files.prototype)) {
    throw new StorageError('no-storage', 'this browser has no private file system for workers');
  }
  try {
    await navigator.storage.getDirectory();
  } catch (error) {
    throw new StorageError('no-storage', `the private file system is closed: ${String(error)}`);
  }
}

function isHeldElsewhere(error: unknown): boolean {
  return error instanceof Error && error.name === 'NoModificationAllowedError';
}
