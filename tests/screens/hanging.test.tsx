import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { finish } from '../../renderer/basics/steps.ts';
import { Hanging } from '../../renderer/screens/method/Hanging.tsx';
import { SOURCES } from '../../renderer/screens/method/sources.ts';
import {
  doublesWords,
  hangCaution,
  leverageWords,
  muchWords,
  wantsDoubles,
} from '../../renderer/screens/result/hangWords.ts';
import { WhatHangsOnIt } from '../../renderer/screens/result/WhatHangsOnIt.tsx';
import type { DoubleBallDrop } from '../../renderer/stats/doubleBall.ts';
import type { LeverageDrop } from '../../renderer/stats/leverage.ts';
import { type WhatHangs, whatHangsInSteps } from '../../renderer/store/whatHangs.ts';
import { CALM, seasonOfGames } from '../store/hangingWorld.ts';
import { count, textOf } from './seasons.ts';

const NOTHING: WhatHangs = {
  leverage: { shots: 0, rounds: 0, drop: null },
  doubles: { singles: 0, doubles: 0, drop: null },
};
// Thirty rounds of racks in which a coin drew the double balls, and doubling costs 20 points.
const RACKS = { family: 'racks', double: 'coin', needed: 15 } as const;
const season = seasonOfGames(RACKS, 30, { ...CALM, perDouble: 0.85 }, rngFromSeed(5));
const known = finish(whatHangsInSteps(season, 'shooter'));
const leverage = present(known.leverage.drop, 'a drop');
const doubles = present(known.doubles.drop, 'a drop');

describe('what is said of all shots', () => {
  const said = (points: number, probability: number) => {
    const mostAgainstLeast = { points, low: points - 5, high: points + 5 };
    const drop: LeverageDrop = { ...leverage, mostAgainstLeast, probability };
    return leverageWords({ shots: 1000, rounds: 40, drop });
  };

  it.each([
    [
      6.2,
      0.97,
      'You are about 6 points worse when much hangs on the shot than when little does. That is likely, not yet sure.',
    ],
    [
      1.2,
      0.995,
      'You are about 1 point worse when much hangs on the shot than when little does. That is quite sure.',
    ],
    [
      -4.6,
      0.02,
      'You are about 5 points better when much hangs on the shot than when little does. That is likely, not yet sure.',
    ],
    [4, 0.9, 'Whether much or little hangs on the shot: no difference that can be told from luck.'],
    [0.3, 0.97, 'Whether much or little hangs on the shot: no difference that can be told from luck.'],
  ])('%d points, chance %d', (points, probability, words) => {
    expect(said(points, probability)).toBe(words);
  });
  it('is what is missing, as long as there is too little', () => {
    expect(leverageWords({ shots: 120, rounds: 5, drop: null })).toBe(
      'Too early to say. It takes 300 shots, tapped one by one, in 10 pressured rounds with a mark or a game; so far there are 120 in 5.',
    );
    expect(leverageWords({ shots: 400, rounds: 20, drop: null })).toContain(
      'The same hung on every shot so far',
    );
  });
  it('comes with what much and little are', () => {
    expect(muchWords({ ...leverage, least: 0.0032, most: 0.224 })).toContain(
      'with least it was under 1 in 100, on the third with most 22 in 100.',
    );
  });
});

describe('what is said of double balls', () => {
  const said = (points: number, either: number) => {
    const drop: DoubleBallDrop = { ...doubles, points, chance: { worse: either / 2, either } };
    return doublesWords({ singles: 400, doubles: 100, drop });
  };

  it.each([
    [
      9.4,
      0.02,
      'On double balls, drawn by coin, you are about 9 points worse than on single ones. If doubling did nothing, the coin alone would bring so large a difference in 2 cases in 100.',
    ],
    [
      -8,
      0.05,
      'On double balls, drawn by coin, you are about 8 points better than on single ones. If doubling did nothing, the coin alone would bring so large a difference in 5 cases in 100.',
    ],
    [
      5,
      0.31,
      'On double balls, drawn by coin, no difference that can be told from luck. If doubling did nothing, the coin alone would bring so large a difference in 31 cases in 100.',
    ],
  ])('%d points, by the coin alone %d', (points, either, words) => {
    expect(said(points, either)).toBe(words);
  });
  it('is how many there are, as long as they are too few, and nothing without one', () => {
    expect(doublesWords({ singles: 100, doubles: 25, drop: null })).toBe(
      'Of double balls drawn by coin you shot 25; from 60 on something is said of them.',
    );
    expect(doublesWords(NOTHING.doubles)).toBeNull();
  });
});

