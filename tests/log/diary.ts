import type { NewId } from '../../renderer/basics/ids.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import type { EventOf, LogEvent } from '../../renderer/log/envelope.ts';
import type { Body, EventType } from '../../renderer/log/events.ts';
import { stamp, type Fact } from '../../renderer/log/facts.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';

export const START = Date.UTC(2026, 10, 25, 18);

/** Two stops of two shots: small enough to see through. */
export const STOPS: readonly Stop[] = [
  { spot: 'top', shot: 'catch', attempts: 2 },
  { spot: 'free-throw', shot: 'free-throw', attempts: 2 },
];

export const INES: Body<'ShooterAdded'> = {
  shooter: 'ines',
  name: 'Ines',
  hand: 'right',
  rules: 'FIBA',
  units: 'metric',
  demo: false,
};

export const PRESSURE: PressureSetup = {
  ingredients: ['stake', 'must-make'],
  stake: 'Loser buys lunch',
  mark: { makes: 3, chance: 0.4 },
  clock: null,
  crowd: false,
  showChance: true,
  seed: 7,
};

/** Ids that can be read: `round 1`, `round 2`. */
export function readableIds(word = 'id'): NewId {
  let n = 0;
  return () => {
    n += 1;
    return `${word} ${n}`;
  };
}

/** A log in the making: facts are stamped a second apart with readable ids, one event each. */
export interface Diary {
  readonly events: readonly LogEvent[];
  book(): Book;
  write<T extends EventType>(type: T, body: Body<T>): EventOf<T>;
  /** Facts of one tap: all at the same moment, as the app writes them. */
  tap(facts: readonly Fact[]): void;
}

export function diary(start = START): Diary {
  const events: LogEvent[] = [];
  const newId = readableIds('event');
  const together = (facts: readonly Fact[]) =>
    stamp(facts, { at: start + 1000 * events.length, zone: 60, device: 'tablet', newId });
  return {
    events,
    book: () => foldAll(EMPTY_BOOK, events),
    write: <T extends EventType>(type: T, body: Body<T>) => {
      const [event] = together([{ type, body } as unknown as Fact]);
      events.push(event as LogEvent);
      return event as unknown as EventOf<T>;
    },
    tap: (facts) => void events.push(...together(facts)),
  };
}

/** The body of a round's start: Ines, relaxed, four shots, unless told otherwise. */
export function started(change: Partial<Body<'RoundStarted'>> = {}): Body<'RoundStarted'> {
  return {
    round: 'round 1',
    session: 'visit 1',
    shooter: 'ines',
    condition: 'relaxed',
    card: { id: 'small', name: 'A small card', stops: [...STOPS] },
    entry: 'each-shot',
    first: 0,
    nerves: 2,
    pair: null,
    pressure: null,
    ...change,
  };
}

/** A log with a shooter, a visit and an open round. */
export function onCourt(change: Partial<Body<'RoundStarted'>> = {}): Diary {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  log.write('RoundStarted', started(change));
  return log;
}

/** Taps makes (`o`) and misses (`x`) into the open round: `tap(log, 'oxxo')`. */
export function tap(log: Diary, shots: string, round = 'round 1'): EventOf<'ShotTaken'>[] {
  return shots.split('').map((shot) => {
    const { open, rounds } = log.book();
    const entries = (open?.id === round ? open : rounds.get(round))?.entries.length ?? 0;
    return log.write('ShotTaken', { round, stop: entries < 2 ? 0 : 1, made: shot === 'o', side: null });
  });
}

/** Freezes a book to its last entry, and makes its maps throw where something writes to them. */
export function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  if (value instanceof Map || value instanceof Set) {
    for (const door of ['set', 'add', 'delete', 'clear'] as const) {
      Reflect.defineProperty(value, door, { value: forbidden });
    }
    for (const [key, inside] of value.entries()) {
      frozen(key);
      frozen(inside);
    }
  }
  Object.freeze(value);
  for (const inside of Object.values(value)) frozen(inside);
  return value;
}

function forbidden(): never {
  throw new Error('a book is never written to');
}
