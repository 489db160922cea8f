import type { ShooterId } from '../basics/ids.ts';
import type { EpochMs } from '../basics/units.ts';
import type { Book, Round } from '../log/book.ts';

/** A shooter's rounds that were in the book at one moment: what is brought in later moves nothing that was said. */
export function recordOf(
  { rounds }: Pick<Book, 'rounds'>,
  shooter: ShooterId,
  before: EpochMs = Infinity,
): Round[] {
  return [...rounds.values()].filter((round) => round.shooter === shooter && round.startedAt < before);
}
