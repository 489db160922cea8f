import type { Round } from '../log/book.ts';
import type { TurnResult } from './rule.ts';

/**
 * The turns of a round in order. A count for a stop has no order of its own; its makes are put first, which changes
 * nothing, since all shots of a stop have the same rate.
 */
export function turnResults(round: Pick<Round, 'entries'>): TurnResult[] {
  return round.entries.flatMap((entry): TurnResult[] => {
    switch (entry.kind) {
      case 'shot':
        return [entry.made ? 'make' : 'miss'];
      case 'expired':
        return ['lost'];
      case 'count':
        return Array.from({ length: entry.attempts }, (_, at) => (at < entry.makes ? 'make' : 'miss'));
    }
  });
}