describe('the caution', () => {
  it('tells what describes from what is a fair test', () => {
    const all = hangCaution(known);
    expect(all).toContain('describes, and proves no cause');
    expect(all).toContain('The double balls are a fair test');
    expect(hangCaution({ ...known, doubles: NOTHING.doubles })).toContain('would be a fair test of it');
    expect(hangCaution({ ...known, leverage: NOTHING.leverage })).toMatch(/^This is a fair test/);
    expect(hangCaution(NOTHING)).toBe('');
  });
  it('asks for more double balls until their span is short', () => {
    expect(wantsDoubles(NOTHING)).toBe(true);
    expect(wantsDoubles(known)).toBe(true);
    const drop = { ...doubles, low: 16, high: 24 };
    expect(wantsDoubles({ ...known, doubles: { ...known.doubles, drop } })).toBe(false);
  });
});

describe('the panel', () => {
  const markupOf = (hangs: WhatHangs | null) => renderToStaticMarkup(<WhatHangsOnIt hangs={hangs} />);

  it('draws both estimates and holds their numbers in tables', () => {
    const markup = markupOf(known);
    const text = textOf(markup);
    expect(count(markup, '<svg')).toBe(1);
    expect(count(markup, 'class="span drop"')).toBe(2);
    expect(text).toContain(`Double balls, drawn by coin: ${Math.round(doubles.points)} points`);
    expect(text).toContain(`${leverage.shots} shots in 30 rounds`);
    expect(text).toContain(
      `Double, ${doubles.shots.double} balls ${Math.round(100 * doubles.rates.double)} %`,
    );
    // What was put in is found.
    expect(doubles.points).toBeGreaterThan(10);
    expect(text).toContain('worse than on single ones');
    expect(markup).toContain('href="#/games"');
  });
  it('says what is missing and how to get more while there is too little, without a drawing', () => {
    const few = finish(whatHangsInSteps(new Map([...season].slice(0, 5)), 'shooter'));
    const markup = markupOf(few);
    expect(textOf(markup)).toContain('so far there are');
    expect(textOf(markup)).toContain('play racks with double balls by the coin');
    expect(markup).not.toContain('<svg');
    expect(markup).not.toContain('<details');
  });
  it('is nothing before there is an answer, or a shot with a mark or a game', () => {
    expect(markupOf(null)).toBe('');
    expect(markupOf(NOTHING)).toBe('');
  });
});

describe('how it is worked out', () => {
  const read = (hangs: WhatHangs | null) => textOf(renderToStaticMarkup(<Hanging hangs={hangs} />));

  it('quotes the numbers it goes by, and claims nothing of the shooter’s own without an answer', () => {
    expect(read(null)).toContain('fewer than 300 shots in 10 rounds, or from fewer than 60 double balls');
    expect(read(null)).not.toContain('Yours:');
  });
  it('puts the shooter’s own beside what it explains', () => {
    const text = read(known);
    expect(text).toContain(`points from a usual one (${leverage.roundSd.toFixed(2)} in log-odds)`);
    expect(text).toContain(`Yours: ${Math.round(doubles.points)} points, from`);
    expect(count(text, 'Yours:')).toBe(4);
  });
  it('leans on sources that are listed', () => {
    for (const [author, year] of [
      ['Nickell', 1981],
      ['Mantel', 1959],
      ['Newcombe', 1998],
      ['Fisher', 1935],
    ] as const) {
      expect(read(null)).toMatch(new RegExp(`${author}[^.]*${year}`));
      expect(SOURCES.some((one) => one.authors.includes(author) && one.year === year)).toBe(true);
    }
  });
});
