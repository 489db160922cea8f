import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import type { Debt } from '../../renderer/games/ledger.ts';
import {
  highestRung,
  RUNGS,
  suggestRung,
  type Brake,
  type Standing,
} from '../../renderer/pressure/ladder.ts';
import { Ladder } from '../../renderer/screens/line/Ladder.tsx';
import {
  bigStepWords,
  brakeWords,
  onTheLineWords,
  refusalWords,
  RUNG_WORDS,
  suggestionWords,
} from '../../renderer/screens/line/lineWords.ts';
import { decidedWords, owedWords } from '../../renderer/screens/stakes/debtWords.ts';
import type { Line, Refusal } from '../../renderer/store/line.ts';
import { onCourt, PRESSURE, tap } from '../log/diary.ts';

const line = (standing: Standing | null, brakes: readonly Brake[] = []): Line => ({
  policy: 'open',
  young: false,
  body: { sore: false, ill: false, unslept: false },
  brakes,
  standing,
  suggestion: suggestRung(standing, brakes),
  highest: highestRung(standing, brakes),
});
const on = (rung: Standing['rung'], good = 0, hurt = false): Standing => ({ rung, good, hurt });

describe('the brakes in words', () => {
  it.each<readonly [readonly Brake[], string]>([
    [['sore'], 'you are sore'],
    [['unslept'], 'you slept badly'],
    [['sore', 'ill'], 'you are sore and ill'],
    [['ill', 'unslept'], 'you are ill and slept badly'],
    [['sore', 'ill', 'unslept'], 'you are sore, ill and slept badly'],
  ])('%j: %s', (brakes, words) => {
    expect(brakeWords(brakes)).toBe(words);
  });
});

describe('the suggestion in words', () => {
  it.each<readonly [string, Line, RegExp]>([
    ['nothing yet', line(null), /begin where you like, but small/],
    ['up', line(on('watched', 2)), /nerves rose and the shot held\. One step up is due: “A friend films it”/],
    [
      'held back',
      line(on('watched', 2), ['ill']),
      /^A step up was due\. Not today: you are ill\. Stay on “Someone watches”/,
    ],
    ['down', line(on('judged', 0, true)), /^Last time was too much\. One step down: “A friend films it”/],
    ['no lower rung', line(on('logged', 0, true)), /there is no lower rung\. A relaxed round/],
    ['the top', line(on('forfeit', 2)), /highest rung/],
    ['once', line(on('filmed', 1)), /^In one session on this rung/],
    ['not yet', line(on('filmed')), /^Stay on this rung until/],
  ])('%s', (_what, told, words) => {
    expect(suggestionWords(told)).toMatch(words);
  });
  it('never blames: nobody is told that they choked or failed', () => {
    const all = RUNGS.flatMap((rung) =>
      [0, 1, 2].flatMap((good) => [true, false].map((hurt) => suggestionWords(line(on(rung, good, hurt))))),
    );
    for (const words of all) expect(words).not.toMatch(/chok|fail|weak|coward/i);
  });
});

describe('a big step', () => {
  it.each<readonly [Standing | null, (typeof RUNGS)[number], string | null]>([
    [null, 'forfeit', null],
    [on('watched'), 'filmed', null],
    [on('watched'), 'logged', null],
    [on('watched'), 'judged', 'That is 2 steps above last time.'],
    [on('logged'), 'forfeit', 'That is 4 steps above last time.'],
  ])('from %j to %s', (standing, rung, words) => {
    const said = bigStepWords(line(standing), rung);
    expect(said?.slice(0, words?.length) ?? null).toBe(words);
  });
});

it('every refusal says what to do or why, in a sentence', () => {
  const refusals: readonly Refusal[] = [
    'unasked',
    'money',
    'age',
    'brake',
    'guardian',
    'double today',
    'double what',
    'double no more',
  ];
  const words = refusals.map((refusal) => refusalWords(refusal, line(on('watched'), ['sore'])));
  expect(new Set(words).size).toBe(refusals.length);
  for (const one of words) expect(one).toMatch(/^[A-Z].*[.?]$/);
  expect(words[3]).toBe('No step up today: you are sore. “Someone watches” is as far as it goes.');
});

it('the ladder has its highest rung on top and says in words what stands where', () => {
  const html = renderToStaticMarkup(<Ladder standing="watched" suggested="filmed" round="watched" />);
  const text = html.replaceAll(/<[^>]+>/g, '|').replaceAll(/\|+/g, '|');
  expect(text).toBe(
    `|${RUNG_WORDS.forfeit}|${RUNG_WORDS.judged}|${RUNG_WORDS.filmed}|suggested|${RUNG_WORDS.watched}|this round, last time|${RUNG_WORDS.logged}|`,
  );
});

describe('a debt in words', () => {
  const log = onCourt({ condition: 'pressured', pressure: { ...PRESSURE, ingredients: [] } });
  tap(log, 'oxxx');
  const round = log.book().open;
  if (!round) throw new Error('a round is on court');
  const debt = (change: Partial<Debt>): Debt => ({
    round,
    stake: 'Loser buys lunch',
    owes: 'shooter',
    doublings: 0,
    times: 1,
    settled: false,
    ...change,
  });
  const game = { name: 'Five in a row', plan: { family: 'streak', row: 5, most: 20 }, chance: null } as const;

  it.each<readonly [Partial<Debt>, string, string]>([
    [{}, 'Loser buys lunch', '2026-11-25, A small card: 1 make, the mark was 3. Short of it.'],
    [
      { owes: 'others', doublings: 1, times: 2 },
      'Loser buys lunch, 2 times',
      '2026-11-25, A small card: 1 make, the mark was 3. Beaten. Double or nothing: doubled.',
    ],
    [
      { owes: 'nobody', doublings: 2, times: 4, settled: true },
      'Loser buys lunch',
      '2026-11-25, A small card: 1 make, the mark was 3. Double or nothing: nothing is owed any more.',
    ],
    [
      { round: { ...round, game: game.name, pressure: { ...PRESSURE, mark: null, game } } },
      'Loser buys lunch',
      '2026-11-25, Five in a row: best run 1 of 5. Not won.',
    ],
  ])('%#', (change, owed, decided) => {
    expect(owedWords(debt(change))).toBe(owed);
    expect(decidedWords(debt(change))).toBe(decided);
  });

  it('is named on court', () => {
    expect(onTheLineWords('Lunch', null)).toBe('On the line: Lunch');
    expect(onTheLineWords('Lunch', { round: 'r', times: 1 })).toBe(
      'Double or nothing: Lunch, 2 times or not at all',
    );
    expect(onTheLineWords('Lunch', { round: 'r', times: 2 })).toMatch(/4 times/);
  });
});
