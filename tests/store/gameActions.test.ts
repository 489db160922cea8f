import { beforeEach, describe, expect, it } from 'vitest';

import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import { readGameFile, writeGameFile, type SharedGame } from '../../renderer/log/gameFile.ts';
import {
  bringGameIn,
  draftFault,
  gameById,
  gameFile,
  gamesOf,
  keepGame,
  MOST_OWN_GAMES,
  planGameImport,
  readSharedGame,
  removeGame,
  type GameDraft,
} from '../../renderer/store/gameActions.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { gymLog } from '../tools/fakeGym.ts';
import { fakeWorld } from './fakeWorld.ts';

const DRAFT: GameDraft = {
  name: ' Five in a row ',
  stops: [{ spot: 'top', shot: 'catch', attempts: 5 }],
  plan: { family: 'streak', row: 5, most: 60 },
  clock: null,
  crowd: true,
};
const BLEACHERS: GameDraft = {
  ...DRAFT,
  name: 'From the bleachers',
  stops: [
    { spot: 'Bleachers', shot: 'catch', attempts: 2 },
    { spot: 'Deep wing', shot: 'catch', attempts: 2 },
  ],
};

let gym: Gym;
let log: ReturnType<typeof gymLog>;
const book = () => gym.store.getState().book;
const bytes = (text: string) => new TextEncoder().encode(text);
/** As it comes out of a file. */
const shared = (
  game: GameDraft,
  spots: readonly (readonly [string, { x: number; y: number }])[],
): SharedGame => {
  const reading = readGameFile(writeGameFile(game, new Map(spots)));
  if (!reading.sound) throw new Error(reading.reason);
  return reading.game;
};

beforeEach(async () => {
  log = gymLog([]);
  gym = createGym(fakeWorld(log));
  await gym.open(false);
});

describe('a game of one’s own', () => {
  it('stands first in the list, is found by its id, and goes again', async () => {
    const id = await keepGame(gym, DRAFT, null);
    expect(gamesOf(book())).toHaveLength(31);
    const [first] = gamesOf(book());
    expect(first).toMatchObject({ ...DRAFT, id, name: 'Five in a row', own: true, words: null });
    expect(gameById(book(), id)).toEqual(first);
    expect(await removeGame(gym, id ?? '')).toBe(true);
    expect(gameById(book(), id)).toBeNull();
    expect(gamesOf(book()).map((game) => game.id)).toEqual(CATALOGUE.map((game) => game.id));
  });

  it('is changed under its id; the newest stands first', async () => {
    const id = await keepGame(gym, DRAFT, null);
    await keepGame(gym, { ...DRAFT, name: 'Another' }, null);
    await keepGame(gym, { ...DRAFT, plan: { family: 'streak', row: 6, most: 60 } }, id);
    expect(
      gamesOf(book())
        .slice(0, 2)
        .map(({ name }) => name),
    ).toEqual(['Another', 'Five in a row']);
    expect(gameById(book(), id)?.plan).toEqual({ family: 'streak', row: 6, most: 60 });
  });

  it('that cannot be saved is not there', async () => {
    log.mood = 'refuses';
    expect(await keepGame(gym, DRAFT, null)).toBeNull();
    expect(book().games.size).toBe(0);
  });

  it.each<readonly [Partial<GameDraft>, RegExp | null]>([
    [{}, null],
    [{ name: '  ' }, /give the game a name/],
    [{ name: 'TEN in a row  at the line' }, /already a game called Ten in a row at the line/],
    [{ name: 'second one' }, /already a game called Second one/],
    [{ plan: { family: 'streak', row: 9, most: 8 } }, /does not fit into 8 shots/],
    [{ stops: [] }, /at least one shot/],
  ])('%j', async (change, fault) => {
    await keepGame(gym, { ...DRAFT, name: 'Second one' }, null);
    expect(draftFault(book(), { ...DRAFT, ...change }, null) ?? 'sound').toMatch(fault ?? /^sound$/);
  });

  it('may keep its own name when it is changed', async () => {
    const id = await keepGame(gym, DRAFT, null);
    expect(draftFault(book(), DRAFT, id)).toBeNull();
    expect(draftFault(book(), DRAFT, null)).toMatch(/already a game/);
  });

  it('is one of not too many', () => {
    const games = new Map(
      Array.from({ length: MOST_OWN_GAMES }, (_, n) => [`g${n}`, { ...DRAFT, id: `g${n}`, name: `g${n}` }]),
    );
    expect(draftFault({ ...book(), games }, DRAFT, null)).toMatch(/Remove one first/);
    expect(draftFault({ ...book(), games }, { ...DRAFT, name: 'g7' }, 'g7')).toBeNull();
    expect(planGameImport({ ...book(), games }, shared(DRAFT, [])).full).toBe(true);
  });
});

