import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';

import { afterAll, beforeAll, expect, test } from 'vitest';

import type { Report } from '../../renderer/report/report.ts';
import { atBench } from '../tools/atBench.ts';
import { readResult, type Result } from '../tools/result.ts';
import { copyLog, save } from '../tools/savedFile.ts';
import type { Shooter } from '../tools/shooter.ts';

/* A season goes out as CSV, into the report without a screen, and into an empty device. */

const root = join(import.meta.dirname, '../..');
const HEADER = 'date,session,round,condition,game,spot,shot,first,makes,attempts,nerves,shooter,note';

const away: (() => Promise<void>)[] = [];
let old: Shooter;
let fresh: Shooter;
let season: Buffer;
/** What the old device says of each shooter. */
const results = new Map<string, Result>();

beforeAll(async () => {
  const later = (close: () => Promise<void>): unknown => away.push(close);
  [old, fresh] = await Promise.all([atBench('Old', later), atBench('Nele', later)]);
});
afterAll(async () => {
  await Promise.all(away.map((close) => close()));
});

/** The result of one shooter on a device. */
async function resultOf(shooter: Shooter, name: string): Promise<Result> {
  await shooter.visit('shooter');
  await shooter.follow(name);
  await shooter.sees(name);
  await shooter.visit('result');
  await shooter.sees(`${name}: what pressure does`);
  return readResult(shooter.page);
}

/** Chooses a file to bring in, by its content. */
async function choose(shooter: Shooter, name: string, content: string | Buffer): Promise<void> {
  await shooter.visit('files');
  await shooter.page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
}

/** The small words under the two large figures: the span, and after it what was shot. */
const small = ({ rates }: Result): string[][] => Object.values(rates).map(([, words]) => words.split(' · '));
const asShot = (result: Result): (string | undefined)[] => small(result).map(([, counted]) => counted);
const spans = (result: Result): number[] => small(result).flatMap(([span = '']) => numbersIn(span));

const numbersIn = (words: string): number[] =>
  [...words.replaceAll('−', '-').matchAll(/-?\d+/g)].map(([digits]) => Number(digits));

/** Whole points that differ by rounding at most. */
function expectNear(points: readonly number[], wanted: readonly number[]): void {
  expect(points).toHaveLength(wanted.length);
  for (const [at, one] of wanted.entries())
    expect(Math.abs((points[at] ?? NaN) - one)).toBeLessThanOrEqual(1);
}

/** What counts of a round in a list: the numbers, not what only the app itself knows of it. */
const counts = ({ rounds }: Result): (string | undefined)[] =>
  rounds.map((round) => /\d+ of \d+$/.exec(round)?.[0]);

test('a season saved as CSV gives the same figures on an empty device', async () => {
  await old.visit('shooter');
  await old.press('Load the demo season');
  await old.sees('Ines (demo)');
  for (const name of ['Ines (demo)', 'Tobi (demo)']) results.set(name, await resultOf(old, name));
  await old.visit('files');
  const { name, content } = await save(old, /^Save everyone as CSV/);
  season = content;
  expect(name).toMatch(/^loud-gym-\d{4}-\d\d-\d\d\.csv$/);
  expect(content.toString().split('\r\n')[0]).toBe(HEADER);

  await choose(fresh, 'season.csv', content);
  await fresh.page.getByText('season.csv can be taken. It would:').waitFor();
  await fresh.page.getByText('add 2 shooters: Ines (demo), Tobi (demo)').waitFor();
  await fresh.press('Yes, bring them in');
  await fresh.page
    .getByText(
      /They count in the results of Ines \(demo\) and Tobi \(demo\) from now on\. Nele stays at the bench\./,
    )
    .waitFor();
  await fresh.follow('To Tobi (demo)’s result');
  await fresh.sees('Tobi (demo): what pressure does');
  for (const [shooter, before] of results) {
    const after = await resultOf(fresh, shooter);
    expect(after).toMatchObject({ drop: before.drop, spots: before.spots });
    expect(asShot(after)).toEqual(asShot(before));
    expect(counts(after)).toEqual(counts(before));
    // A record file holds neither ingredients nor pairs, which move the drop by a fraction of a point.
    expect(after.headline.replaceAll(/\d+/g, '')).toBe(before.headline.replaceAll(/\d+/g, ''));
    expectNear(numbersIn(after.headline), numbersIn(before.headline));
    expectNear(spans(after), spans(before));
  }
});

