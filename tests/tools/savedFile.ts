import { readFile } from 'node:fs/promises';

import { openCopy } from './databaseFile.ts';
import type { Shooter } from './shooter.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { parseEvent } from '../../renderer/log/envelope.ts';
import { foldParsed } from '../../renderer/log/fold.ts';
import type { StoredEvent } from '../../renderer/log/envelope.ts';
import { eventsFrom, PACK_ROWS } from '../../renderer/storage/rows.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';

/** A file that the app handed to the browser to save. */
export interface SavedFile {
  readonly name: string;
  /** Where the browser put it, until it is closed. */
  readonly path: string;
  readonly content: Buffer;
}

/** Presses a button of "Records in and out" and takes the file it gives. */
export async function save(shooter: Shooter, button: string | RegExp): Promise<SavedFile> {
  const [download] = await Promise.all([shooter.page.waitForEvent('download'), shooter.press(button)]);
  const path = await download.path();
  return { name: download.suggestedFilename(), path, content: await readFile(path) };
}

/** The log as its copy holds it. */
export interface CopiedLog {
  readonly events: readonly StoredEvent[];
  readonly book: Book;
}

/** Takes a copy of everything, from any screen, and reads it as anybody with SQLite could. */
export async function copyLog(shooter: Shooter): Promise<CopiedLog> {
  await shooter.visit('files');
  const { content } = await save(shooter, 'Save a copy of everything');
  const sqlite = await loadSqlite();
  const db = openCopy(sqlite, content);
  try {
    const rows = db.selectValue(PACK_ROWS, undefined, sqlite.capi.SQLITE_TEXT) ?? '';
    const events = eventsFrom(new TextEncoder().encode(rows));
    return { events, book: foldParsed(EMPTY_BOOK, events.map(parseEvent)) };
  } finally {
    db.close();
  }
}
