import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { addDays } from '../../renderer/basics/days.ts';
import { reportOf } from '../../renderer/report/report.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { FREE_THROW_MIX, PLAIN, play, pressureFor, RELAXED_MIX } from '../bench/modelWorld.ts';
import { GOLDEN, recordFile, rowsOf, type RecordRow } from '../tools/records.ts';

/** Twelve weeks in which pressured rounds come last and lean to free throws; a true drop of about 8 points. */
const SEASON = play(
  { ...PLAIN, weeks: 12, pressure: (week) => pressureFor(8, (PLAIN.skillRise * week) / 26) },
  rngFromSeed(11),
);
const ROWS = rowsOf(SEASON.rounds);
const TRUE_DROP = SEASON.drops.reduce((sum, drop) => sum + drop, 0) / SEASON.drops.length;
const season = reportOf(recordFile(ROWS));

function shuffled<T>(items: readonly T[], seed: number): T[] {
  const rng = rngFromSeed(seed);
  return items
    .map((item) => ({ item, key: rng.next() }))
    .toSorted((a, b) => a.key - b.key)
    .map(({ item }) => item);
}

describe('the model in the report', () => {
  it('gives the smallest case about the known answer', () => {
    // Drop 6.2 points, P 0.78 with the spreads integrated, from an independent prototype without order and trend and with
    // all shots at one place of the session. Here the pressured round comes second and the trend is on: 5.8 and 0.77.
    const { drop, pairs, evidence, weeks, ...rest } = reportOf(recordFile(GOLDEN));
    expect(Math.abs((drop?.points ?? NaN) - 6.2)).toBeLessThan(0.7);
    expect(Math.abs((drop?.sd ?? NaN) - 7.9)).toBeLessThan(0.3);
    expect(Math.abs((drop?.probability ?? NaN) - 0.78)).toBeLessThan(0.03);
    // One pair d = 5, and one stratum: the check values of the two bets, 1.60178544 and 1.74464301.
    expect(pairs).toEqual({ n: 1, mean: 20, se: null, p: 0.5, relaxedFirst: 1, leftOut: 0 });
    expect(evidence).toEqual({ e: 1.602, highest: 1.602, byDay: 1.745 });
    expect(weeks).toMatchObject([{ week: '2026-W41', shots: { relaxed: 25, pressured: 25 } }]);
    expect(rest).toMatchObject({ verdict: 'none', change: null, seen: 1, disagrees: false });
    expect(rest.notes.join('\n')).toMatch(/still pulled towards 0[^]*Too early[^]*only if a coin did/);
  });

  it('finds a known drop where all shots thrown together are fooled by the mix', () => {
    expect(season.drop?.low).toBeLessThan(TRUE_DROP);
    expect(season.drop?.high).toBeGreaterThan(TRUE_DROP);
    expect(Math.abs((season.drop?.points ?? NaN) - TRUE_DROP)).toBeLessThan(2.5);
    expect(season.simple?.high).toBeLessThan(TRUE_DROP);
    expect(season.verdict).toBe('clear drop');
    expect(season.ratio).toBeLessThan(1);
    expect(season.ratioSpan?.low).toBeLessThan(season.ratio ?? NaN);
    expect(season.weeks).toHaveLength(12);
    const mean = season.weeks.reduce((sum, { points }) => sum + points, 0) / 12;
    expect(season.drop?.points).toBeCloseTo(mean, 1);
    for (const { points, relaxed, pressured, low, high } of season.weeks) {
      expect(points).toBeCloseTo(relaxed - pressured, 1);
      expect(low).toBeLessThan(high);
    }
    expect(season.change).toMatchObject({ from: '2021-W01', to: '2021-W12' });
    // Spreads as they were simulated: a day of 0.25.
    expect(season.hyper?.day).toBeGreaterThan(0.15);
    expect(season.hyper?.day).toBeLessThan(0.35);
    expect(season.hyper?.sd.day).toBeGreaterThan(0);
  });

  it('tells every place, raw and by the model, and the groups they make', () => {
    const rounds = SEASON.rounds.filter(({ condition }) => condition === 'relaxed').length;
    const top = season.places.find(({ spot }) => spot === 'top');
    expect(season.places).toHaveLength(8);
    expect(top?.raw.relaxed.attempts).toBe(3 * rounds);
    expect(top?.weight).toBeCloseTo(3 / 25, 4);
    const weights = season.places.map(({ weight }) => weight);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 3);
    expect(season.groups.map(({ group }) => group)).toEqual(['threes', 'mid-range', 'free-throws']);
  });

  it('says the same whatever the order of the rows', () => {
    expect(reportOf(recordFile(shuffled(ROWS, 3)))).toEqual(season);
  });

  it('holds nothing that JSON cannot say', () => {
    expect(JSON.parse(JSON.stringify(season))).toEqual(season);
  });

  it('moves with the seed in the last digits alone', () => {
    const again = reportOf(recordFile(ROWS), { seed: season.seed ?? NaN });
    const other = reportOf(recordFile(ROWS), { seed: 5 });
    expect(again).toEqual(season);
    expect(other.seed).toBe(5);
    expect(other.drop).not.toEqual(season.drop);
    for (const end of ['points', 'low', 'high', 'sd'] as const) {
      expect(Math.abs((other.drop?.[end] ?? NaN) - (season.drop?.[end] ?? NaN))).toBeLessThan(0.3);
    }
    expect({ ...other.pairs, ...other.evidence, ...other.matched }).toEqual({
      ...season.pairs,
      ...season.evidence,
      ...season.matched,
    });
  });

  it('tells each of several shooters, and no drop for all of them together', () => {
    const [mo, bea] = [6, 9].map((makes): RecordRow[] => [
      { round: 1, makes: 15, attempts: 25, session: makes },
      { round: 2, makes, attempts: 25, session: makes, condition: 'pressured' },
    ]);
    const both = reportOf(
      recordFile([...(mo ?? []), ...(bea ?? []).map((row): RecordRow => ({ ...row, shooter: 'Bea' }))]),
    );
    expect(both.shooters.map(({ name }) => name)).toEqual(['Bea', 'Mo']);
    const [ofBea, ofMo] = both.shooters;
    expect(ofMo?.drop?.points).toBeGreaterThan(ofBea?.drop?.points ?? NaN);
    expect(ofMo?.weeks).toHaveLength(1);
    expect(both).toMatchObject({
      matched: { points: 30 },
      drop: null,
      verdict: null,
      ratio: null,
      pairs: null,
      evidence: null,
      hyper: null,
      weeks: [],
      places: [],
      rounds: 4,
    });
    expect(both.notes.at(-1)).toContain('2 shooters');
    // Alone in their file they get the same figures, and these stand at the top too.
    const alone = reportOf(recordFile(mo ?? []));
    expect(alone.shooters[0]).toEqual(ofMo);
    const { name: _, ...figures } = ofMo ?? { name: '' };
    expect(alone).toMatchObject(figures);
  });

  it.each(['relaxed', 'pressured'] as const)('says why there is none: %s alone', (condition) => {
    const missing = condition === 'relaxed' ? 'pressured' : 'relaxed';
    expect(reportOf(recordFile([{ condition, makes: 5, attempts: 10 }]))).toMatchObject({
      drop: null,
      verdict: 'none',
      ratio: null,
      weeks: [],
      hyper: null,
      seen: 0,
      notes: [`There is no ${missing} shot, so there is nothing to compare with.`],
    });
  });

  it('says why there is none: most of the mix was never shot under pressure', () => {
    const rows: RecordRow[] = [
      { round: 1, makes: 10, attempts: 20 },
      { round: 1, spot: 'left-corner', makes: 10, attempts: 30 },
      { round: 2, condition: 'pressured', makes: 8, attempts: 20 },
    ];
    const report = reportOf(recordFile(rows));
    expect(report).toMatchObject({ drop: null, seen: 0.4, matched: { points: 10 } });
    expect(report.notes.join()).toContain('Only 40 % of the relaxed shots');
  });

  it('tells no ratio where hardly a shot goes in', () => {
    const report = reportOf(
      recordFile([
        { round: 1, makes: 5, attempts: 100 },
        { round: 2, condition: 'pressured', makes: 5, attempts: 100 },
      ]),
    );
    expect(report).toMatchObject({ ratio: null, ratioSpan: null });
    expect(report.drop).not.toBeNull();
    expect(report.notes.join()).toContain('no ratio is given');
  });

  it('shows apart the rounds in which no pressure was felt', () => {
    const rows = [2, 3, 4].flatMap((day): RecordRow[] => [
      { date: `2026-10-0${day}`, round: 1, nerves: 3, makes: 12, attempts: 20 },
      { date: `2026-10-0${day}`, round: 2, condition: 'pressured', nerves: day, makes: 9, attempts: 20 },
    ]);
    const { felt, notes } = reportOf(recordFile(rows));
    expect(felt).toMatchObject({
      line: 3,
      felt: { rounds: 1, makes: 9, attempts: 20 },
      unfelt: { rounds: 2, makes: 18, attempts: 40 },
      unrated: { rounds: 0 },
      dropWithout: { points: expect.any(Number) as number },
    });
    expect(notes.join()).toContain('In 2 of 3 pressured rounds with a rating, nerves did not rise above 3');
  });

  it('takes five years of rounds in seconds', { timeout: 120_000 }, () => {
    const rng = rngFromSeed(2);
    const rows = Array.from({ length: 10_400 }, (_, i): RecordRow => {
      const pressured = i % 10 === 4 || i % 10 === 8;
      return {
        date: addDays('2021-01-04', Math.floor(((i / 10) * 7) / 4)),
        session: Math.floor(i / 10),
        round: (i % 10) + 1,
        condition: pressured ? 'pressured' : 'relaxed',
        makes: Array.from({ length: 25 }, () => rng.chance(pressured ? 0.5 : 0.6)).filter(Boolean).length,
        attempts: 25,
      };
    });
    const text = recordFile(rows);
    const start = performance.now();
    const report = reportOf(text);
    // 3 s on an idle machine; the rest is for a busy one.
    expect(performance.now() - start).toBeLessThan(30_000);
    expect(report.rounds).toBe(10_400);
    expect(report.weeks).toHaveLength(260);
    expect(Math.abs((report.drop?.points ?? NaN) - 10)).toBeLessThan(1.5);
  });
});

