import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { CsvError } from '../../renderer/log/csvColumns.ts';
import { writeCsv } from '../../renderer/log/csvWrite.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { reportOf } from '../../renderer/report/report.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { GOLDEN, recordFile, type RecordRow } from '../tools/records.ts';

const two = (value: number) => Math.round(100 * value) / 100;

/** Two shooters with different mixes of spots in the two conditions. */
const MIXED: readonly RecordRow[] = [
  { shooter: 'Mo', round: 1, spot: 'top', makes: 12, attempts: 30 },
  { shooter: 'Mo', round: 1, spot: 'left-corner', makes: 9, attempts: 20 },
  { shooter: 'Mo', round: 2, condition: 'pressured', spot: 'top', makes: 9, attempts: 30 },
  { shooter: 'Mo', round: 2, condition: 'pressured', spot: 'right-wing', makes: 4, attempts: 10 },
  { shooter: 'Bea', session: 'b', round: 1, spot: 'top', makes: 18, attempts: 25 },
  { shooter: 'Bea', session: 'b', round: 2, condition: 'pressured', spot: 'top', makes: 16, attempts: 25 },
  { shooter: 'Bea', session: 'b', round: 3, spot: 'free-throw', shot: 'free-throw', makes: 7, attempts: 8 },
];

