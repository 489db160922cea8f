import type { Seconds } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { Round } from '../log/book.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import type { ClimbState } from './climb.ts';
import { clockFor } from './clocks.ts';
import { duelFace, type DuelFace } from './duelFace.ts';
import type { GameOn } from './gameOn.ts';
import type { LivesState } from './lives.ts';
import type { RaceState } from './race.ts';
import type { RacksState } from './racks.ts';
import type { ReachState } from './reach.ts';
import type { TurnResult } from './rule.ts';
import { worthOf } from './ruleOf.ts';
import type { StreakState } from './streak.ts';
import { SHOTS_A_TRIP, type TripsState } from './trips.ts';

/* What matters of a game at eight metres: the few numbers a shooter plays by, taken from the state of its rule. */

export type GameFace =
  | {
      readonly family: 'reach';
      readonly made: number;
      readonly goal: number;
      /** Makes still needed. */
      readonly needed: number;
      /** Shots left. */
      readonly left: number;
    }
  | {
      readonly family: 'last shot';
      readonly made: number;
      readonly goal: number;
      readonly needed: number;
      readonly left: number;
      /** What is on the clock when the next shot begins; null where none comes. */
      readonly start: Seconds | null;
    }
  | {
      readonly family: 'streak';
      /** Makes in a row, the latest shot included. */
      readonly row: number;
      readonly best: number;
      readonly goal: number;
      readonly left: number;
    }
  | {
      readonly family: 'race';
      readonly score: number;
      readonly goal: number;
      /** Lost at this score or below; null where it never is. */
      readonly lost: number | null;
      readonly left: number;
    }
  | {
      readonly family: 'lives';
      readonly made: number;
      readonly goal: number;
      readonly needed: number;
      /** Lives left, of so many. */
      readonly lives: number;
      readonly of: number;
    }
  | {
      readonly family: 'trips';
      /** From 1; after the last trip the last one. */
      readonly trip: number;
      readonly of: number;
      /** Shot of the trip that comes next, from 1. */
      readonly shot: number;
      readonly shots: number;
      /** Whether a miss now ends the trip before its last shot. */
      readonly mustMake: boolean;
      readonly points: number;
      readonly goal: number;
      readonly needed: number;
      /** `margin`: points ahead in this trip's scene, below 0 behind; `left`: seconds on its clock. */
      readonly scene: { readonly margin: number; readonly left: Seconds } | null;
    }
  | {
      readonly family: 'racks';
      /** From 1; after the last ball the last rack. */
      readonly rack: number;
      readonly of: number;
      /** Ball of the rack that comes next, from 1. */
      readonly ball: number;
      readonly balls: number;
      readonly points: number;
      readonly goal: number;
      readonly needed: number;
      /** Points that are still on the racks. */
      readonly left: number;
      /** What the next ball is worth; 0 where none comes. */
      readonly worth: number;
      /** Whether some balls count double. */
      readonly doubles: boolean;
    }
  | {
      readonly family: 'climb';
      /** From 1; on top the last one. */
      readonly step: number;
      readonly of: number;
      /** On this step: makes so far, makes it takes, and shots left for them. */
      readonly made: number;
      readonly goal: number;
      readonly stepLeft: number;
      /** Shots left for the whole climb. */
      readonly left: number;
      readonly top: boolean;
    }
  | DuelFace;