describe('the place of rounds in a session', () => {
  const day = (rows: readonly RecordRow[]): RecordRow[] =>
    Array.from({ length: 6 }, (_, i) =>
      rows.map((row) => ({ ...row, date: addDays('2026-10-05', i) })),
    ).flat();

  it('is `first`: pressured shots late in the session are held against tired legs', () => {
    const at = (first: number) =>
      reportOf(
        recordFile(
          day([
            { round: 1, first: 60, makes: 15, attempts: 25 },
            { round: 2, first, condition: 'pressured', makes: 10, attempts: 25 },
          ]),
        ),
        { seed: 1 },
      ).drop?.points ?? NaN;
    expect(at(85)).toBeGreaterThan(at(300) + 0.5);
  });

  it('goes by number where `first` is empty, whatever the order of the rows', () => {
    const rows = day([
      { round: 2, condition: 'pressured', makes: 10, attempts: 25 },
      { round: 10, makes: 14, attempts: 25 },
      { round: 1, makes: 15, attempts: 25 },
    ]);
    const counted = rows.map((row) => ({ ...row, first: row.round === 1 ? 0 : row.round === 2 ? 25 : 50 }));
    const report = reportOf(recordFile(rows));
    expect(reportOf(recordFile(counted))).toEqual(report);
    expect(reportOf(recordFile(shuffled(rows, 1)))).toEqual(report);
    expect(report.pairs?.relaxedFirst).toBe(6);
  });

  it('goes by the rows of the file where rounds have names; with `first` their order changes nothing', () => {
    const names: RecordRow[] = [
      { round: 'warm', makes: 15, attempts: 25 },
      { round: 'loud', condition: 'pressured', makes: 10, attempts: 25 },
      { round: 'calm', makes: 14, attempts: 25 },
    ];
    const rows = day(names);
    const report = reportOf(recordFile(rows));
    expect(report.pairs).toMatchObject({ n: 6, relaxedFirst: 6 });
    expect(reportOf(recordFile(day(names.toReversed()))).pairs).toMatchObject({
      n: 6,
      relaxedFirst: 6,
      mean: 16,
    });
    const counted = day(names.map((row, i) => ({ ...row, first: 25 * i })));
    expect(reportOf(recordFile(shuffled(counted, 4)))).toEqual(report);
  });
});

