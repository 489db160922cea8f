import { rngFromSeed } from '../basics/chance.ts';
import type { ShooterId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import type { Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import { gameOn, nextStop, restOf } from './gameOn.ts';

/* Several shooters who play one game together, in rotation on one device. */

/** Fewest and most shooters of a group. */
export const GROUP_SIZE = { least: 2, most: 8 } as const;

/**
 * The order in which shooters come, drawn by chance: every order is as likely. The same seed draws the same order,
 * however they are listed, so a draw can be checked in the log.
 */
export function drawOrder(shooters: readonly ShooterId[], seed: number): ShooterId[] {
  // Beside the coins of the round, its opponent and its clocks, which use the seeds before it.
  const rng = rngFromSeed(seed + 3);
  const order = shooters.toSorted(byText);
  for (let last = order.length - 1; last > 0; last -= 1) {
    const drawn = rng.below(last + 1);
    [order[last], order[drawn]] = [order[drawn] as ShooterId, order[last] as ShooterId];
  }
  return order;
}

/**
 * Whose turn comes after a turn of `round`, which is given as it is after it; null where it stays with the same shooter,
 * or nobody is left to shoot.
 *
 * @param over whether the game of `round` is over with that turn
 */
export function nextInGroup(round: Round, others: readonly Round[], over: boolean): Round | null {
  if (!over && !passesOn(round, others)) return null;
  const place = round.group?.place ?? 0;
  const inOrder = others.toSorted((a, b) => orderAfter(place, a) - orderAfter(place, b));
  const all = [round, ...others];
  const withOthers = (one: Round) => nextStop(one, restOf(one, all));
  return inOrder.find((one) => one.state !== 'ended' && withOthers(one) !== null) ?? null;
}

/** Whose turn it is by the latest shot, among the rounds of a group that are not over; of those nobody has shot in, the first. */
export function turnOf(rounds: readonly Round[]): Round {
  const latest = rounds.reduce((last, one) => (lastAt(one) > lastAt(last) ? one : last));
  if (latest.entries.length === 0) {
    const [first] = rounds
      .filter(({ state }) => state !== 'ended')
      .toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0));
    return first ?? latest;
  }
  const others = restOf(latest, rounds);
  const over = latest.state === 'ended' || nextStop(latest, others) === null;
  return nextInGroup(latest, others, over) ?? latest;
}

/** Whether the turn goes on after the latest shot of a round. */
function passesOn(round: Round, others: readonly Round[]): boolean {
  switch (round.group?.turns) {
    case 'shot':
      return true;
    case 'stop':
      return nextStop(round, others) !== round.entries.at(-1)?.stop;
    case 'game':
    case undefined:
      return false;
  }
}

/** Places after the one that shot come first, then from the top. */
function orderAfter(place: number, { group }: Round): number {
  const own = group?.place ?? 0;
  return own > place ? own : own + 1000;
}

/** One shooter of a group, as the game stands. */
export interface GroupStanding {
  readonly round: Round;
  readonly makes: number;
  readonly attempts: number;
  readonly won: boolean;
  readonly over: boolean;
}

/**
 * Everyone of a group: winners first, then by make rate; those level keep their places. A shooter who has not shot comes
 * last.
 */
export function standings(rounds: readonly Round[]): GroupStanding[] {
  return rounds
    .toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0))
    .map((round) => {
      const on = gameOn(round, restOf(round, rounds));
      return {
        round,
        ...roundTally(round),
        won: on?.won ?? false,
        over: on?.over ?? round.state === 'ended',
      };
    })
    .toSorted((a, b) => Number(b.won) - Number(a.won) || rateOf(b) - rateOf(a));
}

/** When it was shot in last. */
export function lastAt(round: Round): number {
  return round.entries.at(-1)?.at ?? -Infinity;
}

function rateOf({ makes, attempts }: GroupStanding): number {
  return attempts === 0 ? -1 : makes / attempts;
}
