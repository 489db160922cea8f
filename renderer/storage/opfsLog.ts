import type { LogEvent, StoredEvent } from '../log/envelope.ts';
import { WorkerLine } from './line.ts';
import { StorageError, type Footing, type Question, type AnswerTo } from './messages.ts';
import { own, type LetGo } from './ownership.ts';
import { eventsFrom } from './rows.ts';

/** What the log needs of the browser. */
export interface LogHost {
  /** Starts the storage worker. */
  readonly startWorker: () => Worker;
  /** Missing where the page is not served securely. */
  readonly locks: LockManager | undefined;
  /** Asks the browser not to clear the log away when the device runs short of room. It may say no. */
  readonly askToKeep: () => Promise<unknown>;
}

/** The browser this page runs in. */
export const BROWSER: LogHost = {
  startWorker: () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'log' }),
  locks: globalThis.navigator?.locks,
  askToKeep: async () => (await navigator.storage.persisted()) || navigator.storage.persist(),
};

const NOT_OPEN = new StorageError('broken', 'the log is not open');

/**
 * The durable log in the browser's private file system. There is no fallback: where it cannot be opened or written, the
 * promise is rejected with a {@link StorageError}.
 *
 * The worker starts loading SQLite when the log is constructed, so construct it first thing; it touches no file before
 * `open` has made this window the log's owner.
 */
export class OpfsLog {
  readonly #host: LogHost;
  readonly #listeners = new Set<(error: Error) => void>();
  #line: WorkerLine;
  #letGo: LetGo | null = null;
  /** Why there is no open log. */
  #closed: StorageError | null = NOT_OPEN;
  #footing: Footing | null = null;
  #askedToKeep = false;
  #opening: Promise<unknown> = Promise.resolve();

  constructor(host: LogHost = BROWSER) {
    this.#host = host;
    this.#line = this.#newLine();
  }

  /** What the database stands on, as read back from it; null before the log is open. */
  get footing(): Footing | null {
    return this.#footing;
  }

  /**
   * Opens the log and reads it whole. May be called again after a failure.
   *
   * @param takeOver take the log from a window that owns it; the other one is told
   * @throws StorageError
   */
  open(takeOver: boolean): Promise<readonly StoredEvent[]> {
    const opened = this.#opening.then(() => this.#open(takeOver));
    this.#opening = opened.catch(() => undefined);
    return opened;
  }

  /**
   * Resolves once all of the events are durable. Where it rejects none of them is; only where the worker broke or was
   * stopped can the next opening find them after all.
   *
   * @throws StorageError
   */
  async append(events: readonly LogEvent[]): Promise<void> {
    await this.#ask({ ask: 'append', events });
    if (this.#askedToKeep) return;
    this.#askedToKeep = true;
    // Its answer changes nothing here, and a browser that cannot be asked keeps what it likes.
    this.#host.askToKeep().catch(() => undefined);
  }

  /** The whole database as one SQLite file. @throws StorageError */
  async exportFile(): Promise<Uint8Array<ArrayBuffer>> {
    return (await this.#ask({ ask: 'export' })).file;
  }

  /** Calls back with a StorageError when another window took the log over, or the worker broke. */
  onLost(lost: (error: Error) => void): void {
    this.#listeners.add(lost);
  }

  /** Lets go of the log: finishes what was asked, closes the file, and lets another window own it. */
  async close(): Promise<void> {
    const letGo = this.#letGo;
    this.#letGo = null;
    this.#closed ??= NOT_OPEN;
    await this.#line.hangUp(this.#closed);
    letGo?.();
  }

  async #open(takeOver: boolean): Promise<readonly StoredEvent[]> {
    if (this.#letGo) await this.close();
    const taken = new StorageError('taken-over', 'another window took the log over');
    this.#letGo = await own(this.#host.locks, takeOver, () => this.#lose(taken));
    this.#closed = null;
    if (this.#line.ended) this.#line = this.#newLine();
    try {
      const { rows, footing } = await this.#line.ask({ ask: 'open' });
      if (this.#closed) throw this.#closed;
      this.#footing = footing;
      return eventsFrom(rows);
    } catch (error) {
      await this.close();
      throw error;
    }
  }

  #ask<Q extends Question>(question: Q): Promise<AnswerTo<Q>> {
    return this.#closed ? Promise.reject(this.#closed) : this.#line.ask(question);
  }

  #newLine(): WorkerLine {
    return new WorkerLine(this.#host.startWorker(), (error) => this.#lose(error));
  }

  /** The log is gone from under this window. */
  #lose(why: StorageError): void {
    if (this.#closed) return;
    this.#closed = why;
    void this.close();
    for (const lost of this.#listeners) lost(why);
  }
}
