import type { Round } from '../log/book.ts';
import { roundTally, turnsOf } from '../log/roundCells.ts';
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

/** How a round with a mark came out. `open` while it is played; `void` where the device broke it off. */
export type Verdict = 'open' | 'beaten' | 'short' | 'stopped' | 'void';

/** The verdict on the mark, or null for a round without one. */
export function verdictOf(round: Round): Verdict | null {
  const mark = round.pressure?.mark;
  if (!mark) return null;
  if (round.state !== 'ended') return 'open';
  if (round.ending === 'interrupted') return 'void';
  const { needed, left } = needOf(round);
  if (needed === 0) return 'beaten';
  // Stopping is no way out of a mark that is already out of reach.
  return round.ending === 'stopped' && needed <= left ? 'stopped' : 'short';
}

/** What is still needed and what is left to do it with. */
export interface Need {
  readonly needed: number;
  readonly left: number;
}

/** Makes still needed for the mark, and turns left on the card. */
export function needOf(round: Round): Need {
  const { used, all } = turnsOf(round);
  const mark = round.pressure?.mark?.makes ?? 0;
  return { needed: Math.max(0, mark - roundTally(round).makes), left: all - used };
}
