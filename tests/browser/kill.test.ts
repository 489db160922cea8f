import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';
import { freshProfile, removeProfile } from '../tools/browser.ts';
import { openCopy } from '../tools/databaseFile.ts';
import { playUntilKilled } from '../tools/kill.ts';
import type { Mark } from './harness/harness.ts';

const KILLS = 25;
const SEED = 77;
/** Longest time from a run's first acknowledgement to its kill. A commit takes about half a millisecond. */
const LONGEST_MS = 250;

const url = inject('harnessUrl');
const sqlite = await loadSqlite();

let profile: string;
beforeAll(async () => {
  profile = await freshProfile();
});
afterAll(async () => removeProfile(profile));

/** The log as the page read it, once the file has been found whole. */
async function readWhole(page: Page): Promise<Mark[]> {
  expect(await page.evaluate(() => window.harness.open())).toBe('ok');
  const file = Buffer.from(await page.evaluate(() => window.harness.file()), 'base64');
  const db = openCopy(sqlite, file);
  expect(db.selectValue('PRAGMA integrity_check')).toBe('ok');
  const bodies = 'SELECT json_group_array(json(body) ORDER BY seq) FROM event';
  const marks = JSON.parse(db.selectValue(bodies, undefined, sqlite.capi.SQLITE_TEXT) ?? '') as Mark[];
  db.close();
  expect(await page.evaluate(() => window.harness.marks())).toEqual(marks);
  return marks;
}

/** Every batch is there whole and in order, from the first to at least the last one acknowledged. */
function expectWhole(marks: readonly Mark[], last: number): void {
  const batches: Mark[][] = [];
  for (const mark of marks) (batches[mark.batch] ??= []).push(mark);
  expect(marks, 'the order of appending').toEqual(batches.flat());
  for (const batch of batches) {
    expect(
      batch?.map((mark) => mark.place),
      'a whole batch',
    ).toEqual(Array.from({ length: batch?.[0]?.of ?? 0 }, (_, at) => at));
  }
  expect(batches.length, 'batches in the log').toBeGreaterThan(last);
}

test(`no acknowledged shot is lost when the browser is killed, ${KILLS} times`, async ({ annotate }) => {
  const rng = rngFromSeed(SEED);
  /** The last batch acknowledged in each run. */
  const lasts: number[] = [];

  const look = async (page: Page): Promise<void> => {
    const marks = await readWhole(page);
    expect(marks.map((mark) => mark.run)).toEqual(marks.map((mark) => mark.run).toSorted((a, b) => a - b));
    for (const [run, last] of lasts.entries()) {
      expectWhole(
        marks.filter((mark) => mark.run === run),
        last,
      );
    }
  };

  // One more play than kills: its look is the check of the last kill.
  for (let run = 0; run <= KILLS; run += 1) {
    const play = (page: Page): Promise<string> => page.evaluate((name) => window.harness.play(name), run);
    const acknowledged = await playUntilKilled<number>(profile, { url, look, play }, rng.next() * LONGEST_MS);
    expect(acknowledged).toEqual(acknowledged.map((_, at) => at));
    lasts.push(acknowledged.length - 1);
  }
  const batches = lasts.slice(0, KILLS).reduce((sum, last) => sum + last + 1, 0);
  await annotate(`${KILLS} kills; of ${batches} acknowledged batches none was lost`);
});
