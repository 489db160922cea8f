import type { Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { roundTally, turnsOf } from '../log/roundCells.ts';
import type { DuelState } from './duel.ts';
import { gameOn, sharesGame, type GameOn } from './gameOn.ts';

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

/** The chance of a game as it was said before the first shot, and what came of it. */
export interface GameOutcome {
  readonly chance: Probability;
  readonly beaten: boolean;
}

/**
 * What came of a round's game; null where it has none, its chance was not told, or nobody can say: it was stopped before it
 * was decided, or the device broke it off. Left out, won or not, are rounds of which the chance did not know: those in
 * which a clock for each shot took one, and those of several shooters on one round clock.
 *
 * @param others the other rounds of its group
 */
export function gameOutcome(round: Round, others: readonly Round[]): GameOutcome | null {
  const { game = null, clock = null } = round.pressure ?? {};
  if (game === null || game.chance === null) return null;
  if (clock?.kind === 'round' && round.group !== null && round.group.turns !== 'game') return null;
  if (round.entries.some(({ kind }) => kind === 'expired')) return null;
  if (sharesGame(round) && others.length === 0) return null;
  const verdict = verdictOf(round, others);
  if (verdict !== 'beaten' && verdict !== 'short' && verdict !== 'level') return null;
  return { chance: game.chance, beaten: verdict === 'beaten' };
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
