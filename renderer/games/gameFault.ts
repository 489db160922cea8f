import { InvariantError } from '../basics/invariant.ts';
import { attemptsOn, type Stop } from '../court/cards.ts';
import type { GamePlan, Opponent } from '../pressure/gamePlan.ts';
import { ruleOf } from './ruleOf.ts';
import { SHOTS_A_TRIP } from './trips.ts';

/** Most shots a game may take of one shooter: nobody has more left in one evening, and no tablet waits for it. */
export const MOST_GAME_SHOTS = 200;
/** Most trips to the line: with one-and-ones the ways a game can go grow with their third power. */
const MOST_TRIPS = 30;
/** Most states of a climb, steps by shots on them by shots in all. */
const MOST_CLIMB = 60_000;

/**
 * Why a game cannot be played on a card, in a sentence for whoever makes it; null where it can be won, can be lost or
 * ends by itself, and is small enough to be worked out.
 */
export function gameFault(plan: GamePlan, card: readonly Stop[]): string | null {
  return familyFault(plan, card) ?? sizeFault(plan, card);
}

function familyFault(plan: GamePlan, card: readonly Stop[]): string | null {
  const shots = attemptsOn(card);
  if (shots === 0) return 'A game needs at least one shot. Choose where from.';
  switch (plan.family) {
    case 'reach':
      return needFault(plan.needed, shots, 'shots');
    case 'last shot':
      if (plan.from > plan.to)
        return 'The clock cannot start with more than its most. Put the shorter time first.';
      if (plan.from < 1) return 'Leave at least one second on the clock, or no ball leaves the hand in time.';
      return needFault(plan.needed, shots, 'shots');
    case 'streak':
      return plan.row > plan.most
        ? `A run of ${plan.row} does not fit into ${plan.most} shots. Allow more shots, or ask for a shorter run.`
        : plan.row < 1
          ? 'A run needs at least one make.'
          : null;
    case 'race':
      return raceFault(plan);
    case 'lives':
      return plan.needed < 1 || plan.lives < 1
        ? 'Ask for at least one make, and leave at least one life.'
        : null;
    case 'trips':
      if (card[0]?.shot !== 'free-throw')
        return 'Trips to the line need free throws. Choose a card of free throws.';
      if (plan.trips < 1) return 'There has to be one trip at least.';
      if (plan.trips > MOST_TRIPS) return `${MOST_TRIPS} trips to the line is the most.`;
      return needFault(plan.needed, plan.trips * SHOTS_A_TRIP[plan.kind], 'points on these trips');
    case 'racks':
      return needFault(plan.needed, surePoints(card, plan.double), 'points from these racks');
    case 'climb':
      return climbFault(plan, card);
    case 'duel':
      return duelFault(plan, shots);
  }
}

function needFault(needed: number, most: number, what: string): string | null {
  if (needed < 1) return 'With nothing to make it is won before it begins. Ask for one at least.';
  return needed > most
    ? `There are only ${most} ${what}, so ${needed} cannot be reached. Ask for ${most} or fewer.`
    : null;
}

/** Points that can be made however the coin falls: with coins it may leave every ball at one. */
export function surePoints(
  card: readonly Stop[],
  double: Extract<GamePlan, { family: 'racks' }>['double'],
): number {
  return attemptsOn(card) + (double === 'last' ? card.length : 0);
}

function raceFault({
  to,
  up,
  down,
  floor,
  lost,
  most,
}: Extract<GamePlan, { family: 'race' }>): string | null {
  if (to < 1 || up < 1 || down < 0) return 'A make has to bring a point, a miss must not bring one.';
  if (to > up * most) {
    return `In ${most} shots at most ${up * most} points can be made, so ${to} cannot be reached. Allow more shots.`;
  }
  if (floor !== null && floor > 0) return 'The score starts at 0, so it cannot be held above that.';
  if (lost === null) return null;
  if (lost >= 0) return 'The score starts at 0, so the game can only be lost below that.';
  return floor !== null && lost <= floor
    ? `The score never falls below ${floor}, so the game cannot be lost at ${lost}. Take one of the two away.`
    : null;
}

function climbFault(
  { makes, back, most }: Extract<GamePlan, { family: 'climb' }>,
  card: readonly Stop[],
): string | null {
  const wrong = card.findIndex(
    ({ attempts }, step) => !((makes[step] ?? 0) >= 1 && (makes[step] ?? 0) <= attempts),
  );
  if (wrong !== -1) {
    return `Step ${wrong + 1} has ${card[wrong]?.attempts ?? 0} shots and asks for ${makes[wrong] ?? 0} makes. It cannot be climbed.`;
  }
  if (back < 0) return 'Falling short must not lead up.';
  const least = card.reduce((sum, _, step) => sum + (makes[step] ?? 0), 0);
  return most < least ? `Even without a miss the top takes ${least} shots. Allow ${least} or more.` : null;
}

function duelFault(
  { against, headStart, extraPairs }: Extract<GamePlan, { family: 'duel' }>,
  shots: number,
): string | null {
  if (Math.abs(headStart) > shots) {
    return `Nobody can catch up ${Math.abs(headStart)} in ${shots} shots. Make the head start smaller.`;
  }
  if (against.kind === 'own round' && extraPairs > 0) {
    return 'An earlier round has no shots beyond its last. Take the extra pairs away.';
  }
  const theirs = fewestOf(against, shots);
  const best = shots + headStart - theirs;
  // Level at the end goes on, unless the other never misses.
  const canGoOn = extraPairs > 0 && !(against.kind === 'drawn' && against.rate === 1);
  return best > 0 || (best === 0 && canGoOn)
    ? null
    : 'Even without a miss this opponent cannot be beaten. Give yourself a head start, or choose a weaker one.';
}

/** The fewest makes the other may come to. */
function fewestOf(against: Opponent, shots: number): number {
  if (against.kind === 'own round') return against.made.slice(0, shots).filter(Boolean).length;
  return against.kind === 'drawn' && against.rate === 1 ? shots : 0;
}

function sizeFault(plan: GamePlan, card: readonly Stop[]): string | null {
  const most = mostShots(plan, card);
  if (most > MOST_GAME_SHOTS) {
    return `This could take ${most} shots. Keep it to ${MOST_GAME_SHOTS}, so that it comes to an end.`;
  }
  if (plan.family === 'climb') {
    const onSteps = card.reduce((sum, { attempts }) => sum + (attempts * (attempts + 1)) / 2, 0);
    if (onSteps * plan.most > MOST_CLIMB) {
      return 'This climb is too long to be worked out. Take fewer steps, or fewer shots on each.';
    }
  }
  try {
    ruleOf(plan, card, 0);
    return null;
  } catch (error) {
    // Nothing is known to come here: every way a rule refuses has its own sentence above.
    if (error instanceof InvariantError) return `This game does not work out: it needs ${error.message}.`;
    throw error;
  }
}

/** Shots of one shooter, worked out without building the rule, which may be huge. */
function mostShots(plan: GamePlan, card: readonly Stop[]): number {
  switch (plan.family) {
    case 'reach':
    case 'last shot':
    case 'racks':
      return attemptsOn(card);
    case 'streak':
    case 'race':
    case 'climb':
      return plan.most;
    case 'lives':
      return plan.needed + plan.lives - 1;
    case 'trips':
      return plan.trips * SHOTS_A_TRIP[plan.kind];
    case 'duel':
      return attemptsOn(card) + plan.extraPairs;
  }
}
