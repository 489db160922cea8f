import { describe, expect, it } from 'vitest';

import type { Ingredient } from '../../renderer/pressure/ingredients.ts';
import { screwWords } from '../../renderer/screens/result/screwWords.ts';
import type { IndexIngredient } from '../../renderer/stats/model/chokeIndex.ts';
import { freeThrows, roundOf } from '../stats/rounds.ts';
import { turningOn } from './seasons.ts';

const pressured = roundOf('pressured', [freeThrows(5, 10)]);
const relaxed = roundOf('relaxed', [freeThrows(5, 10)]);
const rounds = (...turns: readonly (readonly Ingredient[])[]) =>
  turningOn([relaxed, ...turns.map(() => pressured)], turns);

const cost = (
  ingredient: Ingredient,
  points: number,
  low: number,
  high: number,
  probability = 0.8,
  dearest = 0.6,
): IndexIngredient => ({
  ingredient,
  points,
  low,
  high,
  sd: 2,
  probability,
  dearest,
  shots: { on: 300, off: 300 },
});

describe('what turns the screw, in words', () => {
  it('cannot be told while every round had the same, and says what to leave out', () => {
    expect(screwWords([], rounds(['clock', 'crowd', 'stake'], ['clock', 'crowd', 'stake']))).toEqual({
      headline:
        'Every pressured round so far had the same ingredients: the clock, the crowd noise and something on the line. Leave one out now and then, and it can be told what it costs.',
      cautions: [],
    });
    expect(screwWords([], rounds([])).headline).toContain('No pressured round so far had anything');
    expect(screwWords([], [relaxed, pressured]).headline).toContain('come from files');
  });

  it('is the dearest where that is sure', () => {
    const told = (dearest: number) =>
      screwWords([cost('clock', 4.2, 0.8, 7.4, 0.98, dearest), cost('crowd', 1, -2, 4)], rounds([])).headline;
    expect(told(0.91)).toBe('The clock costs you most: about 4 points, somewhere between 1 and 7.');
    // That it costs something is sure; that the crowd costs less is not.
    expect(told(0.9)).toBe('The clock costs you something: about 4 points, somewhere between 1 and 7.');
  });

  it('may be luck where that is not sure', () => {
    const told = (low: number) => screwWords([cost('crowd', 3.4, low, 8)], rounds([])).headline;
    expect(told(-1.2)).toBe(
      'The crowd noise looks dearest so far, about 3 points. That may be luck: it could as well help by 1 point as cost 8.',
    );
    expect(told(0.2)).toContain('it could as well cost nothing as cost 8');
  });

  it('is nothing where nothing costs anything', () => {
    expect(screwWords([cost('crowd', 0.3, -2, 3), cost('clock', -2, -5, 1)], rounds([])).headline).toBe(
      'None of these costs you anything that can be told so far.',
    );
  });

  it('comes with a caution while the spans are wide, and with what was always on', () => {
    const both = rounds(['clock', 'must-make'], ['must-make']);
    const narrow = screwWords([cost('clock', 3, 0, 6)], both).cautions;
    expect(narrow).toHaveLength(2);
    expect(narrow[0]).toContain('change one thing at a time');
    expect(narrow[1]).toContain('In every pressured round so far: a mark to beat.');
    expect(screwWords([cost('clock', 3, -3, 9)], both).cautions[0]).toContain('The bars are long');
  });
});
