import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { ForecastRules } from '../../renderer/screens/method/ForecastRules.tsx';
import { Forecasts } from '../../renderer/screens/result/Forecasts.tsx';
import {
  calibrationWords,
  leftOutWords,
  marksWords,
  placeWords,
  plainGuessWords,
} from '../../renderer/screens/result/forecastScoreWords.ts';
import { type ForecastScore, forecastScore, type ScoredRound } from '../../renderer/stats/forecastScore.ts';

const season = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [shooter = ''] = season.shooters.keys();
const rounds = [...season.rounds.values()].filter((round) => round.shooter === shooter);
const score = forecastScore(rounds);
const nothing = forecastScore([]);

const markupOf = (one: ForecastScore | null): string => renderToStaticMarkup(<Forecasts score={one} />);
const textOf = (markup: string): string =>
  markup
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
const count = (text: string, part: string): number => text.split(part).length - 1;

/** Ten rounds of twenty shots on so many days; 10 to 14 forecast, around 12.2. */
function scored(makes: readonly number[], days = 5): ScoredRound[] {
  return makes.map((made, at) => ({
    round: `round ${at}`,
    date: `2026-10-0${1 + (at % days)}`,
    condition: 'relaxed',
    attempts: 20,
    mean: 12.2,
    low: 10,
    high: 14,
    makes: made,
  }));
}

const ENOUGH = { needs: { rounds: 0, days: 0 } };

describe('the answer', () => {
  const ten = scored([9, 10, 11, 12, 12, 12, 13, 14, 15, 16]);
  const base: ForecastScore = {
    ...nothing,
    ...ENOUGH,
    rounds: ten,
    inside: 7,
    below: 1,
    above: 2,
    expectedInside: 8.4,
  };

  it.each([
    [
      { ...base, reading: 'fits' as const },
      'So far, yes: 7 of the latest 10 rounds ended within their span, where about 8 were to be expected. Luck alone can make such a difference.',
    ],
    [
      { ...base, inside: 8, reading: 'fits' as const },
      'So far, yes: 8 of the latest 10 rounds ended within their span, where about 8 were to be expected.',
    ],
    [{ ...base, reading: 'too sure' as const }, 'They are too sure of themselves: 7 of the latest 10 rounds'],
    [
      { ...base, reading: 'too careful' as const },
      'They are more careful than they need be: 7 of the latest 10',
    ],
    [
      { ...base, reading: 'too hopeful' as const },
      'They promise too much just now: of the latest 10 rounds 6 ended below the middle of their forecast and 4 above.',
    ],
    [
      { ...base, reading: 'too gloomy' as const },
      'They promise too little just now: of the latest 10 rounds 6 ended below the middle of their forecast and 4 above.',
    ],
    [
      { ...base, needs: { rounds: 10, days: 3 }, reading: 'too few' as const },
      'Too early to say: there are 10 rounds on 5 days so far. Another 10 rounds shot to the end of the card, 3 of them on other days, and one can tell.',
    ],
    [
      { ...base, needs: { rounds: 1, days: 0 }, reading: 'too few' as const },
      'Too early to say: there are 10 rounds on 5 days so far. One more round shot to the end of the card, and one can tell.',
    ],
    [
      { ...base, needs: { rounds: 2, days: 3 }, reading: 'too few' as const },
      'Too early to say: there are 10 rounds on 5 days so far. Another 3 days with a round shot to the end of the card, and one can tell.',
    ],
    [
      { ...base, needs: { rounds: 0, days: 1 }, reading: 'too few' as const },
      'Too early to say: there are 10 rounds on 5 days so far. One more day with a round shot to the end of the card, and one can tell.',
    ],
    [
      nothing,
      'No round can be held against its forecast yet. Shoot a card to its end, and the first one can.',
    ],
  ])('%#', (one, words) => {
    expect(calibrationWords(one).startsWith(words)).toBe(true);
  });

  it('sets them beside a plain guess once one can tell', () => {
    const plain = { ours: 1.5, rival: 1.625, reading: 'better' } as const;
    expect(plainGuessWords({ ...base, reading: 'fits', plain })).toBe(
      'Beside a plain guess from your percentage alone they do better: they are off by 1.5 makes a round, the guess by 1.6, with how sure each was counted in.',
    );
    expect(plainGuessWords({ ...base, reading: 'fits', plain: { ...plain, reading: 'worse' } })).toContain(
      'A plain guess from your percentage alone does better just now',
    );
    expect(plainGuessWords({ ...base, reading: 'too few', plain })).toBeNull();
    expect(plainGuessWords({ ...base, reading: 'fits', plain: null })).toBeNull();
  });

  it('says what is left out, what became of the marks, and where a round ended', () => {
    expect(leftOutWords({ ...base, leftOut: 0 })).toBeNull();
    expect(leftOutWords({ ...base, leftOut: 1 })).toBe(
      '1 round of that time is left out, since the card was not shot to its end.',
    );
    expect(marksWords([])).toBeNull();
    const marks = { low: 0, high: 1 };
    expect(
      marksWords([
        { ...marks, said: 0.3, marks: 4, beaten: 2 },
        { ...marks, said: 0.5, marks: 6, beaten: 3 },
      ]),
    ).toBe('Of 10 marks you beat 5. By the chances said before, about 4 were to be expected.');
    expect(marksWords([{ ...marks, said: 0.35, marks: 12, beaten: 5 }], 'game')).toBe(
      'Of 12 games you won 5. By the chances said before, about 4 were to be expected.',
    );
    expect(marksWords([{ ...marks, said: 0.35, marks: 1, beaten: 1 }], 'game')).toBe(
      'One game so far: too few to tell whether their chances were right.',
    );
    expect(ten.map(placeWords)).toEqual([
      '1 below',
      ...Array.from({ length: 7 }, () => 'within'),
      '1 above',
      '2 above',
    ]);
  });
});

