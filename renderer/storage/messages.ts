import type { LogEvent } from '../log/envelope.ts';

/*
 * What the page and the storage worker say to each other. The worker alone owns the database; the page asks, and each
 * question gets one answer with the same number.
 */

/** Why the log cannot be opened or written. Each has its plain sentence on screen. */
export type StorageFailure =
  /** The browser has no private file system here (old browser, private window, page not served securely). */
  | 'no-storage'
  /** Another window of this installation holds the log. */
  | 'second-window'
  /** Another window took the log over from this one. */
  | 'taken-over'
  /** A newer version of the app has written this log. */
  | 'newer-database'
  /** No room left on the device, or the browser's quota is used up. */
  | 'full'
  /** The database cannot be read. */
  | 'damaged'
  /** The worker broke, or the browser failed in a way we do not know. */
  | 'broken';

export class StorageError extends Error {
  override readonly name = 'StorageError';
  readonly failure: StorageFailure;

  constructor(failure: StorageFailure, detail: string) {
    super(detail);
    this.failure = failure;
  }
}

/** How SQLite holds the file, in its own words; read back from the database, never assumed. */
export interface Footing {
  readonly locking: string;
  readonly journal: string;
  /** 2 = FULL: every commit is flushed before it is answered. */
  readonly synchronous: number;
}

export type Question =
  /** Opens the log and answers with every event in it, in order of appending. */
  | { readonly ask: 'open' }
  /** Appends all of the events in one transaction, or none; answered when they are durable. */
  | { readonly ask: 'append'; readonly events: readonly LogEvent[] }
  /** The whole database as one SQLite file. */
  | { readonly ask: 'export' }
  /** Closes the database and lets go of its files. */
  | { readonly ask: 'close' };

export type Answer =
  /** `rows`: the events as rows.ts packs them. */
  | { readonly ask: 'open'; readonly rows: Uint8Array<ArrayBuffer>; readonly footing: Footing }
  /** `last` is the sequence number of the last event appended. */
  | { readonly ask: 'append'; readonly last: number }
  | { readonly ask: 'export'; readonly file: Uint8Array<ArrayBuffer> }
  | { readonly ask: 'close' };

export type AnswerTo<Q extends Question> = Extract<Answer, { ask: Q['ask'] }>;

export interface Numbered<T> {
  readonly number: number;
  readonly content: T;
}

export type Reply =
  | (Numbered<Answer> & { readonly ok: true })
  | {
      readonly number: number;
      readonly ok: false;
      readonly failure: StorageFailure;
      readonly detail: string;
    };
