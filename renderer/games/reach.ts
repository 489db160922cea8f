import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

/** Turns taken and makes so far. */
export interface ReachState {
  readonly taken: number;
  readonly makes: number;
}

/**
 * Reach `needed` makes in `turns` turns; the card is shot out whatever happens, so that makes and attempts stay an
 * honest record.
 *
 * @throws InvariantError unless 0 ≤ needed ≤ turns
 */
export function reach(needed: number, turns: number): Rule<ReachState> {
  invariant(needed >= 0 && needed <= turns, `the mark lies between 0 and ${turns}`);
  return {
    start: { taken: 0, makes: 0 },
    step: ({ taken, makes }, made) => ({ taken: taken + 1, makes: makes + (made ? 1 : 0) }),
    finished: ({ taken }) => taken === turns,
    won: ({ makes }) => makes >= needed,
    shot: ({ taken }) => taken,
    key: ({ taken, makes }) => taken * (turns + 1) + makes,
    longest: turns,
  };
}
