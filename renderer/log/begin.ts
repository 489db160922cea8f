import type { Id, NewId, RoundId, SessionId, ShooterId } from '../basics/ids.ts';
import { isoDateAt } from '../basics/days.ts';
import { rngFromSeed } from '../basics/chance.ts';
import { invariant } from '../basics/invariant.ts';
import type { EpochMs } from '../basics/units.ts';
import type { Card } from '../court/cards.ts';
import type { PressureSetup } from '../pressure/ingredients.ts';
import type { Book, Round, RoundGroup } from './book.ts';
import type { Condition, EntryWay, PairOrder } from './events.ts';
import type { Fact } from './facts.ts';
import { roundTally } from './roundCells.ts';

/** A visit to the court is over after three hours without a round. Our own choice. */
export const VISIT_GAP_MS = 3 * 3_600_000;

/** The plan of one round, as the shooter set it up. */
export interface RoundPlan {
  readonly shooter: ShooterId;
  readonly condition: Condition;
  readonly card: Card;
  readonly entry: EntryWay;
  readonly nerves: number | null;
  readonly pressure: PressureSetup | null;
  readonly pair: { readonly id: Id<'pair'>; readonly place: 1 | 2 } | null;
  /** The game it is part of, where several shooters play together. */
  readonly group?: RoundGroup;
}

export interface Moment {
  readonly at: EpochMs;
  readonly zone: number;
  readonly newId: NewId;
}

/** The visit that goes on, or a new one; with the shots already taken in it. */
export function visitFor(
  book: Book,
  shooter: ShooterId,
  { at, zone, newId }: Moment,
): { session: SessionId; first: number; facts: Fact[] } {
  const date = isoDateAt(at, zone);
  const today = [...book.rounds.values()].filter(
    (round) => round.shooter === shooter && round.date === date && !round.imported,
  );
  const latest = today.reduce<Round | null>(
    (last, round) => (last && lastAt(last) > lastAt(round) ? last : round),
    null,
  );
  if (latest && at - lastAt(latest) < VISIT_GAP_MS) {
    const shots = today
      .filter((round) => round.session === latest.session)
      .map((round) => roundTally(round).attempts);
    return { session: latest.session, first: shots.reduce((sum, n) => sum + n, 0), facts: [] };
  }
  // A visit can be begun by the toss of a pair, before its first round.
  const begun = [...book.sessions.values()].findLast(
    (visit) => visit.shooter === shooter && visit.date === date && visit.rounds === 0,
  );
  if (begun) return { session: begun.id, first: 0, facts: [] };
  const session = newId<'session'>();
  return { session, first: 0, facts: [{ type: 'SessionStarted', body: { session, shooter, date } }] };
}

/** The facts that start a round, and with it a visit where none goes on. */
export function beginFacts(book: Book, plan: RoundPlan, moment: Moment): { round: RoundId; facts: Fact[] } {
  const { session, first, facts } = visitFor(book, plan.shooter, moment);
  const round = moment.newId<'round'>();
  const { shooter, condition, card, entry, nerves, pressure, pair, group } = plan;
  const started: Fact = {
    type: 'RoundStarted',
    body: {
      round,
      session,
      shooter,
      condition,
      card,
      entry,
      first,
      nerves,
      pair,
      pressure,
      ...(group ? { group } : {}),
    },
  };
  return { round, facts: [...facts, started] };
}

/**
 * The facts that start a game of several shooters: a round for each, in their own visit, in the order they shoot.
 *
 * @throws InvariantError where a shooter comes twice
 */
export function beginGroupFacts(
  book: Book,
  plans: readonly Omit<RoundPlan, 'group' | 'pair'>[],
  { turns, coin }: Pick<RoundGroup, 'turns'> & { readonly coin: boolean },
  moment: Moment,
): { rounds: RoundId[]; facts: Fact[] } {
  invariant(new Set(plans.map(({ shooter }) => shooter)).size === plans.length, 'every shooter once');
  const id = moment.newId<'group'>();
  const begun = plans.map((plan, at) =>
    beginFacts(book, { ...plan, pair: null, group: { id, place: at + 1, turns, coin } }, moment),
  );
  return { rounds: begun.map(({ round }) => round), facts: begun.flatMap(({ facts }) => facts) };
}

/** Tosses the coin for a pair's order. The seed is logged, so the toss can be checked. */
export function pairOrderFor(seed: number): PairOrder {
  return rngFromSeed(seed).chance(0.5) ? 'relaxed-first' : 'pressured-first';
}

/** The condition of a pair's first or second round. */
export function conditionInPair(order: PairOrder, place: 1 | 2): Condition {
  return (order === 'relaxed-first') === (place === 1) ? 'relaxed' : 'pressured';
}

function lastAt(round: Round): EpochMs {
  return round.entries.at(-1)?.at ?? round.startedAt;
}