describe('free throws alone', () => {
  it('are asked about in every figure', () => {
    const line = reportOf(recordFile(ROWS), { mix: 'free-throws' });
    const count = (condition: Condition, mix: readonly number[]) =>
      SEASON.rounds.filter((round) => round.condition === condition).length * (mix[7] ?? NaN);
    expect(line).toMatchObject({
      mix: 'free-throws',
      relaxed: { attempts: count('relaxed', RELAXED_MIX) },
      pressured: { attempts: count('pressured', FREE_THROW_MIX) },
      groups: [{ group: 'free-throws', weight: 1 }],
      seen: 1,
      rounds: SEASON.rounds.length,
    });
    expect(line.places.map(({ spot }) => spot)).toEqual(['free-throw']);
    // A better rate, and less to lose at it.
    expect(line.drop?.relaxed).toBeGreaterThan((season.drop?.relaxed ?? NaN) + 10);
    expect(line.notes.at(-1)).toContain('free throws alone');
  });

  it('are null with a reason where there is none', () => {
    const none = reportOf(recordFile(GOLDEN), { mix: 'free-throws' });
    expect(none).toMatchObject({ drop: null, matched: null, relaxed: { attempts: 0 }, pairs: { n: 0 } });
    expect(none.notes[0]).toBe('There is no relaxed free throw, so there is nothing to compare with.');
  });
});
