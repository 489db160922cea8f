import { describe, expect, it } from 'vitest';

import type { Book } from '../../renderer/log/book.ts';
import { whoShoots } from '../../renderer/store/whoShoots.ts';
import { bookFromFile, recordFile } from '../tools/records.ts';

const book = bookFromFile(
  recordFile([
    { shooter: 'Ines', date: '2026-11-24' },
    { shooter: 'Tobi', date: '2026-11-25' },
  ]),
);
const [ines = '', tobi = ''] = book.shooters.keys();
const without = (...removed: string[]): Book => ({ ...book, removedShooters: new Set(removed) });

describe('who stands at the bench', () => {
  it('is whoever stood there last', () => {
    expect(whoShoots(book, ines)).toBe(ines);
  });

  it('is whoever shot last, where the settings were lost', () => {
    expect(whoShoots(book, null)).toBe(tobi);
    expect(whoShoots(book, 'somebody of another log')).toBe(tobi);
  });

  it('is nobody who was taken off the screens', () => {
    expect(whoShoots(without(tobi), tobi)).toBe(ines);
    expect(whoShoots(without(ines, tobi), ines)).toBeNull();
  });

  it('is the first shooter before anybody has shot', () => {
    expect(whoShoots({ ...book, rounds: new Map() }, null)).toBe(ines);
  });
});
