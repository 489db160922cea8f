import { isoDateAt } from '../basics/days.ts';
import type { ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import { attemptsOn, type Card, type Stop } from '../court/cards.ts';
import { turnResults } from '../games/turnResults.ts';
import type { Moment } from '../log/begin.ts';
import type { Book, Round } from '../log/book.ts';
import { roundTally, turnsOf } from '../log/roundCells.ts';
import type { GamePlan, Opponent } from '../pressure/gamePlan.ts';
import { forecast } from '../stats/ability.ts';
import { abilityNow } from './forecast.ts';
import type { ListedGame } from './gameActions.ts';
import { EXTRA_PAIRS } from './groupWish.ts';
import { recordOf } from './recordOf.ts';
import { cardsOf } from './roundActions.ts';

/* Duels with somebody who is not on court: one's own earlier round, or an opponent of a chosen strength. */

/** Earlier rounds that are offered; older ones are hardly remembered. */
const MOST_ROUNDS = 30;

/** A round that can be played against, shot for shot. */
export interface EarlierRound {
  readonly round: Round;
  readonly makes: number;
  readonly shots: number;
}

/** Rounds of a shooter that were tapped shot by shot to the end of their card, newest first. */
export function earlierRounds(book: Book, shooter: ShooterId): EarlierRound[] {
  const own = recordOf(book, shooter).filter((round) => replays(round));
  return own
    .toReversed()
    .slice(0, MOST_ROUNDS)
    .map((round) => ({ round, makes: roundTally(round).makes, shots: turnsOf(round).all }));
}

/** Every turn of the card in its order, each noted by itself: shot, or taken by the clock. */
function replays({ imported, state, entry, entries, stops, pressure }: Round): boolean {
  if (imported || state !== 'ended' || entry !== 'each-shot') return false;
  const inOrder = pressure?.game ? ['reach', 'racks', 'last shot'].includes(pressure.game.plan.family) : true;
  return inOrder && entries.length === attemptsOn(stops) && entries.every(({ kind }) => kind !== 'count');
}

/** What an opponent makes on a card who is as good as the shooter on an average day, under pressure. */
export function averageRate(
  book: Book,
  shooter: ShooterId,
  stops: readonly Stop[],
  now: Pick<Moment, 'at' | 'zone'>,
): Probability {
  const ability = abilityNow(book, shooter, 'pressured', stops, isoDateAt(now.at, now.zone));
  return inHundredths(forecast(ability).mean / attemptsOn(stops));
}

/** Whom a shooter plays against; what stands in an address, too. */
export type Rival =
  | { readonly kind: 'round'; readonly round: string }
  | { readonly kind: 'rate'; readonly rate: Probability; readonly card: string };

export function writeRival(rival: Rival): string {
  return rival.kind === 'round'
    ? `round ${rival.round}`
    : `rate ${Math.round(rival.rate * 100)} ${rival.card}`;
}

/** @param text out of an address, which may be anything */
export function readRival(text: string): Rival | null {
  const round = /^round (\S+)$/.exec(text)?.[1];
  if (round !== undefined) return { kind: 'round', round };
  const [, rate, card] = /^rate (\d{1,3}) (\S+)$/.exec(text) ?? [];
  if (rate === undefined || card === undefined || Number(rate) > 100) return null;
  return { kind: 'rate', rate: Number(rate) / 100, card };
}

/** The duel as a game to set up; null where its round or its card is not there. */
export function soloDuel(book: Book, shooter: ShooterId, rival: Rival): ListedGame | null {
  if (rival.kind === 'rate') {
    const card = cardsOf(book).find(({ id }) => id === rival.card);
    return card ? duelOn(card, { kind: 'drawn', rate: rival.rate }, `Duel: ${card.name}`, EXTRA_PAIRS) : null;
  }
  const round = book.rounds.get(rival.round);
  if (!round || round.shooter !== shooter || !replays(round)) return null;
  const { id, stops, game, card } = round;
  const made = turnResults(round).map((result) => result === 'make');
  // The earlier round has no shots beyond its last.
  const against = { kind: 'own round', round: id, made } as const;
  return duelOn({ id: String(card ?? id), name: game, stops }, against, `Your earlier round: ${game}`, 0);
}

function duelOn(card: Card, against: Opponent, name: string, extraPairs: number): ListedGame {
  const plan: GamePlan = { family: 'duel', against, headStart: 0, extraPairs };
  return {
    id: card.id as string,
    name: name.slice(0, 200),
    stops: card.stops,
    plan,
    clock: null,
    crowd: true,
    words: null,
    own: false,
  };
}

/** Rates stand in addresses. */
function inHundredths(rate: Probability): Probability {
  return Math.min(99, Math.max(1, Math.round(rate * 100))) / 100;
}
