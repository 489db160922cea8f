import type { Round } from '../log/book.ts';
import { roundTally, turnsOf } from '../log/roundCells.ts';
import type { DuelState } from './duel.ts';
import { gameOn, type GameOn } from './gameOn.ts';

/**
 * How a round with a mark or a game came out. `open` while it is played; `level` a duel that nobody won; `void` where the
 * device broke it off.
 */
export type Verdict = 'open' | 'beaten' | 'short' | 'level' | 'stopped' | 'void';

/**
 * The verdict on the mark or the game, or null for a round without either.
 *
 * @param others the other rounds of its group
 */
export function verdictOf(round: Round, others: readonly Round[] = []): Verdict | null {
  const mark = round.pressure?.mark;
  const on = gameOn(round, others);
  if (!mark && !on) return null;
  if (round.state !== 'ended') return 'open';
  if (round.ending === 'interrupted') return 'void';
  if (on) {
    if (on.won) return 'beaten';
    if (endedLevel(on, round)) return 'level';
    return round.ending === 'stopped' && !outOfReach(on) ? 'stopped' : 'short';
  }
  const { needed, left } = needOf(round);
  if (needed === 0) return 'beaten';
  // Stopping is no way out of a mark that is already out of reach.
  return round.ending === 'stopped' && needed <= left ? 'stopped' : 'short';
}

/** Time that is up ends a duel as it stands. */
function endedLevel({ plan, state, over }: GameOn, { ending }: Round): boolean {
  return plan.family === 'duel' && (over || ending === 'time-up') && (state as DuelState).ahead === 0;
}

/** Whether not even a make of every shot that is left would win. A duel is over by then. */
function outOfReach({ plan, rule, state, over }: GameOn): boolean {
  if (over || plan.family === 'duel') return over;
  let at = state;
  while (!rule.finished(at)) at = rule.step(at, true);
  return !rule.won(at);
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
