import { beforeEach, describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { drawOrder } from '../../renderer/games/group.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import type { Round } from '../../renderer/log/book.ts';
import { tellAge } from '../../renderer/store/ageActions.ts';
import { tellBody } from '../../renderer/store/bodyCheck.ts';
import { startGroup } from '../../renderer/store/groupActions.ts';
import { groupLine, groupRefusal, stakeOpen } from '../../renderer/store/groupLine.ts';
import { seatsFor } from '../../renderer/store/groupPrices.ts';
import { duelOn, freshGroup, groupGamesOf, type GroupWish } from '../../renderer/store/groupWish.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { addGuest, addShooter, nameFault, removeShooter } from '../../renderer/store/shooterActions.ts';
import { gymLog } from '../tools/fakeGym.ts';
import { fakeWorld } from './fakeWorld.ts';

const WELL = { sore: false, ill: false, unslept: false };
const FREE_THROWS = present(
  STANDARD_CARDS.find(({ id }) => id === 'free-throws-10'),
  'ten free throws',
);

let gym: Gym;
let log: ReturnType<typeof gymLog>;
/** Ines, whose device it is, and two guests. */
let ids: string[];
const book = () => gym.store.getState().book;
const host = () => present([...book().shooters.values()][0], 'the host');

beforeEach(async () => {
  log = gymLog([]);
  gym = createGym(fakeWorld(log));
  await gym.open(false);
  await addShooter(gym, { name: 'Ines', hand: 'left', rules: 'FIBA', units: 'metric' });
  await addGuest(gym, 'Tobi', host());
  await addGuest(gym, ' Ada ', host());
  ids = [...book().shooters.keys()];
  for (const id of ids) await tellBody(gym, id, WELL);
});

function wished(change: Partial<GroupWish> = {}): GroupWish {
  const game = present(
    groupGamesOf(book()).find(({ id }) => id === 'lives-line'),
    'a game',
  );
  return { ...freshGroup(ids, game), ...change };
}

async function start(
  wish: GroupWish,
  seed = 7,
  nerves: readonly (readonly [string, number | null])[] = [],
): Promise<Round[] | null> {
  const seats = seatsFor(book(), wish, seed, gym.moment());
  const rounds = await startGroup(gym, { wish, seats, nerves: new Map(nerves), seed });
  return (
    rounds &&
    rounds.map((id) =>
      present(
        inPlay().find((round) => round.id === id),
        'a round',
      ),
    )
  );
}

function inPlay(): Round[] {
  const { open, waiting } = book();
  return [...(open ? [open] : []), ...waiting.values()];
}

describe('a guest', () => {
  it('is a shooter on the same court, and whoever is at the bench stays there', () => {
    expect(book().shooters.get(ids[2] ?? '')).toMatchObject({
      name: 'Ada',
      hand: 'right',
      rules: 'FIBA',
      units: 'metric',
      demo: false,
    });
    expect(gym.store.getState().settings.shooter).toBe(ids[0]);
  });
  it('needs a name of their own', () => {
    expect(nameFault(book(), '  ')).toMatch(/give a name/);
    expect(nameFault(book(), ' tobi ')).toMatch(/already a shooter called tobi/);
    expect(nameFault(book(), 'Tobi', ids[1])).toBeNull();
    expect(nameFault(book(), 'Kim')).toBeNull();
  });
});

describe('a game of several', () => {
  it('starts a round for each, with what each said of their nerves, in a group of its own', async () => {
    const rounds = present(
      await start(wished({ order: 'listed', turns: 'shot' }), 7, [
        [ids[0] ?? '', 4],
        [ids[2] ?? '', null],
      ]),
      'rounds',
    );
    expect(rounds.map(({ shooter, nerves }) => [shooter, nerves])).toEqual([
      [ids[0], 4],
      [ids[1], null],
      [ids[2], null],
    ]);
    expect(new Set(rounds.map(({ session }) => session)).size).toBe(3);
    expect(rounds.map(({ group }) => group)).toEqual(
      [1, 2, 3].map((place) => ({ id: rounds[0]?.group?.id, place, turns: 'shot', coin: false })),
    );
    expect(book()).toMatchObject({ skipped: 0, open: { shooter: ids[0] } });
    for (const { pressure, entry, condition } of rounds) {
      expect([entry, condition]).toEqual(['each-shot', 'pressured']);
      expect(pressure).toMatchObject({ mark: null, stake: null, rung: 'watched', seed: 7, crowd: true });
      expect(pressure?.ingredients).toEqual(['crowd', 'watchers', 'must-make']);
      expect(pressure?.game?.chance).toBeGreaterThan(0);
    }
  });

  it('draws the order by the seed that is logged, so it can be checked', async () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const rounds = present(await start(wished({ order: 'coin' }), seed), 'rounds');
      expect(rounds.map(({ shooter }) => shooter)).toEqual(
        drawOrder(rounds.map(({ shooter }) => shooter).toSorted(), rounds[0]?.pressure?.seed ?? -1),
      );
      expect(rounds.every(({ group }) => group?.coin)).toBe(true);
      await gym.dispatch(
        rounds.map(({ id }) => ({
          type: 'RoundEnded',
          body: { round: id, why: 'stopped', clockLeft: null },
        })),
      );
    }
  });

  it('is not started with one alone, beside an open round, or where it cannot be saved', async () => {
    expect(await start(wished({ shooters: ids.slice(0, 1) }))).toBeNull();
    log.mood = 'refuses';
    expect(await start(wished())).toBeNull();
    log.mood = 'saves';
    expect(await start(wished())).toHaveLength(3);
    expect(await start(wished())).toBeNull();
  });
});

