import type { NewId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import { EMPTY_BOOK, type Book, type Round } from '../log/book.ts';
import { readCsv } from '../log/csvRead.ts';
import { stamp } from '../log/facts.ts';
import { foldAll } from '../log/fold.ts';
import { planImport } from '../log/importRounds.ts';
import { cellsOf, type CellPair, type DropEstimate } from '../stats/drop.ts';
import { evidenceOf, LEAST_PRESSURED, LEAST_SESSIONS, reading, READING_LEVEL } from '../stats/reading.ts';
import { SIMPLE_LEVEL, summaryOf, type Rated, type Summary } from '../stats/summary.ts';

/* The result without the screen: a record file in, numbers out. Percentages and points have two decimals. */

/** Makes of attempts; the make percentage with its interval, null without an attempt. */
export interface ReportRate {
  readonly makes: number;
  readonly attempts: number;
  readonly percent: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Relaxed minus pressured in percentage points: positive = worse under pressure. */
export interface ReportDrop {
  readonly points: number;
  readonly low: number;
  readonly high: number;
}

export interface ReportFigures {
  /** 90 % interval. */
  readonly relaxed: ReportRate;
  readonly pressured: ReportRate;
  /** Like with like: shooter, spot and kind of shot; 90 % interval. Null where nothing was shot both ways. */
  readonly drop: ReportDrop | null;
  /** All shots thrown together, Newcombe's method 10; 95 % interval. Null where a condition has no shot. */
  readonly simple: ReportDrop | null;
  /** What a reader should know about these numbers, in plain sentences. */
  readonly notes: readonly string[];
}

export interface ShooterReport extends ReportFigures {
  readonly name: string;
  readonly rounds: number;
  /** What may be said: `none` = too early, else a drop, a gain, the same, or unclear. */
  readonly verdict: 'none' | 'drop' | 'gain' | 'same' | 'unclear';
}

export interface Report extends ReportFigures {
  readonly rounds: number;
  /** In percent: how sure the intervals are. */
  readonly levels: { readonly rates: number; readonly drop: number; readonly simple: number };
  /** By name. */
  readonly shooters: readonly ShooterReport[];
}

/**
 * The report on a record file. Matching is done inside each shooter, so that a better shooter's relaxed shots are
 * never held against another's pressured ones. The order of the rows changes nothing.
 *
 * @throws CsvError with row, column and reason where the file is not a record file
 */
export function reportOf(csv: string): Report {
  const book = bookOf(csv);
  const rounds = [...book.rounds.values()];
  const strata: CellPair[] = [];
  const shooters: ShooterReport[] = [];
  for (const { id, name } of book.shooters.values()) {
    const own = rounds.filter((round) => round.shooter === id);
    // In an order of their own: sums of fractions depend on it in the last digit.
    const cells = [...cellsOf(own)].toSorted(([a], [b]) => byText(a, b)).map(([, cell]) => cell);
    strata.push(...cells);
    shooters.push(shooterReport(name, own, cells));
  }
  const { notes, ...figures } = figuresOf(summaryOf(strata));
  const level = Math.round(100 * READING_LEVEL);
  return {
    ...figures,
    rounds: rounds.length,
    levels: { rates: level, drop: level, simple: Math.round(100 * SIMPLE_LEVEL) },
    shooters,
    notes,
  };
}

/** The file as a book, as importing it into an empty log would leave it. */
function bookOf(csv: string): Book {
  // Sorted, so that neither the order of the rows nor of the shooters can be seen in the result.
  const rounds = readCsv(csv).toSorted((a, b) => byText(a.shooter, b.shooter));
  let made = 0;
  const newId: NewId = () => `file-${(made += 1)}`;
  const { facts } = planImport(EMPTY_BOOK, rounds, newId, {
    hand: 'right',
    rules: 'FIBA',
    units: 'metric',
  });
  return foldAll(EMPTY_BOOK, stamp(facts, { at: 0, zone: 0, device: 'report', newId }));
}

function shooterReport(name: string, rounds: readonly Round[], cells: readonly CellPair[]): ShooterReport {
  const summary = summaryOf(cells);
  const evidence = evidenceOf(rounds);
  const { kind } = reading(summary.drop, evidence);
  const { notes, ...figures } = figuresOf(summary);
  const early =
    `Too early for a verdict: that takes ${LEAST_PRESSURED} pressured shots that can be matched and ` +
    `${LEAST_SESSIONS} sessions with both conditions; here there are ${evidence.pressured.attempts} and ${evidence.sessions}.`;
  return {
    name,
    rounds: rounds.length,
    ...figures,
    verdict: kind,
    notes: kind === 'none' && summary.drop ? [...notes, early] : notes,
  };
}

function figuresOf(summary: Summary): ReportFigures {
  const { relaxed, pressured, drop, simple } = summary;
  return {
    relaxed: rateOf(relaxed),
    pressured: rateOf(pressured),
    drop: drop && dropOf(drop),
    simple: simple && dropOf(simple),
    notes: notesOn(summary),
  };
}

function notesOn({ relaxed, pressured, drop }: Summary): string[] {
  if (relaxed.attempts === 0) return ['There is no relaxed shot, so there is nothing to compare with.'];
  if (pressured.attempts === 0) return ['There is no pressured shot, so there is nothing to compare with.'];
  if (!drop) {
    return [
      'No spot and kind of shot was shot both relaxed and pressured by the same shooter, so the drop cannot be told.',
    ];
  }
  const { leftOut } = drop;
  if (leftOut.relaxed + leftOut.pressured === 0) return [];
  return [
    `Left out of the drop: ${leftOut.relaxed} relaxed and ${leftOut.pressured} pressured attempts, whose spot and ` +
      'kind of shot were seen in one condition alone.',
  ];
}

function rateOf({ makes, attempts, rate }: Rated): ReportRate {
  return {
    makes,
    attempts,
    percent: rate && hundredths(100 * rate.p),
    low: rate && hundredths(100 * rate.low),
    high: rate && hundredths(100 * rate.high),
  };
}

function dropOf({ points, low, high }: DropEstimate): ReportDrop {
  return { points: hundredths(points), low: hundredths(low), high: hundredths(high) };
}

/** Two decimals; never −0. */
function hundredths(value: number): number {
  return Math.round(100 * value) / 100 + 0;
}
