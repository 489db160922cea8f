import type { Database } from '@sqlite.org/sqlite-wasm';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import type { StoredEvent } from '../../renderer/log/envelope.ts';
import { DURABLE, LogDatabase } from '../../renderer/storage/database.ts';
import { StorageError, type Footing } from '../../renderer/storage/messages.ts';
import { eventsFrom } from '../../renderer/storage/rows.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';
import { openCopy } from '../tools/databaseFile.ts';
import { someShots } from '../tools/events.ts';

const sqlite = await loadSqlite();

/** What a database in memory can stand on. */
const IN_MEMORY: Footing = { ...DURABLE, journal: 'memory' };

describe('a log in a file', () => {
  // The build keeps files in memory here, but it journals, locks and reopens them as it would on a disk.
  let files = 0;
  let log: LogDatabase;
  const open = (): LogDatabase => new LogDatabase(sqlite, new sqlite.oo1.DB(`/log-${files}.sqlite3`));

  beforeEach(() => {
    files += 1;
    log = open();
  });
  afterEach(() => log.close());

  test('stands on an exclusive lock, a write-ahead journal and full flushes', () => {
    expect(log.footing).toEqual({ locking: 'exclusive', journal: 'wal', synchronous: 2 });
  });

  test('gives back every event as it was, in the order of appending, after it is opened again', () => {
    const shots = someShots(50);
    const [first, second, ...rest] = shots.toReversed() as [StoredEvent, StoredEvent, ...StoredEvent[]];
    expect(log.append([first])).toBe(1);
    expect(log.append([second])).toBe(2);
    expect(log.append(rest)).toBe(50);
    log.close();
    log = open();
    expect(eventsFrom(log.packRows())).toEqual(shots.toReversed());
  });
});

describe('a log in memory', () => {
  let db: Database;
  let log: LogDatabase;
  beforeEach(() => {
    db = new sqlite.oo1.DB(':memory:');
    log = new LogDatabase(sqlite, db, IN_MEMORY);
  });
  afterEach(() => log.close());

  const stored = (): StoredEvent[] => eventsFrom(log.packRows());

  test('is empty at first', () => {
    expect(stored()).toEqual([]);
  });

  test('keeps events of later versions, and every kind of text', () => {
    const [shot] = someShots(1) as [StoredEvent];
    const strange = {
      ...shot,
      type: 'ShotDreamt "of"',
      v: 7,
      device: 'a \\ "tablet"\n',
      body: { words: '“Größe” \u0000 \u2028 🏀 \\n', deep: [1, null, { a: -1.5e-7 }] },
    };
    log.append([strange]);
    expect(stored()).toEqual([strange]);
  });

  test('takes all events of an append, or none', () => {
    const shots = someShots(5);
    const [first] = shots as [StoredEvent];
    log.append([first]);
    const others = someShots(5, 2);
    expect(() => log.append([...others, first])).toThrow('UNIQUE constraint failed: event.id');
    expect(stored()).toEqual([first]);
    log.append(others);
    expect(stored()).toEqual([first, ...others]);
  });

  test('refuses an event it holds already, and goes on', () => {
    const [first, second] = someShots(2) as [StoredEvent, StoredEvent];
    log.append([first]);
    expect(() => log.append([first])).toThrow('UNIQUE constraint failed: event.id');
    log.append([second]);
    expect(stored()).toEqual([first, second]);
  });

  test('refuses to append nothing', () => {
    expect(() => log.append([])).toThrow('there is an event to append');
  });

  test('never changes an event, whoever asks', () => {
    log.append(someShots(3));
    expect(() => db.exec("UPDATE event SET body = '{}'")).toThrow('events are never changed');
    expect(() => db.exec('DELETE FROM event')).toThrow('events are never deleted');
    expect(stored()).toEqual(someShots(3));
  });

  test('takes no body that is not JSON', () => {
    const insert = "INSERT INTO event VALUES (1, 'id', 0, 0, 'device', 'type', 1, '{broken')";
    expect(() => db.exec(insert)).toThrow('CHECK constraint failed: json_valid(body)');
  });

  test('exports a file that opens without a journal beside it', () => {
    const shots = someShots(300);
    log.append(shots);
    const copy = openCopy(sqlite, log.exportFile());
    expect(copy.selectValue('PRAGMA integrity_check')).toBe('ok');
    expect(copy.selectValues('SELECT id FROM event ORDER BY seq')).toEqual(shots.map((shot) => shot.id));
    copy.close();
  });
});

describe('a database that does not stand where it should', () => {
  test.each<[keyof Footing, Partial<Footing>]>([
    ['locking', { locking: 'normal' }],
    ['journal', { journal: 'wal' }],
    ['synchronous', { synchronous: 1 }],
  ])('is refused for its %s', (_, asked) => {
    const db = new sqlite.oo1.DB(':memory:');
    const open = (): LogDatabase => new LogDatabase(sqlite, db, { ...IN_MEMORY, ...asked });
    expect(open).toThrow(StorageError);
    expect(db.isOpen()).toBe(false);
  });
});
