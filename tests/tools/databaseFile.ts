import type { Database, Sqlite3Static } from '@sqlite.org/sqlite-wasm';

/** Opens a whole database file in memory, to look into it. */
export function openCopy({ oo1, wasm, capi }: Sqlite3Static, file: Uint8Array): Database {
  const db = new oo1.DB(':memory:');
  const bytes = wasm.allocFromTypedArray(new Uint8Array(file));
  const { SQLITE_DESERIALIZE_FREEONCLOSE, SQLITE_DESERIALIZE_RESIZEABLE } = capi;
  const flags = SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE;
  db.checkRc(capi.sqlite3_deserialize(db, 'main', bytes, file.length, file.length, flags));
  return db;
}
