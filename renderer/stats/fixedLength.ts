import type { Round } from '../log/book.ts';

/**
 * Whether the number of shots was settled before the first of them. Where makes and misses decide when a game is over,
 * only some courses of it are ever shot to a given length, and whatever is sorted by length is sorted by luck.
 */
export function fixedLength({ pressure }: Pick<Round, 'pressure'>): boolean {
  const plan = pressure?.game?.plan;
  switch (plan?.family) {
    case undefined:
    case 'reach':
    case 'racks':
    case 'last shot':
      return true;
    case 'trips':
      return plan.kind !== 'one-and-one';
    case 'streak':
    case 'race':
    case 'lives':
    case 'climb':
    case 'duel':
      return false;
  }
}
