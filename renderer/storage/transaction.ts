import type { Database, Sqlite3Static } from '@sqlite.org/sqlite-wasm';

/**
 * Does the work wholly or not at all. SQLite's own helper hides why the work failed: a full disk has already rolled the
 * transaction back, and rolling back once more is an error of its own.
 */
export function transaction({ capi }: Sqlite3Static, db: Database, work: () => void): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    work();
    db.exec('COMMIT');
  } catch (error) {
    const over = capi.sqlite3_get_autocommit(db) !== 0;
    if (!over) db.exec('ROLLBACK');
    throw error;
  }
}
