import type { LogEvent, StoredEvent } from '../log/envelope.ts';

/** The durable log, as the store sees it. A rejected promise carries a StorageError. */
export interface EventLog {
  /** Opens the log and reads it whole. `takeOver`: take it from a window that holds it. */
  open(takeOver: boolean): Promise<readonly StoredEvent[]>;
  /** Resolves once all of the events are durable; none of them is where it rejects. */
  append(events: readonly LogEvent[]): Promise<void>;
  /** The whole database as one SQLite file. */
  exportFile(): Promise<Uint8Array<ArrayBuffer>>;
  /** Calls back when another window took the log over, or the worker broke. */
  onLost(lost: (error: Error) => void): void;
}