describe('the panel', () => {
  it('draws the latest thirty rounds, and holds all that were looked at in a table', () => {
    const markup = markupOf(score);
    const [, drawing = '', table = ''] = markup.split('<details');
    expect(score.rounds).toHaveLength(60);
    expect(count(drawing, 'class="span thin')).toBe(30);
    expect(count(table, '<tr')).toBe(61);
    expect(textOf(markup)).toContain('Drawn are the latest 30.');
  });
  it('ties just the marks that lie outside to their bars', () => {
    const outside = score.rounds.slice(-30).filter(({ makes, low, high }) => makes < low || makes > high);
    expect(outside.length).toBeGreaterThan(0);
    expect(count(markupOf(score), 'class="stray')).toBe(outside.length);
  });
  it('tells conditions apart by shape too', () => {
    const markup = markupOf(score);
    expect(markup).toContain('<circle class="mark relaxed"');
    expect(markup).toContain('<path class="mark pressured"');
  });
  it('shows the marks said beside the marks beaten, in a table too', () => {
    const text = textOf(markupOf(score));
    for (const { marks, beaten, said } of score.marks) {
      expect(text).toContain(`Said: ${Math.round(100 * said)} in 100`);
      expect(text).toContain(`${beaten} of ${marks} beaten`);
    }
  });
  it('shows the games said beside the games won just so', () => {
    const games = [{ said: 0.34, marks: 9, beaten: 4, low: 1, high: 5 }];
    const text = textOf(markupOf({ ...score, games }));
    expect(text).toContain('Games: said and won');
    expect(text).toContain('4 of 9 won');
    expect(text).toContain('34 in 100 9 4 about 3 1 to 5');
    expect(textOf(markupOf(score))).not.toContain('Games: said');
  });
  it('is nothing before there is a score, and kind where there is no round', () => {
    expect(markupOf(null)).toBe('');
    const markup = markupOf(nothing);
    expect(textOf(markup)).toContain('Shoot a card to its end, and the first one can.');
    expect(markup).not.toContain('<svg');
  });
  it('draws a single round', () => {
    const markup = markupOf({ ...nothing, rounds: scored([17]).slice(0, 1), needs: { rounds: 19, days: 7 } });
    expect(count(markup, 'class="span thin')).toBe(1);
    expect(textOf(markup)).toContain('1 Oct');
  });
});

describe('how forecasts are worked out and scored', () => {
  const rules = (one: ForecastScore | null): string =>
    textOf(renderToStaticMarkup(<ForecastRules score={one} />));

  it('quotes the numbers that the score goes by', () => {
    expect(rules(null)).toContain('your latest 60 rounds');
    expect(rules(null)).toContain('fewer than 20 rounds on 8 days');
    expect(nothing.needs).toEqual({ rounds: 20, days: 8 });
  });
  it('puts the shooter’s own beside them, where there is one', () => {
    expect(rules(null)).not.toContain('Yours:');
    expect(rules(score)).toContain(`Yours: ${calibrationWords(score)}`);
  });
});
