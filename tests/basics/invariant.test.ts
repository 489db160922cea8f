import { describe, expect, it } from 'vitest';

import { assertNever, invariant, InvariantError, present } from '../../renderer/basics/invariant.ts';

describe('faults of the program itself', () => {
  it('say what should have been true', () => {
    expect(() => invariant(false, 'a round is open')).toThrow(new InvariantError('a round is open'));
    expect(() => invariant(true, 'a round is open')).not.toThrow();
    expect(() => assertNever('a new kind of entry' as never)).toThrow(/a new kind of entry/);
  });
  it('tell a missing value from one that is empty', () => {
    expect(present(0, 'a count')).toBe(0);
    expect(present('', 'a note')).toBe('');
    expect(() => present(null, 'the stop')).toThrow('the stop is missing');
    expect(() => present(undefined, 'the stop')).toThrow(InvariantError);
  });
});
