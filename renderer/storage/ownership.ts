import { StorageError } from './messages.ts';

/** One window of an installation owns the log; this is the name of its lock. */
const LOCK = 'loud-gym-log';

/** A page that is being reloaded still holds its lock for a moment. */
const PATIENCE_MS = 700;

/** Lets go of the log, for other windows to own. */
export type LetGo = () => void;

/**
 * Makes this window the owner of the log.
 *
 * @param takeOver take it from the window that owns it
 * @param onTaken called once, where another window takes it from this one
 * @throws StorageError `second-window` where another window owns it, `no-storage` where the browser keeps no locks
 *   (a page not served securely)
 */
export function own(locks: LockManager | undefined, takeOver: boolean, onTaken: () => void): Promise<LetGo> {
  if (!locks) return Promise.reject(new StorageError('no-storage', 'the page is not served securely'));
  return new Promise((resolve, reject) => {
    let owned = false;
    const wish = takeOver ? { steal: true } : { signal: AbortSignal.timeout(PATIENCE_MS) };
    const over = locks.request(LOCK, wish, () => {
      owned = true;
      return new Promise<void>((letGo) => resolve(letGo));
    });
    over.catch(() => {
      if (owned) onTaken();
      else reject(new StorageError('second-window', 'another window owns the log'));
    });
  });
}
