import type { RoundId, ShooterId } from '../basics/ids.ts';
import { drawOrder } from '../games/group.ts';
import { beginGroupFacts } from '../log/begin.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { ingredientsOf, type PressureSetup } from '../pressure/ingredients.ts';
import { groupRefusal, groupRung } from './groupLine.ts';
import type { Seat } from './groupPrices.ts';
import { fitsGame, type GroupWish } from './groupWish.ts';
import type { Gym } from './gymStore.ts';

/* What several people do together: start one game. */

/** Everything a game of several starts from. */
export interface GroupStart {
  readonly wish: GroupWish;
  /** Everybody's game, in the order of the wish. */
  readonly seats: readonly Seat[];
  /** What each said; nobody has to say anything. */
  readonly nerves: ReadonlyMap<ShooterId, number | null>;
  /** Decides the order and everything random in the game, the same for all. */
  readonly seed: number;
}

/**
 * Starts a round for each shooter, in the order they shoot.
 *
 * @returns their ids; null where it could not be saved, another round is open, or something speaks against it
 */
export async function startGroup(gym: Gym, start: GroupStart): Promise<RoundId[] | null> {
  const { book } = gym.store.getState();
  const { wish, nerves, seed } = start;
  const moment = gym.moment();
  const stake = stakeOf(wish);
  if (book.open || start.seats.length !== wish.shooters.length) return null;
  if (!fitsGame(wish.game, wish.shooters.length)) return null;
  if (groupRefusal(book, wish.shooters, stake, moment) !== null) return null;
  const coin = wish.order === 'coin';
  const { rounds, facts } = beginGroupFacts(
    book,
    inOrder(start).map((seat) => ({
      shooter: seat.shooter,
      condition: 'pressured',
      card: { id: wish.game.id, name: wish.game.name, stops: wish.game.stops },
      entry: 'each-shot',
      nerves: nerves.get(seat.shooter) ?? null,
      pressure: setupFor(wish, seat, seed),
    })),
    { turns: wish.turns, coin },
    moment,
  );
  return (await gym.dispatch(facts)) ? rounds : null;
}

/** What is on the line; null for nothing. */
export function stakeOf({ stake }: Pick<GroupWish, 'stake'>): string | null {
  return stake.trim() === '' ? null : stake.trim();
}

/** The seats as they shoot. A head start belongs to a shooter, whoever comes first. */
function inOrder({ wish, seats, seed }: GroupStart): Seat[] {
  if (wish.order === 'listed') return [...seats];
  const order = drawOrder(wish.shooters, seed);
  const turned = order[0] !== wish.shooters[0];
  return order.flatMap((shooter) =>
    seats
      .filter((seat) => seat.shooter === shooter)
      .map((seat) => (turned ? { ...seat, plan: turnedRound(seat.plan) } : seat)),
  );
}

/** A duel with its two shooters the other way round. */
function turnedRound(plan: GamePlan): GamePlan {
  return plan.family === 'duel' && plan.headStart !== 0 ? { ...plan, headStart: -plan.headStart } : plan;
}

function setupFor(wish: GroupWish, { name, plan, chance }: Seat, seed: number): PressureSetup {
  const { game, crowd, showChance } = wish;
  const stake = stakeOf(wish);
  const setup = { stake, mark: null, game: { name, plan, chance }, clock: game.clock, crowd };
  return {
    ...setup,
    ingredients: ingredientsOf(setup, { watchers: true, coldStart: false }),
    showChance,
    rung: groupRung(stake),
    seed,
  };
}
