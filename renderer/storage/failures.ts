import { asError } from '../basics/errors.ts';
import { StorageError, type StorageFailure } from './messages.ts';

/** Primary result codes of SQLite (sqlite.org/rescode.html). */
const IOERR = 10;
const CORRUPT = 11;
const FULL = 13;
const NOTADB = 26;

/**
 * The failure behind whatever SQLite or the browser threw.
 *
 * @param complaint what the file layer last complained about: SQLite itself only knows that a write failed, not why
 */
export function asStorageError(error: unknown, complaint: unknown = null): StorageError {
  if (error instanceof StorageError) return error;
  const code = resultCode(error);
  const why = code === IOERR && complaint instanceof Error ? `: ${complaint.message}` : '';
  return new StorageError(failureOf(error, code, complaint), `${words(error)}${why}`);
}

function failureOf(error: unknown, code: number | null, complaint: unknown): StorageFailure {
  if (code === FULL || isQuota(error)) return 'full';
  if (code === IOERR && isQuota(complaint)) return 'full';
  if (code === CORRUPT || code === NOTADB) return 'damaged';
  return 'broken';
}

/** The primary code; extended codes keep it in their lowest byte. */
function resultCode(error: unknown): number | null {
  if (!(error instanceof Error) || !('resultCode' in error)) return null;
  return typeof error.resultCode === 'number' ? error.resultCode & 0xff : null;
}

function isQuota(error: unknown): boolean {
  return error instanceof Error && error.name === 'QuotaExceededError';
}

function words(error: unknown): string {
  return asError(error).message;
}