test('the report without a screen says the same', async () => {
  await old.visit('files');
  const { path } = await save(old, /^Save everyone as CSV/);
  const { stdout } = await promisify(execFile)('npm', ['run', '--silent', 'report', '--', path], {
    cwd: root,
  });
  const report = JSON.parse(stdout) as Report;
  expect(report.shooters.map(({ name }) => name)).toEqual([...results.keys()]);
  for (const { name, relaxed, pressured, matched, drop } of report.shooters) {
    const screen = results.get(name);
    expect(screen?.rates['relaxed']?.[1]).toContain(`${relaxed.makes} of ${relaxed.attempts}`);
    expect(screen?.rates['pressured']?.[1]).toContain(`${pressured.makes} of ${pressured.attempts}`);
    expect(numbersIn(screen?.drop ?? '')).toEqual(
      [matched?.points, matched?.low, matched?.high].map((points) => Math.round(points ?? 1e9)),
    );
    expectNear(
      // Before them stands the number of weeks.
      numbersIn(screen?.headline ?? '').slice(-3),
      [drop?.points, drop?.low, drop?.high].map((points) => Math.round(points ?? 1e9)),
    );
  }
});

test('the same file a second time writes nothing', async () => {
  const before = (await copyLog(fresh)).events.length;
  await choose(fresh, 'season again.csv', season);
  await fresh.page.getByText('There is nothing new in this file.').waitFor();
  expect(await fresh.button('Yes, bring them in').count()).toBe(0);
  await fresh.press('Close');
  expect((await copyLog(fresh)).events).toHaveLength(before);
});

test('a bad file is shown row, column and reason, and writes nothing', async () => {
  const before = (await copyLog(fresh)).events.length;
  const rows = [
    HEADER,
    '2026-11-24,1,1,relaxed,Threes,top,catch,0,3,5,2,Nele,',
    '2026-11-24,1,1,relaxed,Threes,left-wing,catch,0,7,5,2,Nele,',
    '2026-11-31,1,2,excited,Threes,top,catch,25,3,5,4,Nele,',
    '2026-11-24,1,3,pressured,Threes,top,hook,25,3,5,11,Nele,',
  ];
  await choose(fresh, 'bad.csv', rows.join('\n'));
  await fresh.page.getByText('bad.csv was not taken. Nothing was written.').waitFor();
  const faults = await fresh.page
    .getByRole('alert')
    .locator('tbody tr')
    .evaluateAll((found) =>
      found.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)),
    );
  expect(faults).toEqual([
    ['3', 'makes', '7 makes of 5 attempts cannot be.'],
    ['4', 'date', expect.stringContaining('2026-11-31')],
    ['4', 'condition', expect.stringContaining('excited')],
    ['5', 'shot', expect.stringContaining('hook')],
    ['5', 'nerves', expect.stringContaining('11')],
  ]);
  await choose(fresh, 'season.xlsx', 'PK\u0003\u0004');
  await fresh.page.getByText(/This is a spreadsheet, not a CSV file\./).waitFor();
  expect((await copyLog(fresh)).events).toHaveLength(before);
});

test('the empty form, filled in by hand, is taken', async () => {
  await fresh.visit('files');
  const { content } = await save(fresh, 'Download the empty form');
  const filled = `${content.toString()}${[
    '2026-11-24,evening,1,relaxed,Threes,left-corner,catch,0,4,5,2,Nele,"warm, and ""loose"""',
    '2026-11-24,evening,1,relaxed,Threes,top,catch,0,3,5,2,Nele,"warm, and ""loose"""',
    '2026-11-24,evening,2,pressured,Threes,left-corner,catch,10,2,5,6,Nele,',
    '2026-11-24,evening,2,pressured,Threes,top,catch,10,2,5,6,Nele,',
  ].join('\r\n')}`;
  await choose(fresh, 'from paper.csv', filled);
  await fresh.press('Yes, bring them in');
  await fresh.page.getByText('2 rounds brought in. They count in the results of Nele from now on.').waitFor();
  await fresh.follow('To Nele’s result');
  await fresh.sees('Nele: what pressure does');
  const { rates, rounds } = await readResult(fresh.page);
  expect(rates['relaxed']?.[1]).toContain('7 of 10');
  expect(rates['pressured']?.[1]).toContain('4 of 10');
  expect(rounds).toHaveLength(2);
  expect(rounds.join('\n')).toContain('warm, and "loose"');
});
