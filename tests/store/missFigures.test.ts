import { describe, expect, test } from 'vitest';

import type { Entry, Round } from '../../renderer/log/book.ts';
import type { MissSide } from '../../renderer/log/events.ts';
import { missFigures } from '../../renderer/store/missFigures.ts';
import { roundOf } from '../stats/rounds.ts';

function shot(side: MissSide | null, made = false): Entry {
  return { kind: 'shot', id: `${side}`, at: 0, stop: 0, made, side };
}

describe('where the misses went', () => {
  test('is not said where no side was ever tapped', () => {
    const rounds: Round[] = [{ ...roundOf('relaxed', []), entries: [shot(null), shot(null, true)] }];
    expect(missFigures(rounds)).toBeNull();
  });

  test('is counted apart for relaxed and pressured rounds', () => {
    const relaxed: Round = { ...roundOf('relaxed', []), entries: [shot('short'), shot('left')] };
    const pressured: Round = { ...roundOf('pressured', []), entries: [shot('short'), shot('short')] };
    expect(missFigures([relaxed, pressured])).toEqual({
      relaxed: { short: 1, long: 0, left: 1, right: 0 },
      pressured: { short: 2, long: 0, left: 0, right: 0 },
    });
  });
});