/** What matters of a game as it stands. @param on the round's game, see {@link gameOn} */
export function gameFace(on: GameOn, round: Round): GameFace {
  const { plan, rule, results, stops } = on;
  switch (plan.family) {
    case 'reach':
    case 'last shot': {
      const { taken, makes } = on.state as ReachState;
      const left = rule.longest - taken;
      const goal = { made: makes, goal: plan.needed, needed: atLeast0(plan.needed - makes), left };
      if (plan.family === 'reach') return { family: 'reach', ...goal };
      return { family: 'last shot', ...goal, start: left === 0 ? null : (clockFor(round)?.seconds ?? null) };
    }
    case 'streak': {
      const { row, taken } = on.state as StreakState;
      return { family: 'streak', row, best: bestRow(results), goal: plan.row, left: plan.most - taken };
    }
    case 'race': {
      const { score, taken } = on.state as RaceState;
      return { family: 'race', score, goal: plan.to, lost: plan.lost, left: plan.most - taken };
    }
    case 'lives': {
      const { makes, misses } = on.state as LivesState;
      const { needed: goal, lives: of } = plan;
      return { family: 'lives', made: makes, goal, needed: atLeast0(goal - makes), lives: of - misses, of };
    }
    case 'trips':
      return tripsFace(plan, on.state as TripsState, results);
    case 'racks': {
      const { taken, points } = on.state as RacksState;
      const worth = worthOf(round.stops, plan.double, round.pressure?.seed ?? 0);
      const rack = stops[Math.min(taken, stops.length - 1)] ?? 0;
      const { place, all } = placeAtStop(round.stops, Math.min(taken, stops.length - 1));
      return {
        family: 'racks',
        rack: rack + 1,
        of: round.stops.length,
        ball: place + 1,
        balls: all,
        points,
        goal: plan.needed,
        needed: atLeast0(plan.needed - points),
        left: worth.slice(taken).reduce((sum, one) => sum + one, 0),
        worth: worth[taken] ?? 0,
        doubles: plan.double !== 'none',
      };
    }
    case 'climb':
      return climbFace(plan, on.state as ClimbState, round.stops);
    case 'duel':
      return duelFace(on, plan, round);
  }
}

type Plan<F extends GamePlan['family']> = Extract<GamePlan, { family: F }>;
type FaceOfFamily<F extends GamePlan['family']> = Extract<GameFace, { family: F }>;

function tripsFace(
  plan: Plan<'trips'>,
  { trip, taken, points }: TripsState,
  results: readonly TurnResult[],
): FaceOfFamily<'trips'> {
  const shots = SHOTS_A_TRIP[plan.kind];
  const inTrip = results.slice(results.length - taken).filter((result) => result === 'make').length;
  return {
    family: 'trips',
    trip: Math.min(trip + 1, plan.trips),
    of: plan.trips,
    shot: taken + 1,
    shots,
    mustMake: plan.kind === 'one-and-one' && taken === 0,
    points,
    goal: plan.needed,
    needed: atLeast0(plan.needed - points),
    scene: plan.scene && { margin: inTrip - plan.scene.down, left: plan.scene.left },
  };
}

function climbFace(
  plan: Plan<'climb'>,
  { step, taken, made, all }: ClimbState,
  steps: readonly Stop[],
): FaceOfFamily<'climb'> {
  const top = step === steps.length;
  const at = top ? step - 1 : step;
  return {
    family: 'climb',
    step: at + 1,
    of: steps.length,
    made: top ? (plan.makes[at] ?? 0) : made,
    goal: plan.makes[at] ?? 0,
    stepLeft: top ? 0 : (steps[at]?.attempts ?? 0) - taken,
    left: plan.most - all,
    top,
  };
}

/** Where a turn lies at its stop, the card shot round and round: the place from 0, and how many there are. */
export function placeAtStop(card: readonly Stop[], turn: number): { place: number; all: number } {
  const all = card.reduce((sum, { attempts }) => sum + attempts, 0);
  let place = all === 0 ? 0 : turn % all;
  for (const { attempts } of card) {
    if (place < attempts) return { place, all: attempts };
    place -= attempts;
  }
  return { place: 0, all: 0 };
}

function bestRow(results: readonly TurnResult[]): number {
  let [row, best] = [0, 0];
  for (const result of results) {
    row = result === 'make' ? row + 1 : 0;
    best = Math.max(best, row);
  }
  return best;
}

function atLeast0(value: number): number {
  return Math.max(0, value);
}
