import sqlite3InitModule, { type Sqlite3Static } from '@sqlite.org/sqlite-wasm';

/** What the file layer last complained about. */
let complaint: unknown = null;

/** Takes the file layer's last complaint away, for whoever has to say why a write failed. */
export function takeComplaint(): unknown {
  const last = complaint;
  complaint = null;
  return last;
}

const quiet = (): void => undefined;

/**
 * Loads SQLite. It would write every failed statement to the console; here failures are errors with their reason, and
 * what the file layer reports is kept for {@link takeComplaint}. File systems we do not use are not set up.
 */
export function loadSqlite(): Promise<Sqlite3Static> {
  Object.assign(globalThis, {
    sqlite3ApiConfig: {
      debug: quiet,
      log: quiet,
      warn: quiet,
      error: (...parts: unknown[]) => {
        complaint = parts.find((part) => part instanceof Error) ?? complaint;
      },
      disable: { vfs: { opfs: true, 'opfs-vfs': true, 'opfs-wl': true, kvvfs: true } },
    },
  });
  return sqlite3InitModule();
}
