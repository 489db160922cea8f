import { beforeEach, describe, expect, it } from 'vitest';

import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import type { EventLog } from '../../renderer/store/ports.ts';
import {
  bringIn,
  emptyForm,
  planRecords,
  readRecords,
  recordsFile,
  roundsToSave,
  wholeCopy,
} from '../../renderer/store/recordFiles.ts';
import { removeShooter, shootersOf } from '../../renderer/store/shooterActions.ts';
import { file, HEADER, row } from '../log/csvFiles.ts';
import { fakeWorld } from './fakeWorld.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);

/** A log that is always quick and always durable. */
const quickLog = (): EventLog => ({
  open: () => Promise.resolve([]),
  append: () => Promise.resolve(),
  exportFile: () => Promise.resolve(new Uint8Array([7])),
  onLost: () => undefined,
});

let gym: Gym;
beforeEach(() => {
  gym = createGym(fakeWorld(quickLog()));
});

async function bring(text: string): Promise<boolean> {
  const reading = await readRecords(utf8(text));
  if (!reading.sound) throw new Error('the file should be sound');
  return bringIn(gym, planRecords(gym, reading.rounds, 'replace'));
}
const ofName = (name: string) =>
  shootersOf(gym.store.getState().book).find((shooter) => shooter.name === name)?.id;

describe('records in', () => {
  it('come in on an empty device, and their shooter comes to the bench', async () => {
    expect(await bring(file(row(), row({ shooter: 'Tobi' })))).toBe(true);
    const { book, settings } = gym.store.getState();
    expect(book.rounds.size).toBe(2);
    expect(settings.shooter).toBe(ofName('Ines'));
  });
  it('leave the bench to whoever sits there, and give new shooters their court', async () => {
    await bring(file(row()));
    const ines = ofName('Ines') ?? '';
    await gym.dispatch([
      {
        type: 'ShooterChanged',
        body: { shooter: ines, name: 'Ines', hand: 'left', rules: 'NFHS', units: 'feet' },
      },
    ]);
    await bring(file(row({ shooter: 'Tobi' })));
    const { book, settings } = gym.store.getState();
    expect(settings.shooter).toBe(ines);
    expect(book.shooters.get(ofName('Tobi') ?? '')).toMatchObject({
      hand: 'right',
      rules: 'NFHS',
      units: 'feet',
    });
  });
  it('are refused with their faults, and nothing is planned', async () => {
    expect(await readRecords(utf8(file(row({ makes: '9' }))))).toMatchObject({
      sound: false,
      faults: [{ row: 2, column: 'makes' }],
    });
  });
  it.each([
    ['UTF-16, little end first', [0xff, 0xfe], (code: number) => [code & 0xff, code >> 8]],
    ['UTF-16, big end first', [0xfe, 0xff], (code: number) => [code >> 8, code & 0xff]],
  ] as const)('are read from %s, as spreadsheets save it', async (_what, mark, split) => {
    const text = file(row({ shooter: 'Käthe' }));
    const bytes = Uint8Array.from([
      ...mark,
      ...text.split('').flatMap((letter) => split(letter.charCodeAt(0))),
    ]);
    expect(await readRecords(bytes)).toMatchObject({ sound: true, rounds: [{ shooter: 'Käthe' }] });
  });
  it.each([
    ['in an old encoding', Uint8Array.from([...utf8(file(row())), 0xe4]), /CSV UTF-8/],
    ['that are a spreadsheet', Uint8Array.of(0x50, 0x4b, 3, 4), /Save as/],
    ['without end', new Uint8Array(20_000_001), /larger than 20 MB/],
    ['of nothing', new Uint8Array(), /must name the columns/],
  ])('%s are refused with a sentence that helps', async (_what, bytes, sentence) => {
    const reading = await readRecords(bytes);
    expect(reading.sound).toBe(false);
    expect(reading.sound ? '' : reading.faults[0]?.reason).toMatch(sentence);
  });
});

describe('records out', () => {
  beforeEach(async () => {
    await bring(file(row({ date: '2026-11-26' }), row(), row({ shooter: 'Tobi Ñandú!' })));
  });

  it('are a CSV file of everyone, by day, under a dated name', async () => {
    const saved = await recordsFile(gym, null);
    expect(saved).toMatchObject({ name: 'loud-gym-2026-11-25.csv', type: 'text/csv;charset=utf-8' });
    expect(saved.content).toBe(file(row(), row({ shooter: 'Tobi Ñandú!' }), row({ date: '2026-11-26' })));
  });
  it('or of one shooter, whose name any file system takes', async () => {
    const saved = await recordsFile(gym, ofName('Tobi Ñandú!') ?? '');
    expect(saved.name).toBe('loud-gym-tobi-ñandú-2026-11-25.csv');
    expect(saved.content).toBe(file(row({ shooter: 'Tobi Ñandú!' })));
  });
  it('leave out whoever was taken off the screens', async () => {
    await removeShooter(gym, ofName('Ines') ?? '');
    expect(roundsToSave(gym, null)).toHaveLength(1);
  });
  it('come in again as what is there already', async () => {
    const { content } = await recordsFile(gym, null);
    const reading = await readRecords(utf8(String(content)));
    expect(reading.sound).toBe(true);
    const plan = planRecords(gym, reading.sound ? reading.rounds : [], 'replace');
    expect(plan).toMatchObject({ facts: [], rounds: 0, doubles: 3 });
  });
});

describe('other files', () => {
  it('an empty form is the header and nothing else', () => {
    expect(emptyForm()).toMatchObject({ name: 'loud-gym-empty-form.csv', content: `${HEADER}\r\n` });
  });
  it('a copy of everything is the log’s own file', async () => {
    expect(await wholeCopy(gym)).toEqual({
      name: 'loud-gym-2026-11-25.sqlite',
      type: 'application/vnd.sqlite3',
      content: new Uint8Array([7]),
    });
  });
});
