import { useMemo } from 'react';

import { othersIn } from '../../games/gameOn.ts';
import type { Round } from '../../log/book.ts';
import { roundById } from '../../store/roundActions.ts';
import { useGym } from '../gymContext.ts';

/** A round and the other rounds of its group. */
export interface Together {
  readonly round: Round;
  readonly others: readonly Round[];
}

/** The round with what is on its way to the log. */
export function useTogether(round: Round): Together {
  const book = useGym((state) => state.ahead);
  return useMemo(() => ({ round, others: othersIn(book, round) }), [book, round]);
}

/** The same round as far as the log has acknowledged it: figures count nothing else. */
export function useSaved(round: Round): Together {
  const book = useGym((state) => state.book);
  return useMemo(() => {
    const saved = roundById(book, round.id) ?? round;
    return { round: saved, others: othersIn(book, saved) };
  }, [book, round]);
}
