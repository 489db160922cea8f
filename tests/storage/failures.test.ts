import { describe, expect, test } from 'vitest';

import { asStorageError } from '../../renderer/storage/failures.ts';
import { StorageError } from '../../renderer/storage/messages.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';

const { SQLite3Error, capi } = await loadSqlite();
const quota = new DOMException('No space available for this operation', 'QuotaExceededError');

/** SQLite's own error for a result code. */
function sqliteError(code: number): Error {
  return new (SQLite3Error as unknown as new (code: number) => Error)(code);
}

describe('the failure behind an error', () => {
  test.each([
    ['SQLITE_FULL', sqliteError(capi.SQLITE_FULL), null, 'full'],
    ['a write that hit the quota', sqliteError(capi.SQLITE_IOERR_WRITE), quota, 'full'],
    [
      'a write that failed for another reason',
      sqliteError(capi.SQLITE_IOERR_WRITE),
      new Error('?'),
      'broken',
    ],
    ['a write that failed for no known reason', sqliteError(capi.SQLITE_IOERR_WRITE), null, 'broken'],
    ['the quota itself', quota, null, 'full'],
    [
      'a broken constraint, whatever was complained of',
      sqliteError(capi.SQLITE_CONSTRAINT_UNIQUE),
      quota,
      'broken',
    ],
    ['a corrupt page', sqliteError(capi.SQLITE_CORRUPT_INDEX), null, 'damaged'],
    ['a file that is no database', sqliteError(capi.SQLITE_NOTADB), null, 'damaged'],
    ['something thrown that is no error', 'a word', null, 'broken'],
  ])('%s', (_, error, complaint, failure) => {
    expect(asStorageError(error, complaint).failure).toBe(failure);
  });

  test('keeps what the file layer complained of in the detail', () => {
    expect(asStorageError(sqliteError(capi.SQLITE_IOERR), quota).message).toContain('No space available');
  });

  test('passes a StorageError on', () => {
    const error = new StorageError('newer-database', 'version 9');
    expect(asStorageError(error, quota)).toBe(error);
  });
});
