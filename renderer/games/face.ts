import { attemptsOn, type Stop } from '../court/cards.ts';
import type { Round } from '../log/book.ts';
import { turnsOf } from '../log/roundCells.ts';
import type { ClimbState } from './climb.ts';
import { gameFace, placeAtStop, type GameFace } from './gameFace.ts';
import { gameOn, type GameOn } from './gameOn.ts';
import type { TripsState } from './trips.ts';

/** Which of a shooter's shots comes next. */
export interface ShotCount {
  /** From 1; one beyond the last where it is over. */
  readonly next: number;
  readonly most: number;
  /** Whether all of them are shot, whatever happens. */
  readonly fixed: boolean;
}

/** The latest shots that belong together: at this stop, on this trip, on this step. */
export interface NearShots {
  readonly taken: number;
  readonly toCome: number;
}

export interface Face {
  readonly game: GameFace;
  readonly shots: ShotCount;
  readonly near: NearShots;
  readonly over: boolean;
  readonly won: boolean;
}

/**
 * The face of a round's game; null for a round without one.
 *
 * @param others the other rounds of its group
 */
export function faceOf(round: Round, others: readonly Round[] = []): Face | null {
  const on = gameOn(round, others);
  if (!on) return null;
  const game = gameFace(on, round);
  const { used } = turnsOf(round);
  return {
    game,
    shots: { next: used + 1, ...countOf(on, round.stops) },
    near: nearShots(on, round.stops, game, used),
    over: on.over,
    won: on.won,
  };
}

function countOf({ plan, rule }: GameOn, card: readonly Stop[]): Omit<ShotCount, 'next'> {
  switch (plan.family) {
    case 'reach':
    case 'last shot':
    case 'racks':
      return { most: rule.longest, fixed: true };
    case 'trips':
      return { most: rule.longest, fixed: plan.kind !== 'one-and-one' };
    case 'duel':
      return { most: attemptsOn(card) + plan.extraPairs, fixed: false };
    case 'streak':
    case 'race':
    case 'lives':
    case 'climb':
      return { most: rule.longest, fixed: false };
  }
}

function nearShots(
  { plan, state, rule, over }: GameOn,
  card: readonly Stop[],
  game: GameFace,
  used: number,
): NearShots {
  if (game.family === 'trips') {
    const { taken } = state as TripsState;
    return { taken, toCome: over ? 0 : game.shots - taken };
  }
  if (game.family === 'climb') {
    return { taken: (state as ClimbState).taken, toCome: over ? 0 : Math.min(game.stepLeft, game.left) };
  }
  if (over) return { taken: used === 0 ? 0 : placeAtStop(card, used - 1).place + 1, toCome: 0 };
  const { place, all } = placeAtStop(card, used);
  // Where the longest game ends in the middle of a stop, no more shots are to come.
  const most = plan.family === 'duel' ? Infinity : rule.longest - used;
  return { taken: place, toCome: Math.min(all - place, most) };
}
