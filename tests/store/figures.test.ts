import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { shooterFigures, type Figures } from '../../renderer/store/figures.ts';
import { bookFromFile, GOLDEN, recordFile, type RecordRow } from '../tools/records.ts';

const figuresFrom = (rows: readonly RecordRow[]): Figures => {
  const book = bookFromFile(recordFile(rows));
  const [shooter] = book.shooters.keys();
  return shooterFigures(book, shooter ?? '');
};

const pressured = (row: RecordRow): RecordRow => ({ ...row, condition: 'pressured' });

describe('the figures of a shooter', () => {
  it('are empty before the first round', () => {
    const figures = shooterFigures(EMPTY_BOOK, 'nobody');
    expect(figures).toMatchObject({
      drop: null,
      simple: null,
      spots: [],
      sessions: [],
      weeks: [],
      rounds: [],
    });
    expect(figures.relaxed).toEqual({ makes: 0, attempts: 0, rate: null });
    expect(figures.needs).toEqual({ pressured: 100, sessions: 4 });
  });

  it('give the worked case: 15 of 25 relaxed, 10 of 25 pressured', () => {
    // Newcombe, Statistics in Medicine 17:873-890 (1998), method 10; values computed from the formula.
    const { relaxed, drop, simple, needs } = figuresFrom(GOLDEN);
    expect(relaxed.rate).toMatchObject({ p: 0.6, method: 'jeffreys' });
    expect(drop?.low).toBeCloseTo(-3.08, 2);
    expect(drop?.high).toBeCloseTo(40.31, 2);
    expect(simple?.low).toBeCloseTo(-7.24, 2);
    expect(simple?.high).toBeCloseTo(43.47, 2);
    expect(needs).toEqual({ pressured: 75, sessions: 3 });
  });

  it('leave out of the drop what was shot one way only', () => {
    const { leftOut, drop, simple } = figuresFrom([
      ...GOLDEN,
      { round: 3, spot: 'free-throw', shot: 'free-throw', makes: 9, attempts: 10 },
      pressured({ round: 4, spot: 'top', shot: 'dribble-left', makes: 1, attempts: 6 }),
    ]);
    expect(leftOut).toEqual({ relaxed: 10, pressured: 6 });
    expect(drop?.points).toBeCloseTo(20, 10);
    expect(simple?.points).toBeCloseTo(100 * (24 / 35 - 11 / 31), 10);
  });

  it('leave everything out where nothing matches', () => {
    const { leftOut, drop } = figuresFrom([
      { round: 1, spot: 'top', makes: 3, attempts: 5 },
      pressured({ round: 2, spot: 'left-wing', makes: 2, attempts: 5 }),
    ]);
    expect(drop).toBeNull();
    expect(leftOut).toEqual({ relaxed: 5, pressured: 5 });
  });

  it('keep the kinds of shot from one spot apart, and put them together again', () => {
    const { spots } = figuresFrom([
      { round: 1, shot: 'catch', makes: 10, attempts: 20 },
      { round: 1, shot: 'dribble-left', makes: 2, attempts: 10 },
      pressured({ round: 2, shot: 'catch', makes: 8, attempts: 20 }),
    ]);
    expect(spots).toHaveLength(1);
    expect(spots[0]).toMatchObject({ spot: 'top', relaxed: { makes: 12, attempts: 30 } });
    expect(spots[0]?.drop?.points).toBeCloseTo(10, 10);
    expect(spots[0]?.kinds).toMatchObject([
      { shot: 'catch', relaxed: { attempts: 20 } },
      { shot: 'dribble-left', drop: null },
    ]);
  });

  it('go by session and by ISO week, oldest first, weeks without shots left out', () => {
    // ISO 8601: 2026-12-31 and 2027-01-03 lie in week 53 of 2026, 2027-01-04 in week 1 of 2027.
    const { sessions, weeks } = figuresFrom([
      { date: '2027-01-20', session: 'late', round: 1, makes: 4, attempts: 5 },
      { date: '2026-12-31', session: 'old', round: 1, makes: 1, attempts: 5 },
      pressured({ date: '2027-01-03', session: 'mid', round: 1, makes: 2, attempts: 5 }),
      { date: '2027-01-04', session: 'new', round: 1, makes: 3, attempts: 5 },
    ]);
    expect(sessions.map(({ label, week }) => [label, week])).toEqual([
      ['old', '2026-W53'],
      ['mid', '2026-W53'],
      ['new', '2027-W01'],
      ['late', '2027-W03'],
    ]);
    expect(weeks.map(({ key, date }) => [key, date])).toEqual([
      ['2026-W53', '2026-12-31'],
      ['2027-W01', '2027-01-04'],
      ['2027-W03', '2027-01-20'],
    ]);
    expect(weeks[0]).toMatchObject({ relaxed: { makes: 1 }, pressured: { makes: 2 } });
    expect(weeks[0]?.drop?.points).toBeCloseTo(-20, 10);
    expect(sessions[0]?.drop).toBeNull();
  });

  it('find the pressured rounds in which no pressure was felt', () => {
    const { felt, unfelt, rounds } = figuresFrom([
      { round: 1, nerves: 2 },
      { round: 2, nerves: 3 },
      { session: 'b', round: 1, nerves: 4 },
      pressured({ round: 3, nerves: 6 }),
      pressured({ round: 4, nerves: 2.5 }),
      pressured({ round: 5 }),
      pressured({ session: 'b', round: 2, nerves: 3 }),
    ]);
    const labels = rounds.filter(({ id }) => unfelt.has(id)).map(({ label }) => label);
    expect(felt.line).toEqual({ before: 3, during: null });
    expect(labels.toSorted()).toEqual(['2', '4']);
    expect(felt.felt.rounds).toHaveLength(1);
    expect(felt.unrated.rounds).toHaveLength(1);
  });

  it('list the rounds newest first, the last of a day on top', () => {
    const { rounds } = figuresFrom([
      { date: '2026-10-05', session: 'b', round: 1 },
      { date: '2026-10-05', session: 'b', round: 2 },
      { date: '2026-10-01', session: 'a', round: 9 },
    ]);
    expect(rounds.map(({ label }) => label)).toEqual(['2', '1', '9']);
  });

  it('are worked out once for a book whose rounds stay the same', () => {
    const book = bookFromFile(recordFile(GOLDEN));
    const [shooter = ''] = book.shooters.keys();
    const tapped: Book = { ...book, open: null };
    expect(shooterFigures(tapped, shooter)).toBe(shooterFigures(book, shooter));
    const changed: Book = { ...book, rounds: new Map(book.rounds) };
    expect(shooterFigures(changed, shooter)).not.toBe(shooterFigures(book, shooter));
    expect(shooterFigures(changed, shooter)).toEqual(shooterFigures(book, shooter));
  });
});

