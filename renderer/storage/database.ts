import type { Database, PreparedStatement, Sqlite3Static } from '@sqlite.org/sqlite-wasm';

import { invariant, present } from '../basics/invariant.ts';
import type { StoredEvent } from '../log/envelope.ts';
import { StorageError, type Footing } from './messages.ts';
import { checkVersion, migrate, MIGRATIONS } from './migrations.ts';
import { PACK_ROWS } from './rows.ts';
import { transaction } from './transaction.ts';

/** What the log stands on: sole owner of the file, a write-ahead journal, every commit flushed. */
export const DURABLE: Footing = { locking: 'exclusive', journal: 'wal', synchronous: 2 };

const INSERT = 'INSERT INTO event (id, at, zone, device, type, v, body) VALUES (?, ?, ?, ?, ?, ?, ?)';

/** Where SQLite's header says which journal a file is read and written with (sqlite.org/fileformat.html, 1.3). */
const JOURNAL_BYTES = [18, 19];
const NO_WAL = 1;

/** The log of events in one SQLite database. Everything here runs to its end before it returns. */
export class LogDatabase {
  readonly footing: Footing;
  readonly #sqlite: Sqlite3Static;
  readonly #db: Database;
  readonly #insert: PreparedStatement;

  /**
   * Takes an open database, makes it a log where it is empty, and closes it again where that fails.
   *
   * @param wanted what the database must stand on; a database in memory has no journal on disk, so tests ask for less
   * @throws StorageError, or SQLite's own error
   */
  constructor(sqlite: Sqlite3Static, db: Database, wanted: Footing = DURABLE, steps = MIGRATIONS) {
    this.#sqlite = sqlite;
    this.#db = db;
    try {
      // In this order: a write-ahead journal needs the exclusive lock first, and a file that is not ours stays as it is.
      const locking = readText(sqlite, db, 'PRAGMA locking_mode = EXCLUSIVE');
      checkVersion(db, steps);
      checkIntegrity(sqlite, db);
      this.footing = stand(sqlite, db, locking, wanted);
      migrate(sqlite, db, steps);
      this.#insert = db.prepare(INSERT);
    } catch (error) {
      // A file that cannot be used is left as it was found, its journal too.
      sqlite.capi.sqlite3_db_config(db, sqlite.capi.SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, 0);
      db.close();
      throw error;
    }
  }

  /**
   * Appends all of the events in one transaction, or none.
   *
   * @returns the sequence number of the last one
   */
  append(events: readonly StoredEvent[]): number {
    invariant(events.length > 0, 'there is an event to append');
    if (events.length === 1) this.#write(events);
    else transaction(this.#sqlite, this.#db, () => this.#write(events));
    return Number(this.#sqlite.capi.sqlite3_last_insert_rowid(this.#db));
  }

  /** The whole log, packed for the page. */
  packRows(): Uint8Array<ArrayBuffer> {
    const read = this.#db.prepare(PACK_ROWS);
    try {
      read.step();
      return new Uint8Array(present(read.getBlob(0), 'the packed log'));
    } finally {
      read.finalize();
    }
  }

  /** The whole database as one SQLite file, which any SQLite program opens without a journal beside it. */
  exportFile(): Uint8Array<ArrayBuffer> {
    const file = this.#sqlite.capi.sqlite3_js_db_export(this.#db);
    for (const byte of JOURNAL_BYTES) file[byte] = NO_WAL;
    return file;
  }

  close(): void {
    this.#insert.finalize();
    this.#db.close();
  }

  #write(events: readonly StoredEvent[]): void {
    try {
      for (const { id, at, zone, device, type, v, body } of events) {
        this.#insert.bind([id, at, zone, device, type, v, JSON.stringify(body)]).stepReset();
      }
    } catch (error) {
      // A statement that failed must be reset before the transaction can be rolled back.
      this.#insert.resetNoThrow();
      throw error;
    }
  }
}

/** Damage must show before a round is played, not in its middle. Takes about a millisecond for a thousand events. */
function checkIntegrity(sqlite: Sqlite3Static, db: Database): void {
  const found = readText(sqlite, db, 'PRAGMA integrity_check(1)');
  if (found !== 'ok') throw new StorageError('damaged', found);
}

/** Asks for the footing, then looks what came of it: SQLite answers a pragma it cannot follow by doing nothing. */
function stand(sqlite: Sqlite3Static, db: Database, locking: string, wanted: Footing): Footing {
  const journal = readText(sqlite, db, 'PRAGMA journal_mode = WAL');
  db.exec('PRAGMA synchronous = FULL');
  const synchronous = Number(db.selectValue('PRAGMA synchronous'));
  const footing = { locking, journal, synchronous };
  if (locking !== wanted.locking || journal !== wanted.journal || synchronous !== wanted.synchronous) {
    throw new StorageError(
      'broken',
      `the log stands on ${JSON.stringify(footing)}, not on ${JSON.stringify(wanted)}`,
    );
  }
  return footing;
}

function readText(sqlite: Sqlite3Static, db: Database, pragma: string): string {
  return db.selectValue(pragma, undefined, sqlite.capi.SQLITE_TEXT) ?? '';
}
