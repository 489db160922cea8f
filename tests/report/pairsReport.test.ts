import { describe, expect, it } from 'vitest';

import { addDays } from '../../renderer/basics/days.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { writeCsv } from '../../renderer/log/csvWrite.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { fourDigits, hundredths } from '../../renderer/report/round.ts';
import { reportOf } from '../../renderer/report/report.ts';
import { studyOf } from '../../renderer/stats/study.ts';
import { recordFile, type RecordRow } from '../tools/records.ts';

/** Days with a pair each: makes of 20 relaxed and pressured. */
function pairs(
  count: number,
  makes: readonly [number, number],
  first: (day: number) => 'relaxed' | 'pressured',
) {
  return Array.from({ length: count }, (_, day): RecordRow[] => {
    const date = addDays('2026-10-05', day);
    const [one, two] = first(day) === 'relaxed' ? [1, 2] : [2, 1];
    return [
      { date, round: one, makes: makes[0], attempts: 20 },
      { date, round: two, condition: 'pressured', makes: makes[1], attempts: 20 },
    ];
  });
}

const inTurn = (day: number) => (day % 2 === 0 ? 'relaxed' : 'pressured');
const told = (days: readonly RecordRow[][]) => reportOf(recordFile(days.flat()));

describe('pairs in the report', () => {
  it('are those of the log, in a file the app wrote', () => {
    const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
    const report = reportOf(writeCsv(book, book.rounds.values()));
    for (const { id, name } of book.shooters.values()) {
      const rounds = [...book.rounds.values()].filter(({ shooter }) => shooter === id);
      const { study } = studyOf(rounds);
      const found = report.shooters.find((shooter) => shooter.name === name);
      expect(found?.pairs).toMatchObject({
        n: study.pairs.n,
        mean: hundredths(study.pairs.mean ?? NaN),
        se: hundredths(study.pairs.se ?? NaN),
        p: fourDigits(study.pairs.p ?? NaN),
        leftOut: 0,
      });
      expect(found?.evidence).toMatchObject({
        e: fourDigits(study.pairEvidence.e),
        highest: fourDigits(study.pairEvidence.highest),
      });
      // A file knows no level of pressure, no ingredients and no single shots: the model says nearly the same.
      if (study.index.kind === 'none') throw new Error(study.index.reason);
      expect(Math.abs((found?.drop?.points ?? NaN) - study.index.overall.points)).toBeLessThan(0.5);
    }
  });

  it('carry the exact test, and the word that only a coin makes it right', () => {
    const report = told(pairs(6, [12, 9], inTurn));
    // Six differences of 3 of 20: the smallest p there is, 2^-6.
    expect(report.pairs).toEqual({ n: 6, mean: 15, se: 0, p: 0.01563, relaxedFirst: 3, leftOut: 0 });
    expect(report.notes.join('\n')).toContain('right only if a coin did');
    expect(report.notes.join('\n')).not.toContain('seldom');
  });

  it.each([
    ['always', 'relaxed', 5],
    ['never', 'pressured', 0],
  ] as const)('come with a warning where the relaxed round %s came first', (_, first, count) => {
    const { notes } = told(pairs(5, [12, 9], () => first));
    expect(notes.join('\n')).toContain(`came first in ${count} of 5 pairs, which a coin seldom does`);
    const four = told(pairs(4, [12, 9], () => first));
    expect(four.notes.join('\n')).not.toContain('seldom');
  });

  it('are not counted for the verdict where the order was always the same', () => {
    // Much at first, nothing later: the bet once stood above 20, the whole record does not show a clear drop.
    const season = (first: typeof inTurn) => {
      const days = [...pairs(10, [14, 9], first), ...pairs(16, [11, 12], first)];
      return told(days.map((rows, day) => rows.map((row) => ({ ...row, date: addDays('2026-10-05', day) }))));
    };
    expect(season(inTurn).evidence?.highest).toBeGreaterThan(20);
    expect(season(inTurn).verdict).toBe('clear drop');
    expect(season(() => 'relaxed').evidence?.highest).toBeGreaterThan(20);
    expect(season(() => 'relaxed').verdict).not.toBe('clear drop');
  });

  it('are to be believed where they and the model differ, and then it says so', () => {
    // The pairs show nothing; rounds of another length at the end of the day are shot badly.
    const days = pairs(16, [11, 11], inTurn).map((rows, day): RecordRow[] => [
      ...rows.map((row) => (day % 4 < 2 ? row : { ...row, makes: row.condition === 'pressured' ? 12 : 10 })),
      ...[3, 4, 5].map((round): RecordRow => ({
        date: addDays('2026-10-05', day),
        round,
        condition: 'pressured',
        makes: 4,
        attempts: 25,
      })),
    ]);
    const report = told(days);
    expect(report.pairs).toMatchObject({ n: 16, leftOut: 48 });
    expect(report.disagrees).toBe(true);
    expect(report.notes.join('\n')).toContain('Pairs and model tell different stories');
  });

  it('say so where there are none', () => {
    const rows: RecordRow[] = [
      { round: 1, makes: 10, attempts: 20 },
      { round: 2, condition: 'pressured', makes: 10, attempts: 25 },
    ];
    const report = reportOf(recordFile(rows));
    expect(report.pairs).toEqual({ n: 0, mean: null, se: null, p: null, relaxedFirst: 0, leftOut: 1 });
    expect(report.notes.join('\n')).toContain('there are no pairs');
  });
});

describe('printed numbers', () => {
  it('are short, never −0 and never endless', () => {
    expect(Object.is(hundredths(-0.001), 0)).toBe(true);
    expect(fourDigits(0.000015259)).toBe(0.00001526);
    expect(JSON.stringify(fourDigits(Infinity))).toBe('8.988e+307');
  });
});
