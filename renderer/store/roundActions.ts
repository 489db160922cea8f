import type { PairId, RoundId, ShooterId } from '../basics/ids.ts';
import { STANDARD_CARDS, type Card } from '../court/cards.ts';
import { beginFacts, conditionInPair, pairOrderFor, visitFor, type RoundPlan } from '../log/begin.ts';
import type { Book, Pair, Round } from '../log/book.ts';
import type { EntryWay } from '../log/events.ts';
import type { PressureSetup } from '../pressure/ingredients.ts';
import type { Gym } from './gymStore.ts';

/* What a person does with whole rounds: start one, toss for a pair, finish up. */

/** The cards a shooter can choose from: the standard ones, then their own. */
export function cardsOf(book: Pick<Book, 'cards'>): Card[] {
  return [...STANDARD_CARDS, ...book.cards.values()];
}

/** Starts a round. @returns its id, or null where it could not be saved or another round is open */
export async function startRound(gym: Gym, plan: RoundPlan): Promise<RoundId | null> {
  const { book } = gym.store.getState();
  if (book.open) return null;
  const { round, facts } = beginFacts(book, plan, gym.moment());
  return (await gym.dispatch(facts)) ? round : null;
}

/** Tosses the coin for a pair and lays both rounds down. @returns the pair, or null where it could not be saved */
export async function tossPair(
  gym: Gym,
  plan: { shooter: ShooterId; card: Card; entry: EntryWay; pressure: PressureSetup },
): Promise<PairId | null> {
  const { book } = gym.store.getState();
  const moment = gym.moment();
  const { session, facts } = visitFor(book, plan.shooter, moment);
  const pair = moment.newId<'pair'>();
  const saved = await gym.dispatch([
    ...facts,
    {
      type: 'PairTossed',
      body: {
        pair,
        session,
        shooter: plan.shooter,
        seed: plan.pressure.seed,
        order: pairOrderFor(plan.pressure.seed),
        card: plan.card,
        entry: plan.entry,
        pressure: plan.pressure,
      },
    },
  ]);
  return saved ? pair : null;
}

/** Starts the first or the second round of a pair. */
export function startPairRound(
  gym: Gym,
  pair: Pair,
  place: 1 | 2,
  nerves: number | null,
): Promise<RoundId | null> {
  const condition = conditionInPair(pair.order, place);
  return startRound(gym, {
    shooter: pair.shooter,
    condition,
    card: pair.card,
    entry: pair.entry,
    nerves,
    pressure: condition === 'pressured' ? pair.pressure : null,
    pair: { id: pair.id, place },
  });
}

/** The rounds of a pair that have been started, open or over. */
export function roundsOfPair(book: Book, pair: PairId): Round[] {
  const rounds = [...book.rounds.values(), ...(book.open ? [book.open] : [])];
  return rounds.filter((round) => round.pair?.id === pair);
}

/** A pair of this shooter's whose second round is still to be played, today; null where there is none. */
export function unfinishedPair(
  book: Book,
  shooter: ShooterId,
  today: string,
): { pair: Pair; next: 1 | 2 } | null {
  const latest = [...book.pairs.values()].findLast((pair) => pair.shooter === shooter);
  if (!latest || book.open) return null;
  const next = nextOfPair(book, latest.id);
  const fresh = book.sessions.get(latest.session)?.date === today;
  return fresh && next !== null ? { pair: latest, next } : null;
}

/** The round of a pair that comes next; null when both were played, one is being played, or the first was broken off. */
export function nextOfPair(book: Book, pair: PairId): 1 | 2 | null {
  const [first, second] = roundsOfPair(book, pair);
  if (!first) return 1;
  const whole = first.ending === 'played-out' || first.ending === 'time-up';
  return whole && !second ? 2 : null;
}

/** Any round: open, waiting for its turn, or over. */
export function roundById(book: Book, id: string | null): Round | null {
  if (id === null) return null;
  return book.open?.id === id ? book.open : (book.waiting.get(id) ?? book.rounds.get(id) ?? null);
}
