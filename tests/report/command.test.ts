import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { GOLDEN, recordFile } from '../tools/records.ts';

const root = join(import.meta.dirname, '../..');
const PATIENCE = 60_000;

interface Outcome {
  readonly code: number | string | null;
  readonly out: string;
  readonly err: string;
}

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loud-gym-report-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs the command as `npm run report` does, in the folder of the test's files. */
function report(...args: string[]): Promise<Outcome> {
  const command = [
    join(root, 'node_modules/tsx/dist/cli.mjs'),
    join(root, 'renderer/report/main.ts'),
    ...args,
  ];
  return new Promise((resolve) => {
    execFile(process.execPath, command, { cwd: folder }, (error, out, err) => {
      resolve({ code: error ? (error.code ?? null) : 0, out, err });
    });
  });
}

async function file(name: string, content: string | Uint8Array): Promise<string> {
  await writeFile(join(folder, name), content);
  return name;
}

describe('the report command', { timeout: PATIENCE }, () => {
  it('prints the report as JSON, and nothing else', async () => {
    const { code, out, err } = await report(await file('golden.csv', recordFile(GOLDEN, '\r\n')));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({
      relaxed: { makes: 15, attempts: 25 },
      pressured: { makes: 10, attempts: 25 },
      matched: { points: 20, low: -3.08, high: 40.31 },
      simple: { points: 20, low: -7.24, high: 43.47 },
      shooters: [{ name: 'Mo' }],
    });
  });

  it('gives the full model beside the simple figures, the same each time', async () => {
    const name = await file(
      'season.csv',
      recordFile([...GOLDEN, { round: 3, spot: 'free-throw', shot: 'free-throw', makes: 8, attempts: 10 }]),
    );
    const [once, again, seeded, line] = await Promise.all([
      report(name),
      report(name),
      report('--seed', '7', name),
      report(name, '--mix=free-throws'),
    ]);
    expect(again).toEqual(once);
    const told = JSON.parse(once.out) as Record<string, unknown>;
    expect(told).toMatchObject({
      mix: 'relaxed',
      drop: { points: expect.any(Number), sd: expect.any(Number), probability: expect.any(Number) },
      weeks: [{ week: '2026-W41', relaxed: expect.any(Number), pressured: expect.any(Number) }],
      pairs: { n: 1, mean: 20, p: 0.5 },
      evidence: { e: 1.602 },
      verdict: 'none',
      hyper: { day: expect.any(Number) },
    });
    expect(JSON.parse(seeded.out)).toMatchObject({ seed: 7 });
    expect(JSON.parse(line.out)).toMatchObject({ mix: 'free-throws', drop: null, relaxed: { attempts: 10 } });
  });

  it('is what npm run report runs, found from the folder it was called in', async () => {
    const name = await file('from-npm.csv', `\uFEFF${recordFile(GOLDEN)}`);
    const args = ['run', '--prefix', root, '--silent', 'report', '--', name];
    const out = await new Promise<string>((resolve, reject) => {
      execFile('npm', args, { cwd: folder, shell: process.platform === 'win32' }, (error, stdout) => {
        if (error) reject(error);
        else resolve(stdout);
      });
    });
    expect(JSON.parse(out)).toMatchObject({ matched: { points: 20 } });
  });

  it('places every fault by row and column', async () => {
    const bad = recordFile([
      ...GOLDEN,
      { round: 3, makes: 6, attempts: 5 },
      { round: 4, date: '2026-02-30' },
    ]);
    const { code, out, err } = await report(await file('bad.csv', bad));
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('bad.csv cannot be taken:');
    expect(err).toContain('Row 4, makes: 6 makes of 5 attempts cannot be.');
    expect(err).toContain('Row 5, date: "2026-02-30" is no calendar day.');
    expect(err).not.toContain('    at ');
  });

  it.each([
    ['no file named', [], 'Name one record file.'],
    ['two files named', ['a.csv', 'b.csv'], 'Name one record file.'],
    ['a file that is not there', ['nowhere.csv'], 'There is no file nowhere.csv.'],
    ['a folder', ['.'], '. cannot be read'],
    ['another mix', ['--mix', 'threes', 'a.csv'], '--mix is relaxed or free-throws, not "threes".'],
    ['no number', ['--seed', 'luck', 'a.csv'], '--seed is a whole number from 0 to 4294967295, not "luck".'],
    ['too high a number', ['--seed=4294967296', 'a.csv'], 'not "4294967296"'],
    ['an option without its word', ['a.csv', '--mix'], "Option '--mix <value>' argument missing"],
    ['an unknown option', ['--wrong'], "Unknown option '--wrong'"],
  ])('says what is wrong: %s', async (_, args, words) => {
    const { code, out, err } = await report(...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(words);
  });

  it('does not guess at bytes in another encoding', async () => {
    const name = await file('latin.csv', Buffer.from(recordFile([{ note: 'müde' }]), 'latin1'));
    const { code, out, err } = await report(name);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('not text in UTF-8');
  });

  it('reads UTF-16, as the app does', async () => {
    const bytes = Buffer.from(`\uFEFF${recordFile(GOLDEN)}`, 'utf16le');
    const { code, out } = await report(await file('utf-16.csv', bytes));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ matched: { points: 20 } });
  });

  it('knows a spreadsheet’s own file', async () => {
    const { code, err } = await report(await file('sheet.csv', Uint8Array.of(0x50, 0x4b, 3, 4)));
    expect(code).toBe(1);
    expect(err).toContain('choose “Save as” and then CSV');
  });

  it('explains itself', async () => {
    const { code, out } = await report('--help');
    expect(code).toBe(0);
    expect(out).toContain('npm run --silent report -- FILE.csv');
  });
});
