import { describe, expect, it } from 'vitest';

import type { Round } from '../../../renderer/log/book.ts';
import { placeRounds } from '../../../renderer/stats/model/sessionOrder.ts';
import { roundOf, three } from '../rounds.ts';

/** A round of ten shots, as a file tells it. */
function round(label: string, first: number | null = null, startedAt = 0): Round {
  return { ...roundOf('relaxed', [three('top', 5, 10)]), id: label, label, first, startedAt };
}

function placed(rounds: readonly Round[]): string[] {
  return placeRounds(rounds).map(({ round: { label }, first }) => `${label} at ${first}`);
}

describe('the place of a round in its session', () => {
  it.each([
    ['numbers', ['10', '2', '9'], ['2 at 0', '9 at 10', '10 at 20']],
    [
      'numbers with a word',
      ['Round 10', 'round 2', 'Round 1'],
      ['Round 1 at 0', 'round 2 at 10', 'Round 10 at 20'],
    ],
    ['halves', ['2', '1.5', '1'], ['1 at 0', '1.5 at 10', '2 at 20']],
    ['words: the file’s order', ['warm', 'baseline', 'loud'], ['warm at 0', 'baseline at 10', 'loud at 20']],
    ['two counts: the file’s order', ['R1', 'P1', 'R2'], ['R1 at 0', 'P1 at 10', 'R2 at 20']],
    ['numbers and a word: the file’s order', ['2', 'extra', '1'], ['2 at 0', 'extra at 10', '1 at 20']],
  ])('goes by the names where nothing else is known: %s', (_, labels, order) => {
    expect(placed(labels.map((label) => round(label)))).toEqual(order);
  });

  it('is `first` where it is noted; the next round follows on', () => {
    expect(placed([round('1', 40), round('2'), round('3', 0)])).toEqual(['3 at 0', '1 at 40', '2 at 50']);
  });

  it('goes by the start of rounds shot in the app, whatever they are called', () => {
    expect(placed([round('1', null, 9), round('2', null, 3)])).toEqual(['2 at 0', '1 at 10']);
  });
});
