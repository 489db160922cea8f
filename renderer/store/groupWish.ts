import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import { present } from '../basics/invariant.ts';
import { STANDARD_CARDS, type Card } from '../court/cards.ts';
import { gameFault } from '../games/gameFault.ts';
import { othersIn } from '../games/gameOn.ts';
import { GROUP_SIZE } from '../games/group.ts';
import type { Book, OwnGame, Round } from '../log/book.ts';
import { GROUP_TURNS, type GroupTurns } from '../log/events.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { gameById, gamesOf, type ListedGame } from './gameActions.ts';

/* A game of several shooters as it stands in the form, before it is set up. */

/** A game on a card. In a duel the head start is that of the shooter who is listed first. */
export interface GroupGame extends Omit<OwnGame, 'id'> {
  /** Of the game, or of the card a duel is shot on. */
  readonly id: string;
}

export interface GroupWish {
  /** In the order they were named. */
  readonly shooters: readonly ShooterId[];
  readonly game: GroupGame;
  readonly turns: GroupTurns;
  /** Who shoots first: by coin, or as they were named. */
  readonly order: 'coin' | 'listed';
  /** Everybody's chance, as near as the game's steps allow; null: the same game for all. */
  readonly wanted: Probability | null;
  /** In a duel, points that whoever is listed first starts ahead; null follows `wanted`. */
  readonly headStart: number | null;
  readonly stake: string;
  readonly crowd: boolean;
  readonly showChance: boolean;
}

/** Level after the last shot, a duel goes on by so many pairs at most. */
export const EXTRA_PAIRS = 5;

/** The card a duel is offered on first. */
export const FIRST_DUEL: Card = present(
  STANDARD_CARDS.find(({ id }) => id === 'free-throws-10'),
  'ten free throws',
);

/** Games that each of several can play for themselves. A duel is another matter. */
export function groupGamesOf(book: Pick<Book, 'games'>): ListedGame[] {
  return gamesOf(book).filter(({ plan, stops }) => plan.family !== 'duel' && gameFault(plan, stops) === null);
}

/** Two shooters, shot for shot, on a card. */
export function duelOn({ id, name, stops }: Card): GroupGame {
  const plan: GamePlan = {
    family: 'duel',
    against: { kind: 'shooter' },
    headStart: 0,
    extraPairs: EXTRA_PAIRS,
  };
  return { id, name: `Duel: ${name}`.slice(0, 200), stops, plan, clock: null, crowd: true };
}

/** A first wish: an even chance for everybody, turns shot by shot where the game allows it, the first one by coin. */
export function freshGroup(shooters: readonly ShooterId[], game: GroupGame): GroupWish {
  return withGame(
    {
      shooters,
      game,
      turns: 'shot',
      order: 'coin',
      wanted: 0.5,
      headStart: null,
      stake: '',
      crowd: game.crowd,
      showChance: true,
    },
    game,
  );
}

/** The wish with another game, its turns as that allows them. */
export function withGame(wish: GroupWish, game: GroupGame): GroupWish {
  const [first = 'game', ...rest] = turnsIn(game);
  const turns = rest.includes(wish.turns) ? wish.turns : first;
  return { ...wish, game, turns, headStart: null };
}

/**
 * When the turn can pass. A clock for the whole round belongs to one shooter; a duel goes shot for shot; and what is shot
 * from one stop alone has no stops to pass at.
 */
export function turnsIn({ plan, stops, clock }: GroupGame): readonly GroupTurns[] {
  if (plan.family === 'duel') return ['shot'];
  if (clock?.kind === 'round') return ['game'];
  const passes = stops.length > 1 && plan.family !== 'trips';
  return GROUP_TURNS.filter((turns) => passes || turns !== 'stop');
}

/** Whether so many can play it. */
export function fitsGame({ plan }: GroupGame, players: number): boolean {
  return plan.family === 'duel' ? players === 2 : players >= GROUP_SIZE.least && players <= GROUP_SIZE.most;
}

/** The chances that are offered. */
export const GROUP_CHANCES = [0.67, 0.5, 0.33] as const;

/**
 * The same again, as a group played it; whoever is no longer on this device is left out. Null where that leaves nobody to
 * play with, or there was no such game.
 *
 * @param id a round of the group
 */
export function rematchOf(book: Book, id: RoundId | null): GroupWish | null {
  const round = id === null ? undefined : book.rounds.get(id);
  if (!round?.group) return null;
  const rounds = [round, ...othersIn(book, round)].toSorted(
    (a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0),
  );
  const [first = round] = rounds;
  const { pressure } = first;
  if (!pressure?.game) return null;
  const { plan } = pressure.game;
  const wanted = plan.family === 'duel' ? null : wantedOf(rounds);
  const listed = wanted === null ? null : listedFor(book, first, plan);
  const shooters = rounds.map(({ shooter }) => shooter).filter((one) => !book.removedShooters.has(one));
  const game: GroupGame = {
    id: first.card ?? first.id,
    name: listed?.name ?? first.game,
    stops: first.stops,
    plan: listed?.plan ?? plan,
    clock: pressure.clock,
    crowd: pressure.crowd,
  };
  if (!fitsGame(game, shooters.length)) return null;
  return {
    shooters,
    game,
    turns: first.group?.turns ?? 'shot',
    order: first.group?.coin === true ? 'coin' : 'listed',
    wanted,
    headStart: plan.family === 'duel' ? plan.headStart : null,
    stake: pressure.stake ?? '',
    crowd: pressure.crowd,
    showChance: pressure.showChance,
  };
}

/** With marks of their own everybody's game is another one: the game they come from, if it is still in the list. */
function listedFor(book: Book, { card, stops }: Round, { family }: GamePlan): ListedGame | null {
  const listed = gameById(book, card);
  const same = listed?.plan.family === family && JSON.stringify(listed.stops) === JSON.stringify(stops);
  return same ? listed : null;
}

/** The chance that marks of their own gave everybody; null where all played the same. */
function wantedOf(rounds: readonly Round[]): Probability | null {
  const plans = new Set(rounds.map(({ pressure }) => JSON.stringify(pressure?.game?.plan)));
  const chances = rounds.flatMap(({ pressure }) => pressure?.game?.chance ?? []);
  if (plans.size === 1 || chances.length === 0) return null;
  const mean = chances.reduce((sum, one) => sum + one, 0) / chances.length;
  return GROUP_CHANCES.reduce<number>(
    (near, one) => (Math.abs(one - mean) < Math.abs(near - mean) ? one : near),
    0.5,
  );
}
