import { loadSqlite } from '../../renderer/storage/sqlite.ts';

/*
 * The rival of a tap: one row, one commit, nothing else. The same SQLite on the same kind of file with the same
 * pragmas, in a worker and a folder of its own; the time is taken inside the worker, around the prepared statement.
 */

export interface BareAnswer {
  /** Milliseconds the commit took; 0 in the first answer, which only says that the file is open. */
  readonly took: number;
  /** Locking mode, journal mode and synchronous, as SQLite says them. */
  readonly footing: string;
}

const sqlite = await loadSqlite();
const pool = await sqlite.installOpfsSAHPoolVfs({
  name: 'bare-commit',
  directory: 'bare-commit',
  initialCapacity: 6,
});
const db = new pool.OpfsSAHPoolDb('/bare.sqlite3');
const read = (pragma: string): string => db.selectValue(pragma, undefined, sqlite.capi.SQLITE_TEXT) ?? '';
const locking = read('PRAGMA locking_mode = EXCLUSIVE');
const journal = read('PRAGMA journal_mode = WAL');
db.exec('PRAGMA synchronous = FULL');
const synchronous = read('PRAGMA synchronous');
db.exec('CREATE TABLE IF NOT EXISTS bare (seq INTEGER PRIMARY KEY, row TEXT NOT NULL)');
const insert = db.prepare('INSERT INTO bare (row) VALUES (?)');

function answer(took: number): void {
  const content: BareAnswer = {
    took,
    footing: `${locking} ${journal} ${synchronous}`,
  };
  postMessage(content);
}

addEventListener('message', ({ data }: MessageEvent<string>) => {
  const begun = performance.now();
  insert.bind(1, data).stepReset();
  answer(performance.now() - begun);
});
answer(0);
