import type { Database, Sqlite3Static } from '@sqlite.org/sqlite-wasm';

import { StorageError } from './messages.ts';
import { transaction } from './transaction.ts';

/** Marks a file as a log of this app: "LGym" in ASCII, in SQLite's application_id. */
export const APPLICATION_ID = 0x4c_47_79_6d;

/**
 * Every step the database ever took, oldest first. A step once released is never changed; a new one is added.
 * The number of steps taken is the file's user_version.
 *
 * `seq` needs no AUTOINCREMENT: events are never deleted, so no number comes twice, and a commit writes a page less.
 */
export const MIGRATIONS: readonly string[] = [
  `CREATE TABLE event (
    seq INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    at INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    device TEXT NOT NULL,
    type TEXT NOT NULL,
    v INTEGER NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body))
  ) STRICT;
  CREATE TRIGGER event_stays BEFORE DELETE ON event
    BEGIN SELECT RAISE(ABORT, 'events are never deleted'); END;
  CREATE TRIGGER event_stays_as_it_is BEFORE UPDATE ON event
    BEGIN SELECT RAISE(ABORT, 'events are never changed'); END;`,
];

/**
 * Looks at a file before anything is written to it. Only reads.
 *
 * @returns the number of steps the file has taken
 * @throws StorageError `newer-database` where a later version of the app wrote it, `damaged` where another program did
 */
export function checkVersion(db: Database, steps: readonly string[] = MIGRATIONS): number {
  const application = Number(db.selectValue('PRAGMA application_id'));
  const version = Number(db.selectValue('PRAGMA user_version'));
  if (application !== APPLICATION_ID) {
    const things = Number(db.selectValue('SELECT count(*) FROM sqlite_schema'));
    if (application === 0 && version === 0 && things === 0) return 0;
    throw new StorageError('damaged', `the file is not a log of this app (application_id ${application})`);
  }
  if (version > steps.length) {
    const detail = `the log is at version ${version}, this build knows ${steps.length}`;
    throw new StorageError('newer-database', detail);
  }
  return version;
}

/** Takes the steps still missing, each wholly or not at all. */
export function migrate(sqlite: Sqlite3Static, db: Database, steps: readonly string[] = MIGRATIONS): void {
  for (let version = checkVersion(db, steps); version < steps.length; version += 1) {
    transaction(sqlite, db, () => {
      db.exec(steps[version] ?? '');
      db.exec(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${version + 1}`);
    });
  }
}
