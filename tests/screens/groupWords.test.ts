import { describe, expect, it } from 'vitest';

import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import {
  duelSentence,
  groupRefusalWords,
  headStartOf,
  headStartWords,
  seatGoal,
} from '../../renderer/screens/together/groupWords.ts';
import type { Seat } from '../../renderer/store/groupPrices.ts';

const CARD = [{ spot: 'free-throw', shot: 'free-throw', attempts: 10 }] as const;
const NAMES: Readonly<Record<string, string>> = { i: 'Ines', t: 'Tobi' };
const nameOf = (shooter: string): string => NAMES[shooter] ?? 'Someone';

function duel(headStart: number, first: number, second: number): Seat[] {
  const plan: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart, extraPairs: 5 };
  return [
    { shooter: 'i', name: 'Duel', plan, chance: first },
    { shooter: 't', name: 'Duel', plan, chance: second },
  ];
}

describe('a duel in words', () => {
  it.each([
    [
      2,
      'Ines starts 2 ahead: Ines wins about 52 times in 100, Tobi about 45. What is left ends level.',
      ['Starts 2 ahead', 'Starts 2 behind'],
      'Ines 2 ahead',
    ],
    [
      -1,
      'Tobi starts 1 ahead: Ines wins about 52 times in 100, Tobi about 45. What is left ends level.',
      ['Starts 1 behind', 'Starts 1 ahead'],
      'Tobi 1 ahead',
    ],
    [
      0,
      'Both start level: Ines wins about 52 times in 100, Tobi about 45. What is left ends level.',
      ['Starts level', 'Starts level'],
      'Level',
    ],
  ] as const)('with a head start of %d', (headStart, sentence, goals, stepper) => {
    const seats = duel(headStart, 0.52, 0.45);
    expect(duelSentence(seats, nameOf)).toBe(sentence);
    expect(seats.map((seat) => seatGoal(seat, seats, CARD))).toEqual(goals);
    expect(headStartWords(headStart, 'Ines', 'Tobi')).toBe(stepper);
    expect(headStartOf(seats[0]?.plan)).toBe(headStart);
  });
  it('is no sentence of any other game, or before there are two', () => {
    const plan: GamePlan = { family: 'reach', needed: 7 };
    const seats = [{ shooter: 'i', name: 'Seven', plan, chance: 0.5 }];
    expect(duelSentence(seats, nameOf)).toBe('');
    expect(duelSentence(duel(0, 0.5, 0.5).slice(1), nameOf)).toBe('');
    expect(seats.map((seat) => seatGoal(seat, seats, CARD))).toEqual(['Make 7 of 10 to win']);
    expect([headStartOf(plan), headStartOf(undefined)]).toEqual([0, 0]);
  });
});

describe('why several cannot start', () => {
  it.each([
    ['unasked', ['Kim'], /^Kim is still to be asked\.$/],
    ['unasked', ['Kim', 'Ben'], /^Kim and Ben are still to be asked\.$/],
    ['watched', ['Kim'], /^No step up today for Kim: /],
    ['brake', [], /^Nothing on the line today/],
    ['age', [], /^Nothing is on the line where someone under 18 plays/],
    ['money', [], /^Not money/],
  ] as const)('%s', (refusal, who, words) => {
    const said = groupRefusalWords(refusal, who);
    expect(said).toMatch(words);
    // Why is nobody else's business.
    expect(said).not.toMatch(/\b(?:sore|ill|slept|sick)\b/);
  });
});
