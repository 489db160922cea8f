import { afterEach, beforeEach, expect, it } from 'vitest';

import { DURABLE, LogDatabase } from '../../renderer/storage/database.ts';
import { eventsFrom } from '../../renderer/storage/rows.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import type { EventLog } from '../../renderer/store/ports.ts';
import { loadDemoSeason, removeDemoSeason, shootersOf } from '../../renderer/store/shooterActions.ts';
import { fakeWorld } from './fakeWorld.ts';

/* The invented season on the log's own database, which takes every id once. */

const sqlite = await loadSqlite();
let database: LogDatabase;
let gym: Gym;

beforeEach(async () => {
  database = new LogDatabase(sqlite, new sqlite.oo1.DB(':memory:'), { ...DURABLE, journal: 'memory' });
  const log: EventLog = {
    open: () => Promise.resolve(eventsFrom(database.packRows())),
    append: (events) =>
      new Promise((resolve) => {
        database.append(events);
        resolve();
      }),
    exportFile: () => Promise.resolve(database.exportFile()),
    onLost: () => undefined,
  };
  gym = createGym(fakeWorld(log));
  await gym.open(false);
});
afterEach(() => database.close());

const names = () => shootersOf(gym.store.getState().book).map(({ name }) => name);

it('the invented season can be loaded, taken away and loaded again', async () => {
  expect(await loadDemoSeason(gym)).toBe(true);
  const first = gym.store.getState().book;
  expect(await removeDemoSeason(gym)).toBe(true);
  expect(names()).toEqual([]);
  expect(await loadDemoSeason(gym)).toBe(true);
  expect(gym.store.getState().trouble).toBeNull();
  expect(names()).toEqual(['Ines (demo)', 'Tobi (demo)']);

  // Opened again, the log gives the same: two seasons, of which one is shown.
  const { book } = gym.store.getState();
  expect(book.rounds.size).toBe(2 * first.rounds.size);
  await gym.open(false);
  expect(gym.store.getState().log).toEqual({ is: 'ready' });
  expect(gym.store.getState().book).toEqual(book);
  expect(names()).toEqual(['Ines (demo)', 'Tobi (demo)']);
});
