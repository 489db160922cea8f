import { present } from '../basics/invariant.ts';
import { LogDatabase } from './database.ts';
import { asStorageError } from './failures.ts';
import type { Answer, Numbered, Question, Reply } from './messages.ts';
import { openFile, openPool } from './pool.ts';
import { loadSqlite, takeComplaint } from './sqlite.ts';

/* The one worker that owns the database. It answers questions one after the other, in the order they came. */

// Loading starts with the worker, before the page has even asked for the log.
const loading = loadSqlite();
let close: (() => void) | null = null;
let log: LogDatabase | null = null;

async function answer(question: Question): Promise<Answer> {
  switch (question.ask) {
    case 'open':
      return open();
    case 'append':
      return { ask: 'append', last: opened().append(question.events) };
    case 'export':
      return { ask: 'export', file: opened().exportFile() };
    case 'close':
      close?.();
      return { ask: 'close' };
  }
}

async function open(): Promise<Answer> {
  const sqlite = await loading;
  const pool = await openPool(sqlite);
  close = () => {
    log?.close();
    log = null;
    close = null;
    pool.pauseVfs();
  };
  log = new LogDatabase(sqlite, openFile(pool));
  return { ask: 'open', rows: log.packRows(), footing: log.footing };
}

function opened(): LogDatabase {
  return present(log, 'the open log');
}

async function reply({ number, content }: Numbered<Question>): Promise<void> {
  try {
    takeComplaint();
    const given = await answer(content);
    const message: Reply = { number, ok: true, content: given };
    postMessage(message, { transfer: handedOver(given) });
  } catch (error) {
    const { failure, message: detail } = asStorageError(error, takeComplaint());
    const message: Reply = { number, ok: false, failure, detail };
    postMessage(message);
  }
}

/** Whole files are handed over to the page without a copy. */
function handedOver(given: Answer): ArrayBuffer[] {
  if (given.ask === 'open') return [given.rows.buffer];
  return given.ask === 'export' ? [given.file.buffer] : [];
}

let queue: Promise<void> = Promise.resolve();
addEventListener('message', ({ data }: MessageEvent<Numbered<Question>>) => {
  queue = queue.then(() => reply(data));
});
