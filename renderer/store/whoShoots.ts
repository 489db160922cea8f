import type { ShooterId } from '../basics/ids.ts';
import type { Book } from '../log/book.ts';

/**
 * Who stands at the bench when the log has been read: whoever stood there last. Settings can get lost where records
 * cannot (a browser writes them to the disk seconds later); then it is whoever has a round open, or shot last.
 */
export function whoShoots(book: Book, wanted: ShooterId | null): ShooterId | null {
  const isShown = (shooter: ShooterId): boolean =>
    book.shooters.has(shooter) && !book.removedShooters.has(shooter);
  if (wanted !== null && isShown(wanted)) return wanted;
  const latest = book.open ?? [...book.rounds.values()].findLast((round) => isShown(round.shooter));
  return latest?.shooter ?? [...book.shooters.keys()].find(isShown) ?? null;
}
