import { rngFromSeed } from '../basics/chance.ts';
import { invariant } from '../basics/invariant.ts';
import type { Seconds } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { turnsOf } from '../log/roundCells.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import type { ClockSetting } from '../pressure/ingredients.ts';

/**
 * What is on the clock when a turn of a last-shot game begins: any tenth between the two moments of its plan, each as
 * likely. The same turn of the same round always starts alike, taken back and shot again too.
 *
 * @param turn from 0
 */
export function lastShotStart(
  { from, to }: Extract<GamePlan, { family: 'last shot' }>,
  seed: number,
  turn: number,
): Seconds {
  invariant(turn >= 0, 'a turn of the game');
  const least = inTenths(Math.min(from, to));
  const most = inTenths(Math.max(from, to));
  // Beside the coins of the round, which use the seed as it is, and its opponent, who has the next one.
  const rng = rngFromSeed(seed + 2);
  let start = least;
  for (let at = 0; at <= turn; at += 1) start = least + rng.below(most - least + 1);
  return start / 10;
}

/** The clock a round's next turn is shot on; null without one. A last shot has its own, whatever else was set. */
export function clockFor(round: Pick<Round, 'pressure' | 'entries' | 'stops'>): ClockSetting | null {
  const { clock = null, game = null, seed = 0 } = round.pressure ?? {};
  if (game?.plan.family !== 'last shot') return clock;
  return { kind: 'shot', seconds: lastShotStart(game.plan, seed, turnsOf(round).used) };
}

/** Scoreboards show tenths, so a clock starts on one. */
function inTenths(seconds: Seconds): number {
  return Math.max(1, Math.round(seconds * 10));
}