describe('the figures of the invented season', () => {
  const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));

  it.each([...book.shooters.values()].map(({ name, id }) => [name, id] as const))(
    'add up from rounds to sessions to weeks for %s',
    (_, shooter) => {
      const figures = shooterFigures(book, shooter);
      const shots = (condition: 'relaxed' | 'pressured') =>
        figures.rounds
          .filter((round) => round.condition === condition)
          .reduce((sum, round) => sum + roundTally(round).makes, 0);
      for (const condition of ['relaxed', 'pressured'] as const) {
        expect(figures[condition].makes).toBe(shots(condition));
        for (const parts of [figures.sessions, figures.weeks, figures.spots]) {
          const makes = parts.reduce((sum, part) => sum + part[condition].makes, 0);
          expect(makes).toBe(figures[condition].makes);
        }
      }
      expect(figures.weeks.length).toBeLessThanOrEqual(10);
      expect(figures.evidence.sessions).toBe(figures.sessions.length);
    },
  );

  it('are the same after a round more, corrected or taken away as if all were read anew', () => {
    const [shooter = ''] = book.shooters.keys();
    const [first, ...others] = book.rounds.values();
    if (!first) throw new Error('no rounds');
    const corrected = { ...first, entries: first.entries.slice(1) };
    for (const record of [others, [first, ...others], [corrected, ...others], [...others, first]]) {
      const of = (rounds: typeof record) =>
        shooterFigures({ ...book, rounds: new Map(rounds.map((round) => [round.id, round])) }, shooter);
      // Copies are other objects, of which nothing is known yet.
      expect(of(record)).toEqual(of(structuredClone(record)));
    }
  });

  it('are there before anyone notices', () => {
    const [shooter = ''] = book.shooters.keys();
    const spent = Array.from({ length: 20 }, () => {
      const fresh = { ...book, rounds: new Map(book.rounds) };
      const before = performance.now();
      shooterFigures(fresh, shooter);
      return performance.now() - before;
    });
    // A busy machine may be slow now and then; the code itself takes a few milliseconds.
    expect(Math.min(...spent)).toBeLessThan(10);
  });
});
