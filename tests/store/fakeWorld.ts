import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { LogEvent, StoredEvent } from '../../renderer/log/envelope.ts';
import type { World } from '../../renderer/store/gymStore.ts';
import type { EventLog } from '../../renderer/store/ports.ts';
import type { Shelf } from '../../renderer/store/settings.ts';

export const START = Date.UTC(2026, 10, 25, 18);

/** A log that answers when the test says so. */
export interface FakeLog extends EventLog {
  /** Everything durable, in order. */
  readonly durable: LogEvent[];
  /** Batches that wait for an answer. */
  readonly waiting: () => number;
  /** Answers the oldest batch: durable, or refused with this error. */
  readonly answer: (refusal?: Error) => Promise<void>;
  readonly lose: (error: Error) => void;
  /** What the next `open` meets. */
  opens: () => Promise<readonly StoredEvent[]>;
}

export function fakeLog(): FakeLog {
  const queue: { readonly events: readonly LogEvent[]; readonly settle: (refusal?: Error) => void }[] = [];
  let lost: (error: Error) => void = () => undefined;
  const log: FakeLog = {
    durable: [],
    waiting: () => queue.length,
    opens: () => Promise.resolve(log.durable),
    open: () => log.opens(),
    append: (events) =>
      new Promise((resolve, reject) => {
        queue.push({
          events,
          settle: (refusal) => {
            if (refusal) {
              reject(refusal);
              return;
            }
            log.durable.push(...events);
            resolve();
          },
        });
      }),
    answer: async (refusal) => {
      const next = queue.shift();
      if (!next) throw new Error('nothing waits for an answer');
      next.settle(refusal);
      // Lets whoever waited go on.
      await new Promise((resolve) => setImmediate(resolve));
    },
    exportFile: () => Promise.resolve(new Uint8Array([1, 2, 3])),
    onLost: (listener) => {
      lost = listener;
    },
    lose: (error) => lost(error),
  };
  return log;
}

export function fakeShelf(): Shelf & { readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return { kept, read: (name) => kept.get(name) ?? null, write: (name, text) => void kept.set(name, text) };
}

/** A world whose clock moves on by a second at every look. */
export function fakeWorld(log: EventLog, shelf: Shelf = fakeShelf()): World {
  const rng = rngFromSeed(11);
  let at = START;
  return {
    log,
    at: () => {
      at += 1000;
      return at;
    },
    zone: () => 60,
    random: () => rng.bytes(),
    shelf,
  };
}