describe('a game handed on', () => {
  it('is a file named after it, with the places of its spots', async () => {
    await gym.dispatch([{ type: 'OwnSpotPlaced', body: { spot: 'Bleachers', x: -5, y: 6 } }]);
    const file = await gameFile(book(), BLEACHERS);
    expect(file.name).toBe('loud-gym-game-from-the-bleachers.json');
    expect(JSON.parse(String(file.content))).toMatchObject({ spots: [{ spot: 'Bleachers', x: -5, y: 6 }] });
    expect((await gameFile(book(), { ...DRAFT, name: '../../<b>' })).name).toBe('loud-gym-game-b.json');
    expect((await gameFile(book(), { ...DRAFT, name: '!?' })).name).toBe('loud-gym-game-nameless.json');
  });

  it('is read and kept on another device, spots and all', async () => {
    const reading = await readSharedGame(
      bytes(writeGameFile(BLEACHERS, new Map([['Bleachers', { x: -5, y: 6 }]]))),
    );
    if (!reading.sound) throw new Error(reading.reason);
    const plan = planGameImport(book(), reading.game);
    expect(plan).toMatchObject({
      game: BLEACHERS,
      newSpots: [{ spot: 'Bleachers', x: -5, y: 6 }],
      otherSpots: [],
      unplaced: ['Deep wing'],
      known: false,
    });
    const id = await bringGameIn(gym, plan);
    expect(gameById(book(), id)).toMatchObject(BLEACHERS);
    expect(book().ownSpots.get('Bleachers')).toEqual({ x: -5, y: 6 });
  });

  it('leaves a spot of the same name where it is, and says so', async () => {
    await gym.dispatch([{ type: 'OwnSpotPlaced', body: { spot: 'Bleachers', x: 5, y: 6 } }]);
    const plan = planGameImport(book(), shared(BLEACHERS, [['Bleachers', { x: -5, y: 6 }]]));
    expect(plan).toMatchObject({ newSpots: [], otherSpots: ['Bleachers'] });
    await bringGameIn(gym, plan);
    expect(book().ownSpots.get('Bleachers')).toEqual({ x: 5, y: 6 });
  });

  it('never moves a spot that is on every court', () => {
    const hostile = { ...shared(DRAFT, []), spots: [{ spot: 'top', x: 0, y: 0 }] };
    expect(planGameImport(book(), hostile)).toMatchObject({ newSpots: [], otherSpots: [], unplaced: [] });
  });

  it('is told apart by its name where another has it, and known where it is the same', async () => {
    await keepGame(gym, DRAFT, null);
    expect(planGameImport(book(), shared({ ...DRAFT, name: 'Five in a row' }, []))).toMatchObject({
      known: true,
      game: { name: 'Five in a row' },
    });
    const louder = shared({ ...DRAFT, name: 'five IN a row', crowd: false }, []);
    expect(planGameImport(book(), louder)).toMatchObject({ known: false, game: { name: 'five IN a row 2' } });
    await bringGameIn(gym, planGameImport(book(), louder));
    const quieter = { ...louder, clock: { kind: 'shot', seconds: 9 } } as const;
    expect(planGameImport(book(), quieter).game.name).toBe('five IN a row 3');
  });

  it.each<readonly [string, Uint8Array, RegExp]>([
    ['a file of another kind', bytes('{"kind":"x","version":1}'), /not a game of Loud Gym/],
    ['letters of another alphabet', Uint8Array.of(0xff, 0xfe, 0x7b), /letters cannot be read/],
    ['far too large a file', new Uint8Array(1_000_000), /larger than any game/],
    [
      'a game nobody can win',
      bytes(writeGameFile({ ...DRAFT, plan: { family: 'reach', needed: 6 } }, new Map())),
      /cannot be played\. There are only 5 shots/,
    ],
    ...(['shooter', 'own round'] as const).map((kind): readonly [string, Uint8Array, RegExp] => {
      const against = kind === 'shooter' ? { kind } : { kind, round: 'r', made: [true] };
      const plan = { family: 'duel', against, headStart: 0, extraPairs: 2 } as const;
      return [
        `a duel against a ${kind} of another device`,
        bytes(writeGameFile({ ...DRAFT, plan }, new Map())),
        /a duel with somebody who is not here/,
      ];
    }),
    [
      'a game without an end',
      bytes(writeGameFile({ ...DRAFT, plan: { family: 'streak', row: 5, most: 1000 } }, new Map())),
      /could take 1000 shots/,
    ],
  ])('%s is refused', async (_, file, reason) => {
    const reading = await readSharedGame(file);
    expect(reading.sound ? 'taken' : reading.reason).toMatch(reason);
  });
});
