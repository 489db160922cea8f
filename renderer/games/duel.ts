import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

export interface DuelState {
  /** Shots taken by both together; the first shooter has the even ones. */
  readonly taken: number;
  /** Makes of the first shooter, head start included, minus those of the second. */
  readonly ahead: number;
}

export interface Duel {
  /** Shots for each. */
  readonly shots: number;
  /** Points the first shooter starts ahead; below 0 for the second. */
  readonly headStart: number;
  /** Extra pairs of shots while it is level; level after the last of them, nobody has won. */
  readonly extraPairs: number;
}

/**
 * Two shooters in turn, shot for shot; level at the end, pair by pair until one leads. It ends as soon as one cannot be
 * caught. Seen from the first shooter: `made` is whoever's turn it is.
 *
 * The first shooter's shots are counted 0 … shots − 1, the second's from `shots` on; extra shots go round again.
 *
 * @throws InvariantError unless each has a shot, and nobody is out of reach from the start
 */
export function duel({ shots, headStart, extraPairs }: Duel): Rule<DuelState> {
  invariant(shots >= 1 && extraPairs >= 0, 'a shot for each');
  invariant(Math.abs(headStart) <= shots, `a head start of at most ${shots}`);
  const all = 2 * shots;
  const longest = all + 2 * extraPairs;
  return {
    start: { taken: 0, ahead: headStart },
    step: ({ taken, ahead }, made) => ({
      taken: taken + 1,
      ahead: ahead + (made ? (taken % 2 === 0 ? 1 : -1) : 0),
    }),
    finished: ({ taken, ahead }) => {
      if (taken === longest) return true;
      if (taken >= all) return taken % 2 === 0 && ahead !== 0;
      const left = all - taken;
      // The second shooter has the last word, so of an odd number left theirs is one more.
      return ahead > Math.ceil(left / 2) || -ahead > Math.floor(left / 2);
    },
    won: ({ ahead }) => ahead > 0,
    shot: ({ taken }) => (taken % 2 === 0 ? 0 : shots) + (Math.floor(taken / 2) % shots),
    key: ({ ahead }) => ahead,
    longest,
  };
}

/** A duel as its second shooter sees it: level after the last extra pair, neither has won. */
export function wonBySecond(rule: Rule<unknown>): Rule<unknown> {
  return { ...rule, won: (state) => (state as DuelState).ahead < 0 };
}
