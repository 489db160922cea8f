import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

export interface RacksState {
  readonly taken: number;
  readonly points: number;
}

/**
 * Racks of balls against the clock: score `needed` points, each ball worth what `worth` says in the order they are shot.
 *
 * @throws InvariantError where there is no ball, or the points cannot be made
 */
export function racks(worth: readonly number[], needed: number): Rule<RacksState> {
  const all = worth.reduce((sum, points) => sum + points, 0);
  invariant(worth.length >= 1 && worth.every((points) => points >= 1), 'a ball, each worth a point or more');
  invariant(needed >= 1 && needed <= all, `1 to ${all} points`);
  return {
    start: { taken: 0, points: 0 },
    step: ({ taken, points }, made) => ({
      taken: taken + 1,
      points: points + (made ? (worth[taken] ?? 0) : 0),
    }),
    finished: ({ taken }) => taken === worth.length,
    won: ({ points }) => points >= needed,
    shot: ({ taken }) => taken,
    key: ({ points }) => points,
    longest: worth.length,
  };
}

/** Racks of five with the last ball double, as the contest's published rules have it. */
export function lastBallDouble(count: number, balls: number): number[] {
  return Array.from({ length: count * balls }, (_, ball) => (ball % balls === balls - 1 ? 2 : 1));
}
