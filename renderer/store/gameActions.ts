import type { GameId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import { isSpot, nameKey, type CourtPoint } from '../court/spots.ts';
import { CATALOGUE } from '../games/catalogue.ts';
import { gameFault } from '../games/gameFault.ts';
import type { Book, OwnGame } from '../log/book.ts';
import type { Fact } from '../log/facts.ts';
import type { GameReading, SharedGame } from '../log/gameFile.ts';
import { LONGEST_GAME_NAME } from '../pressure/gamePlan.ts';
import type { Gym } from './gymStore.ts';
import { forFileName, type SavedFile } from './recordFiles.ts';

/* Games of the shooters' own. They belong to the device, as cards do, and can be handed on as files. */

/** More than anyone keeps apart. */
export const MOST_OWN_GAMES = 200;

/** A game before it has an id. */
export type GameDraft = Omit<OwnGame, 'id'>;

/** A game of the list. */
export interface ListedGame extends OwnGame {
  /** What it is, in one sentence; null for a shooter's own, whose numbers say it. */
  readonly words: string | null;
  readonly own: boolean;
}

/** Every game that can be played: the shooters' own, newest first, then those everybody has. */
export function gamesOf({ games }: Pick<Book, 'games'>): ListedGame[] {
  const own = [...games.values()].toReversed();
  return [
    ...own.map((game) => ({ ...game, words: null, own: true })),
    ...CATALOGUE.map((game) => ({ ...game, own: false })),
  ];
}

/** @param id from an address, which may be anything */
export function gameById(book: Pick<Book, 'games'>, id: string | null): ListedGame | null {
  return id === null ? null : (gamesOf(book).find((game) => game.id === id) ?? null);
}

/** What keeps a game from being kept, in a sentence; null where nothing does. @param id the game that is changed */
export function draftFault(book: Book, { name, plan, stops }: GameDraft, id: GameId | null): string | null {
  const fault = gameFault(plan, stops);
  if (fault !== null) return fault;
  const wanted = name.trim();
  if (wanted === '') return 'Please give the game a name, so that you find it again.';
  const taken = gamesOf(book).find((game) => game.id !== id && sameName(game.name, wanted));
  if (taken) return `There is already a game called ${taken.name}. Choose another name.`;
  return id === null && book.games.size >= MOST_OWN_GAMES
    ? `${MOST_OWN_GAMES} games of your own is the most. Remove one first.`
    : null;
}

/** Keeps a game, a new one or one that is changed. @returns its id; null where it could not be saved */
export async function keepGame(gym: Gym, draft: GameDraft, id: GameId | null): Promise<GameId | null> {
  const game = id ?? gym.moment().newId<'game'>();
  return (await gym.dispatch([madeFact(game, draft)])) ? game : null;
}

/** Takes a game away. Rounds keep the game they were played by. */
export function removeGame(gym: Gym, game: GameId): Promise<boolean> {
  return gym.dispatch([{ type: 'GameRemoved', body: { game } }]);
}

/** A game as a file to hand on. */
export async function gameFile(book: Book, game: GameDraft): Promise<SavedFile> {
  const { writeGameFile } = await import('../log/gameFile.ts');
  return {
    name: `loud-gym-game-${forFileName(game.name, 'nameless')}.json`,
    type: 'application/json',
    content: writeGameFile(game, book.ownSpots),
  };
}

/** Reads a file somebody handed on. Nothing is written. */
export async function readSharedGame(bytes: Uint8Array): Promise<GameReading> {
  const { LONGEST_FILE, readGameFile } = await import('../log/gameFile.ts');
  // Four bytes a letter at most.
  if (bytes.length > 4 * LONGEST_FILE) return { sound: false, reason: 'It is larger than any game.' };
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { sound: false, reason: 'Its letters cannot be read. It is damaged, or no game file.' };
  }
  const reading = readGameFile(text);
  if (!reading.sound) return reading;
  const { plan, stops } = reading.game;
  // Whoever is played against stays on their own device.
  if (plan.family === 'duel' && plan.against.kind !== 'drawn') {
    return { sound: false, reason: 'It is a duel with somebody who is not here. Set one up under “A duel”.' };
  }
  const fault = gameFault(plan, stops);
  return fault === null ? reading : { sound: false, reason: `Its game cannot be played. ${fault}` };
}

/** What bringing a shared game in would do. */
export interface GameImport {
  readonly game: GameDraft;
  /** Spots of one's own it brings with it. */
  readonly newSpots: readonly (SharedGame['spots'][number] & CourtPoint)[];
  /** Spots it is shot from that have the same name here, but stand elsewhere: they stay where they are. */
  readonly otherSpots: readonly string[];
  /** Spots it is shot from that stand nowhere. */
  readonly unplaced: readonly string[];
  /** The very same game is there already. */
  readonly known: boolean;
  /** There are as many games of one's own as can be kept. */
  readonly full: boolean;
}

export function planGameImport(book: Book, shared: SharedGame): GameImport {
  const { spots, ...draft } = shared;
  const used = new Set<string>(draft.stops.map(({ spot }) => spot).filter((spot) => !isSpot(spot)));
  const placed = spots.filter(({ spot }) => used.has(spot) && !isSpot(spot));
  const same = gamesOf(book).some((game) => alike(game, draft));
  return {
    game: { ...draft, name: same ? draft.name : freeName(book, draft.name) },
    newSpots: placed.filter(({ spot }) => !book.ownSpots.has(spot)),
    otherSpots: placed.flatMap(({ spot, x, y }) => {
      const here = book.ownSpots.get(spot);
      return here && Math.hypot(here.x - x, here.y - y) > 0.5 ? [spot] : [];
    }),
    unplaced: [...used].filter(
      (spot) => !book.ownSpots.has(spot) && !placed.some((one) => one.spot === spot),
    ),
    known: same,
    full: book.games.size >= MOST_OWN_GAMES,
  };
}

/** Keeps a shared game and puts its spots on the floor, all of it or nothing. */
export async function bringGameIn(gym: Gym, { game, newSpots }: GameImport): Promise<GameId | null> {
  const id = gym.moment().newId<'game'>();
  const saved = await gym.dispatch([
    ...newSpots.map(({ spot, x, y }): Fact => ({ type: 'OwnSpotPlaced', body: { spot, x, y } })),
    madeFact(id, game),
  ]);
  return saved ? id : null;
}

function madeFact(game: GameId, { name, stops, plan, clock, crowd }: GameDraft): Fact {
  return { type: 'GameMade', body: { game, name: name.trim(), stops, plan, clock, crowd } };
}

/** The name, or with a number behind it where it is taken. */
function freeName(book: Book, name: string): string {
  const taken = new Set(gamesOf(book).map((game) => nameKey(game.name)));
  let free = name;
  for (let copy = 2; taken.has(nameKey(free)); copy += 1) {
    free = `${name.slice(0, LONGEST_GAME_NAME - 4)} ${copy}`;
  }
  return free;
}

/** The very same game under the same name. */
function alike(one: GameDraft, other: GameDraft): boolean {
  const told = ({ stops, plan, clock, crowd }: GameDraft) =>
    JSON.stringify([stops, plan, clock, crowd], inOrder);
  return sameName(one.name, other.name) && told(one) === told(other);
}

/** Fields by name, so that their order in a file does not matter. */
function inOrder(_: string, value: unknown): unknown {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => byText(a, b)))
    : value;
}

function sameName(one: string, other: string): boolean {
  return nameKey(one) === nameKey(other);
}
