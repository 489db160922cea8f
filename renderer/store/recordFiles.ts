import type { ShooterId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import type { Round } from '../log/book.ts';
import { COLUMNS, CsvError, type CsvFault } from '../log/csvColumns.ts';
import { csvEncoding } from '../log/csvEncoding.ts';
import type { FileRound } from '../log/csvRounds.ts';
import { planImport, type Import, type Retold } from '../log/importRounds.ts';
import type { Gym } from './gymStore.ts';
import { shootersOf } from './shooterActions.ts';
import { todayAt } from './today.ts';

/* Records out of the log and into it. The CSV code is fetched only when a file is asked for. */

/** A file ready to be saved. */
export interface SavedFile {
  readonly name: string;
  readonly type: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

const CSV = 'text/csv;charset=utf-8';

/** The records as a CSV file. @param whose one shooter, or null for everyone on this device */
export async function recordsFile(gym: Gym, whose: ShooterId | null): Promise<SavedFile> {
  const { writeCsv } = await import('../log/csvWrite.ts');
  const { book } = gym.store.getState();
  const name = whose === null ? '' : `${forFileName(book.shooters.get(whose)?.name ?? '')}-`;
  return {
    name: `loud-gym-${name}${todayAt(gym)}.csv`,
    type: CSV,
    content: writeCsv(book, roundsToSave(gym, whose)),
  };
}

/** The rounds a CSV file would hold, by day. Whoever was taken off the screens stays out of it. */
export function roundsToSave(gym: Gym, whose: ShooterId | null): Round[] {
  const { book } = gym.store.getState();
  const shown = new Set(shootersOf(book).map((shooter) => shooter.id));
  return [...book.rounds.values()]
    .filter((round) => (whose === null ? shown.has(round.shooter) : round.shooter === whose))
    .toSorted((a, b) => byText(a.date, b.date));
}

/** A record file without a row, to be filled in by hand. */
export function emptyForm(): SavedFile {
  return { name: 'loud-gym-empty-form.csv', type: CSV, content: `${COLUMNS.join(',')}\r\n` };
}

/** Everything, as one SQLite file. @throws StorageError where the log cannot be read */
export async function wholeCopy(gym: Gym): Promise<SavedFile> {
  const content = await gym.exportFile();
  return { name: `loud-gym-${todayAt(gym)}.sqlite`, type: 'application/vnd.sqlite3', content };
}

/** What a chosen file holds: rounds, or the faults that keep all of it out. */
export type Reading =
  | { readonly sound: true; readonly rounds: readonly FileRound[] }
  | { readonly sound: false; readonly faults: readonly CsvFault[] };

/** More than any season on paper. */
const MOST_BYTES = 20_000_000;

/** Reads a record file. Nothing is written. */
export async function readRecords(bytes: Uint8Array): Promise<Reading> {
  if (bytes.length > MOST_BYTES)
    return wholeFile('The file is larger than 20 MB. Split it, and bring the parts in.');
  try {
    const { readCsv } = await import('../log/csvRead.ts');
    const text = new TextDecoder(csvEncoding(bytes), { fatal: true }).decode(bytes);
    return { sound: true, rounds: readCsv(text) };
  } catch (error) {
    if (error instanceof CsvError) return { sound: false, faults: error.faults };
    // What a fatal decoder throws.
    if (error instanceof TypeError) {
      return wholeFile('The letters in this file cannot be read. Save it again as CSV UTF-8.');
    }
    throw error;
  }
}

function wholeFile(reason: string): Reading {
  return { sound: false, faults: [{ row: 0, column: null, reason }] };
}

/** What bringing these rounds in would do, as the log stands now. */
export function planRecords(gym: Gym, rounds: readonly FileRound[], retold: Retold): Import {
  const { book, settings } = gym.store.getState();
  const like = settings.shooter === null ? undefined : book.shooters.get(settings.shooter);
  return planImport(
    book,
    rounds,
    gym.moment().newId,
    { hand: 'right', rules: like?.rules ?? 'FIBA', units: like?.units ?? 'metric' },
    retold,
  );
}

/** Writes the plan into the log, all of it or nothing; on an empty device the file's first shooter comes to the bench. */
export async function bringIn(gym: Gym, plan: Import): Promise<boolean> {
  const saved = await gym.dispatch(plan.facts);
  const { book, settings } = gym.store.getState();
  if (saved && settings.shooter === null) gym.set({ shooter: shootersOf(book)[0]?.id ?? null });
  return saved;
}

/** A name in letters and digits that every file system takes. */
export function forFileName(name: string, nameless = 'shooter'): string {
  const plain = name
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return plain === '' ? nameless : plain.slice(0, 40);
}