describe('a duel of two', () => {
  it('gives the head start to the one it is meant for, whoever comes first', async () => {
    const pair = ids.slice(0, 2);
    const wish = { ...freshGroup(pair, duelOn(FREE_THROWS)), headStart: 2 };
    const seen = new Set<string | undefined>();
    for (let seed = 0; seed < 8; seed += 1) {
      const rounds = present(await start(wish, seed), 'rounds');
      const [first, second] = rounds.map(({ pressure }) => pressure?.game);
      seen.add(rounds[0]?.shooter);
      expect(first?.plan).toEqual({
        family: 'duel',
        against: { kind: 'shooter' },
        headStart: rounds[0]?.shooter === pair[0] ? 2 : -2,
        extraPairs: 5,
      });
      expect(second?.plan).toEqual(first?.plan);
      const ines = rounds.find(({ shooter }) => shooter === pair[0]);
      // Both have the same record, so whoever is ahead is likelier to win.
      expect(ines?.pressure?.game?.chance).toBeGreaterThan(0.6);
      expect(ines?.pressure?.ingredients).toContain('opponent');
      expect(() => ruleOf(present(first?.plan, 'a plan'), FREE_THROWS.stops, 0)).not.toThrow();
      await gym.dispatch(
        rounds.map(({ id }) => ({
          type: 'RoundEnded',
          body: { round: id, why: 'stopped', clockLeft: null },
        })),
      );
    }
    expect(seen.size).toBe(2);
  });
  it('is for two', async () => {
    expect(await start(freshGroup(ids, duelOn(FREE_THROWS)))).toBeNull();
  });
});

describe('what may be on the line for several', () => {
  const told = (...young: boolean[]) =>
    Promise.all(young.map((under18, at) => tellAge(gym, ids[at] ?? '', under18)));
  const stake = 'Sweeps the gym';
  const line = () => groupLine(book(), ids, gym.moment());
  const refusal = (what: string | null = stake) => groupRefusal(book(), ids, what, gym.moment());

  it('is nothing before everybody has told whether they are under 18', async () => {
    await told(false, false);
    expect(line().ageless).toEqual([ids[2]]);
    expect(stakeOpen(book(), ids, line())).toBeNull();
    expect(refusal()).toBe('age');
    expect(await start(wished({ stake }))).toBeNull();
    await tellAge(gym, ids[2] ?? '', false);
    expect(stakeOpen(book(), ids, line())).toBe(true);
    expect(refusal()).toBeNull();
    const rounds = await start(wished({ stake: ` ${stake} ` }));
    expect(rounds?.map(({ pressure }) => [pressure?.stake, pressure?.rung])).toEqual(
      ids.map(() => [stake, 'forfeit']),
    );
  });
  it('is nothing with one under 18 among them, whatever an adult allowed alone', async () => {
    await told(false, true, false);
    await gym.dispatch([{ type: 'FavoursAllowed', body: { shooter: ids[1] ?? '', allowed: true } }]);
    expect(stakeOpen(book(), ids, line())).toBe(false);
    expect(line().young).toBe(true);
    expect(refusal('Carries the balls')).toBe('age');
    expect(refusal(null)).toBeNull();
  });
  it('is never money', async () => {
    await told(false, false, false);
    expect(refusal('5 dollars')).toBe('money');
  });
  it('is no game for whoever would be watched for the first time with a brake on', async () => {
    await told(false, false, false);
    await tellBody(gym, ids[1] ?? '', { ...WELL, ill: true });
    expect(line().sitOut).toEqual([ids[1]]);
    expect(refusal(null)).toBe('watched');
    expect(await start(wished())).toBeNull();
    const without = wished({ shooters: ids.filter((id) => id !== ids[1]) });
    expect(await start(without)).toHaveLength(2);
  });
  it('is nothing where somebody is used to being watched, and has a brake on', async () => {
    await told(false, false, false);
    const rounds = present(await start(wished()), 'rounds');
    await gym.dispatch([
      ...rounds.map(
        ({ id }) => ({ type: 'ShotTaken', body: { round: id, stop: 0, made: true, side: null } }) as const,
      ),
      ...rounds.map(
        ({ id }) => ({ type: 'RoundEnded', body: { round: id, why: 'stopped', clockLeft: null } }) as const,
      ),
    ]);
    await tellBody(gym, ids[1] ?? '', { ...WELL, unslept: true });
    expect(line()).toMatchObject({ sitOut: [], held: true });
    expect([refusal(null), refusal()]).toEqual([null, 'brake']);
    expect(stakeOpen(book(), ids, line())).toBe(false);
  });
  it('comes after the body is asked', async () => {
    const kim = present(await addGuest(gym, 'Kim', host()), 'a guest');
    expect(groupRefusal(book(), [...ids, kim], null, gym.moment())).toBe('unasked');
    expect(groupLine(book(), [...ids, kim], gym.moment()).unasked).toEqual([kim]);
  });
});

describe('a shooter who is removed', () => {
  it('takes a game that is being played off the court; what was shot stays', async () => {
    const rounds = present(await start(wished({ order: 'listed' })), 'rounds');
    await gym.dispatch([
      { type: 'ShotTaken', body: { round: rounds[0]?.id ?? '', stop: 0, made: true, side: null } },
    ]);
    await removeShooter(gym, ids[1] ?? '');
    expect(book()).toMatchObject({ open: null, skipped: 0 });
    expect(book().waiting.size).toBe(0);
    expect(book().rounds.get(rounds[0]?.id ?? '')?.entries).toHaveLength(1);
    expect(await start(wished({ shooters: [ids[0] ?? '', ids[2] ?? ''] }))).toHaveLength(2);
  });
});
