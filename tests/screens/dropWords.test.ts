import { describe, expect, it } from 'vitest';

import { dropWords } from '../../renderer/screens/dropWords.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { bookFromFile, recordFile, type RecordRow } from '../tools/records.ts';

const wordsFor = (rows: readonly RecordRow[]): string => {
  const book = rows.length === 0 ? EMPTY_BOOK : bookFromFile(recordFile(rows));
  const [shooter = 'nobody'] = book.shooters.keys();
  const { headline, more } = dropWords(shooterFigures(book, shooter));
  return [headline, ...more].join(' ');
};

/** Sessions with a relaxed and a pressured round each, from one spot. */
const season = (sessions: number, relaxed: readonly [number, number], pressed: readonly [number, number]) =>
  Array.from({ length: sessions }, (_, at): RecordRow[] => {
    const date = `2026-10-0${at + 1}`;
    const [makes, attempts] = relaxed;
    const [pressedMakes, pressedAttempts] = pressed;
    return [
      { date, session: at, round: 1, makes, attempts },
      { date, session: at, round: 2, condition: 'pressured', makes: pressedMakes, attempts: pressedAttempts },
    ];
  }).flat();

describe('the plain sentence', () => {
  it('starts kindly before the first round', () => {
    expect(wordsFor([])).toBe(
      'No rounds yet. Start with a pair: the same card once relaxed and once under pressure.',
    );
  });

  it('asks for the other half of the comparison', () => {
    expect(wordsFor([{ makes: 11, attempts: 25 }])).toBe(
      '11 of 25 relaxed so far. Shoot the same card under pressure, and the two can be compared.',
    );
    expect(wordsFor([{ condition: 'pressured', makes: 9, attempts: 25 }])).toBe(
      '9 of 25 pressured so far. Shoot the same card relaxed, and the two can be compared.',
    );
  });

  it('compares nothing that is not alike', () => {
    const words = wordsFor([
      { round: 1, spot: 'top', makes: 11, attempts: 25 },
      { round: 2, condition: 'pressured', spot: 'left-wing', makes: 5, attempts: 25 },
    ]);
    expect(words).toContain('came from different spots');
    expect(words).not.toContain('%');
  });

  it('says too early, gives the figures, and names the shots it would take', () => {
    const words = wordsFor(season(1, [46, 100], [41, 99]));
    expect(words).toContain('Too early to say. So far 46 % relaxed and 41 % pressured');
    expect(words).toContain('could be luck');
    expect(words).toMatch(
      /Roughly \d+0 more pressured and \d+0 more relaxed shots would probably show a drop of 10 points, if there is one\./,
    );
  });

  it('does not let one good day decide, however many shots it had', () => {
    const words = wordsFor(season(1, [300, 500], [200, 500]));
    expect(words).toContain('both in only 1 session, and one good or bad day must not decide');
    expect(words).toContain('3 more sessions with both kinds of round');
    expect(words).not.toContain('You lose');
  });

  it('never had both in one session', () => {
    const words = wordsFor([
      { date: '2026-10-01', session: 'a', makes: 60, attempts: 120 },
      { date: '2026-10-02', session: 'b', condition: 'pressured', makes: 50, attempts: 120 },
    ]);
    expect(words).toContain('never both in one session');
    expect(words).toContain('4 more sessions');
  });

  it('says what pressure takes', () => {
    // 300 of 500 and 250 of 500: Newcombe's method 10 gives 10 points, 4.8 to 15.1 at 90 % (from the formula).
    expect(wordsFor(season(5, [60, 100], [50, 100]))).toBe(
      'You lose about 10 points under pressure, somewhere between 5 and 15.',
    );
  });

  it('says what pressure gives', () => {
    expect(wordsFor(season(5, [50, 100], [60, 100]))).toBe(
      'You make more under pressure: about 10 points, somewhere between 5 and 15.',
    );
  });

  it('tells no difference from luck where the span holds 0, and names the shots it would take', () => {
    const words = wordsFor(season(5, [12, 25], [11, 25]));
    expect(words).toMatch(
      /^No difference that can be told from luck\. It could be anything from \d+ points? better to \d+ points? worse under pressure\./,
    );
    expect(words).toMatch(
      /Roughly [\d a-z]+ shots would probably show a drop of 10 points, if there is one\.$/,
    );
  });

  it('says about the same where the whole span is small', () => {
    const words = wordsFor(season(5, [1000, 2000], [1002, 2000]));
    expect(words).toMatch(
      /^About the same, relaxed or under pressure\. The difference lies from \d points? better to/,
    );
  });

  it('explains a drop that is not the difference of the two figures', () => {
    // At the line and from the top the rates are the same in both conditions; only the mix differs.
    const rows = season(5, [25, 50], [5, 10]).concat(
      season(5, [9, 10], [45, 50]).map((row, at) => ({
        ...row,
        round: 3 + (at % 2),
        spot: 'free-throw',
        shot: 'free-throw',
      })),
    );
    expect(wordsFor(rows)).toContain('a different mix of shots does not count as pressure');
  });

  it('never calls it choking', () => {
    expect(wordsFor(season(5, [60, 100], [40, 100]))).not.toMatch(/chok/i);
  });
});
