import { byText } from '../basics/order.ts';
import type { Round } from '../log/book.ts';
import { cellsOf, type CellPair, type DropEstimate } from '../stats/drop.ts';
import { type Rated, type Summary, summaryOf } from '../stats/summary.ts';
import { hundredths } from './round.ts';

/* What can be counted and compared without a model. */

/** Makes of attempts; the make percentage with its interval, null without an attempt. */
export interface ReportRate {
  readonly makes: number;
  readonly attempts: number;
  readonly percent: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Relaxed minus pressured in percentage points: positive = worse under pressure. */
export interface ReportSpan {
  readonly points: number;
  readonly low: number;
  readonly high: number;
}

export interface SimpleFigures {
  /** 90 % interval. */
  readonly relaxed: ReportRate;
  readonly pressured: ReportRate;
  /** Like with like: shooter, spot and kind of shot; 90 % interval. Null where nothing was shot both ways. */
  readonly matched: ReportSpan | null;
  /** All shots thrown together, Newcombe's method 10; 95 % interval. Null where a condition has no shot. */
  readonly simple: ReportSpan | null;
}

/** A shooter's cells in an order of their own: sums of fractions depend on it in the last digit. */
export function sortedCells(rounds: Iterable<Round>): CellPair[] {
  return [...cellsOf(rounds)].toSorted(([a], [b]) => byText(a, b)).map(([, cell]) => cell);
}

/** @param cells of one shooter, or of several: like is compared with like inside a shooter */
export function simpleFigures(cells: readonly CellPair[]): { figures: SimpleFigures; summary: Summary } {
  const summary = summaryOf(cells);
  const { relaxed, pressured, drop, simple } = summary;
  const figures = {
    relaxed: rateOf(relaxed),
    pressured: rateOf(pressured),
    matched: drop && spanOf(drop),
    simple: simple && spanOf(simple),
  };
  return { figures, summary };
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

function spanOf({ points, low, high }: DropEstimate): ReportSpan {
  return { points: hundredths(points), low: hundredths(low), high: hundredths(high) };
}