describe('the report on a record file', () => {
  it('gives the worked case: 15 of 25 relaxed, 10 of 25 pressured', () => {
    // Newcombe, Statistics in Medicine 17:873-890 (1998), method 10; values computed from the formula.
    const report = reportOf(recordFile(GOLDEN));
    expect(report.relaxed).toMatchObject({ makes: 15, attempts: 25, percent: 60 });
    expect(report.pressured).toMatchObject({ makes: 10, attempts: 25, percent: 40 });
    expect(report.matched).toEqual({ points: 20, low: -3.08, high: 40.31 });
    expect(report.simple).toEqual({ points: 20, low: -7.24, high: 43.47 });
    expect(report.levels).toEqual({ rates: 90, drop: 90, matched: 90, simple: 95 });
    expect(report.shooters).toMatchObject([{ name: 'Mo', rounds: 2, verdict: 'none' }]);
    expect(report.shooters[0]?.notes.join()).toContain('here there are 25 and 1');
  });

  it('is positive where pressure costs and negative where it helps', () => {
    const turned = GOLDEN.map((row) => ({
      ...row,
      condition: row.condition === 'relaxed' ? 'pressured' : 'relaxed',
    }));
    expect(reportOf(recordFile(turned)).matched).toEqual({ points: -20, low: -40.31, high: 3.08 });
  });

  it('compares every shooter with themselves alone', () => {
    // A good shooter relaxed, a poor one pressured: thrown together that would look like a drop of 50 points.
    const strangers = [
      { shooter: 'Good', session: 'g', makes: 20, attempts: 25 },
      { shooter: 'Poor', session: 'p', condition: 'pressured', makes: 7, attempts: 25 },
    ];
    const report = reportOf(recordFile(strangers));
    expect(report.matched).toBeNull();
    expect(report.simple?.points).toBe(52);
    expect(report.notes).toEqual([
      expect.stringContaining('the drop cannot be told'),
      expect.stringContaining('see "shooters"'),
    ]);
    expect(report.shooters.map(({ notes }) => notes[0])).toEqual([
      'There is no pressured shot, so there is nothing to compare with.',
      'There is no relaxed shot, so there is nothing to compare with.',
    ]);
  });

  it('adds the shooters up, and says what was left out of the drop', () => {
    const report = reportOf(recordFile(MIXED));
    expect(report.relaxed).toMatchObject({ makes: 46, attempts: 83 });
    expect(report.pressured).toMatchObject({ makes: 29, attempts: 65 });
    expect(report.shooters.map(({ name }) => name)).toEqual(['Bea', 'Mo']);
    expect(report.shooters[0]?.matched?.points).toBe(8);
    expect(report.shooters[1]?.matched?.points).toBe(10);
    // Mantel-Haenszel weights 25·25/50 = 12.5 and 30·30/60 = 15.
    expect(report.matched?.points).toBe(two((12.5 * 8 + 15 * 10) / 27.5));
    expect(report.notes[0]).toBe(
      'Left out of the matched drop: 28 relaxed and 10 pressured attempts, whose spot and kind of shot were seen in one condition alone.',
    );
  });

  it('gives null and a sentence where a condition is missing', () => {
    const report = reportOf(recordFile(GOLDEN.slice(0, 1)));
    expect(report).toMatchObject({
      drop: null,
      matched: null,
      simple: null,
      pressured: { makes: 0, attempts: 0, percent: null, low: null, high: null },
      notes: ['There is no pressured shot, so there is nothing to compare with.'],
    });
  });

  it('refuses a round that stands there twice under two spellings of a name', () => {
    const twice = recordFile([...GOLDEN, ...GOLDEN.map((row) => ({ ...row, shooter: 'MO' }))]);
    expect(() => reportOf(twice)).toThrow(/Row 4, spot: top, catch stands in this round twice/);
  });
  it('knows one shooter under two spellings of a name', () => {
    const [relaxed = {}, pressured = {}] = GOLDEN;
    const report = reportOf(recordFile([relaxed, { ...pressured, shooter: 'mo' }]));
    expect(report.matched?.points).toBe(20);
    expect(report.shooters.map(({ name }) => name)).toEqual(['Mo']);
  });

  it('does not mind the order of the rows', () => {
    const expected = reportOf(recordFile(MIXED));
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...MIXED], { minLength: MIXED.length, maxLength: MIXED.length }),
        (rows) => {
          expect(reportOf(recordFile(rows))).toEqual(expected);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('does not mind it either where names are spelt in several ways', () => {
    const rows: RecordRow[] = [
      { round: 1, spot: 'Short  corner', makes: 6, attempts: 10 },
      { round: 2, spot: 'short corner', condition: 'pressured', makes: 4, attempts: 10 },
      { round: 3, spot: 'baseline', shooter: 'mo', makes: 3, attempts: 10 },
    ];
    const expected = reportOf(recordFile(rows));
    expect(expected.places.map(({ spot }) => spot)).toEqual(['Short  corner', 'baseline']);
    expect(expected.pairs?.n).toBe(1);
    expect(reportOf(recordFile(rows.toReversed()))).toEqual(expected);
  });

  it('reads line ends of every kind, and a byte order mark', () => {
    const expected = reportOf(recordFile(MIXED));
    for (const text of [
      recordFile(MIXED, '\r\n'),
      `\uFEFF${recordFile(MIXED)}`,
      recordFile(MIXED).trimEnd(),
    ]) {
      expect(reportOf(text)).toEqual(expected);
    }
  });

  it('agrees with the screen on what the app itself wrote', () => {
    const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
    const report = reportOf(writeCsv(book, book.rounds.values()));
    expect(report.shooters).toHaveLength(book.shooters.size);
    expect(report.rounds).toBe(book.rounds.size);
    for (const shooter of book.shooters.values()) {
      const figures = shooterFigures(book, shooter.id);
      const reported = report.shooters.find(({ name }) => name === shooter.name);
      expect(reported?.relaxed.makes).toBe(figures.relaxed.makes);
      expect(reported?.pressured.attempts).toBe(figures.pressured.attempts);
      expect(reported?.matched?.points).toBeCloseTo(figures.drop?.points ?? Number.NaN, 2);
      expect(reported?.matched?.low).toBeCloseTo(figures.drop?.low ?? Number.NaN, 2);
      expect(reported?.simple?.high).toBeCloseTo(figures.simple?.high ?? Number.NaN, 2);
    }
  });

  it('takes nothing of a file with a fault', () => {
    expect(() => reportOf(recordFile([...GOLDEN, { round: 3, makes: 6, attempts: 5 }]))).toThrow(CsvError);
    expect(() => reportOf('')).toThrow(CsvError);
  });
});
