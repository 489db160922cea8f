import { createStore, type StoreApi } from 'zustand/vanilla';

import { asError } from '../basics/errors.ts';
import { seedFromBytes } from '../basics/chance.ts';
import { uuidV7, type EventId, type Id, type NewId, type RandomBytes } from '../basics/ids.ts';
import type { EpochMs } from '../basics/units.ts';
import type { Moment } from '../log/begin.ts';
import { EMPTY_BOOK, type Book } from '../log/book.ts';
import { parseEvent, type LogEvent } from '../log/envelope.ts';
import { stamp, type Fact } from '../log/facts.ts';
import { foldAll, foldParsed } from '../log/fold.ts';
import type { EventLog } from './ports.ts';
import { readSettings, writeSettings, type Settings, type Shelf } from './settings.ts';
import { whoShoots } from './whoShoots.ts';

/** How the log stands. No round is started unless it is `ready`. */
export type LogState =
  { readonly is: 'opening' } | { readonly is: 'ready' } | { readonly is: 'failed'; readonly error: Error };

export interface GymState {
  readonly log: LogState;
  /** Everything acknowledged as durable. */
  readonly book: Book;
  /** The book with the taps that are on their way to the log. */
  readonly ahead: Book;
  /** Events on their way. */
  readonly pending: ReadonlySet<EventId>;
  /** The last write that failed, until someone has seen it; the screen says what to do. */
  readonly trouble: Error | null;
  readonly settings: Settings;
}

/** What the store needs from the world. */
export interface World {
  readonly log: EventLog;
  /** The wall clock. */
  readonly at: () => EpochMs;
  /** Minutes east of UTC now. */
  readonly zone: () => number;
  readonly random: RandomBytes;
  readonly shelf: Shelf;
}

/** Called after events became durable, never for a log that is read again: a replay is silent. */
export type Listener = (before: Book, after: Book, events: readonly LogEvent[]) => void;

export interface Gym {
  readonly store: StoreApi<GymState>;
  /** The one door to the log. Resolves true once durable; false where the write failed and nothing counts. */
  dispatch(facts: readonly Fact[]): Promise<boolean>;
  /** The same for events that carry their own stamp: the invented season. */
  append(events: readonly LogEvent[]): Promise<boolean>;
  open(takeOver: boolean): Promise<void>;
  /** The whole log as one SQLite file. @throws what the log throws */
  exportFile(): Promise<Uint8Array<ArrayBuffer>>;
  moment(): Moment;
  newSeed(): number;
  onDurable(listener: Listener): () => void;
  set(change: Partial<Settings>): void;
  dismissTrouble(): void;
}

export function createGym(world: World): Gym {
  const newId: NewId = <Kind extends string>(): Id<Kind> => uuidV7<Kind>(world.at(), world.random());
  const settings = readSettings(world.shelf, () => newId<'device'>());
  const store = createStore<GymState>(() => ({
    log: { is: 'opening' },
    book: EMPTY_BOOK,
    ahead: EMPTY_BOOK,
    pending: new Set(),
    trouble: null,
    settings,
  }));
  const listeners = new Set<Listener>();
  /** Batches on their way, oldest first: a failed one is taken out of what lies ahead. */
  let underway: (readonly LogEvent[])[] = [];

  world.log.onLost((error) => store.setState({ log: { is: 'failed', error } }));

  function settle(events: readonly LogEvent[], change: (state: GymState) => Partial<GymState>): void {
    underway = underway.filter((batch) => batch !== events);
    const settled = new Set(events.map((event) => event.id));
    store.setState((state) => ({
      ...change(state),
      pending: new Set([...state.pending].filter((id) => !settled.has(id))),
    }));
  }

  function set(change: Partial<Settings>): void {
    const next = { ...store.getState().settings, ...change };
    writeSettings(world.shelf, next);
    store.setState({ settings: next });
  }

  async function append(events: readonly LogEvent[]): Promise<boolean> {
    if (events.length === 0) return true;
    underway.push(events);
    store.setState((state) => ({
      ahead: foldAll(state.ahead, events),
      pending: new Set([...state.pending, ...events.map((event) => event.id)]),
    }));
    try {
      for (const event of events) mustBeReadable(event);
      await world.log.append(events);
    } catch (error) {
      settle(events, ({ book }) => ({ trouble: asError(error), ahead: underway.reduce(foldAll, book) }));
      return false;
    }
    const before = store.getState().book;
    settle(events, ({ book, ahead }) => {
      const after = foldAll(book, events);
      // With nothing else on the way, what lies ahead is the book itself.
      return { book: after, ahead: underway.length === 0 ? after : ahead };
    });
    for (const listener of listeners) listener(before, store.getState().book, events);
    return true;
  }

  return {
    store,
    append,
    dispatch: (facts) => {
      const { device } = store.getState().settings;
      return append(stamp(facts, { at: world.at(), zone: world.zone(), device, newId }));
    },
    open: async (takeOver) => {
      store.setState({ log: { is: 'opening' }, trouble: null });
      try {
        const stored = await world.log.open(takeOver);
        const book = foldParsed(EMPTY_BOOK, stored.map(parseEvent));
        set({ shooter: whoShoots(book, store.getState().settings.shooter) });
        store.setState({ log: { is: 'ready' }, book, ahead: book });
      } catch (error) {
        store.setState({ log: { is: 'failed', error: asError(error) } });
      }
    },
    exportFile: () => world.log.exportFile(),
    moment: () => ({ at: world.at(), zone: world.zone(), newId }),
    newSeed: () => seedFromBytes(world.random()),
    onDurable: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    set,
    dismissTrouble: () => store.setState({ trouble: null }),
  };
}

/** What could not be read again must never be written: it would close the whole log. @throws Error */
function mustBeReadable(event: LogEvent): void {
  try {
    parseEvent(event);
  } catch (error) {
    throw new Error(`not written: ${String(error)}`, { cause: error });
  }
}
