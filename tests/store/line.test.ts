import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import type { Moment } from '../../renderer/log/begin.ts';
import type { Body } from '../../renderer/log/events.ts';
import type { Book } from '../../renderer/log/book.ts';
import { FAVOURS } from '../../renderer/pressure/stakes.ts';
import { allowFavours, tellAge } from '../../renderer/store/ageActions.ts';
import { bodyNow, tellBody } from '../../renderer/store/bodyCheck.ts';
import { createGym } from '../../renderer/store/gymStore.ts';
import {
  hasMinor,
  lineFor,
  refusalOf,
  stakesFor,
  wishOnLine,
  type Refusal,
} from '../../renderer/store/line.ts';
import { addShooter } from '../../renderer/store/shooterActions.ts';
import { freshWish, setupOf, type PressureWish } from '../../renderer/store/pressureWish.ts';
import { diary, INES, onCourt, PRESSURE, readableIds, START, started, type Diary } from '../log/diary.ts';
import { gymLog } from '../tools/fakeGym.ts';
import { evening } from '../tools/evening.ts';
import { fakeWorld } from './fakeWorld.ts';

const HOUR = 3_600_000;
const at = (later: number): Moment => ({ at: START + later, zone: 60, newId: readableIds() });
const SOON = at(60_000);

function bench(): Diary {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  return log;
}
const body = (log: Diary, change: Partial<Body<'BodyAsked'>> = {}): void => {
  log.write('BodyAsked', { session: 'visit 1', sore: false, ill: false, unslept: false, ...change });
};
/** A round for a stake with a mark of three of four, lost or won. */
function played(log: Diary, round: string, won: boolean, change: object = {}): void {
  const pressure = { ...PRESSURE, ingredients: [], ...change };
  log.write('RoundStarted', started({ round, condition: 'pressured', pressure }));
  for (const stop of [0, 0, 1, 1]) log.write('ShotTaken', { round, stop, made: won, side: null });
  log.write('RoundEnded', { round, why: 'played-out', clockLeft: null });
}

describe('the body', () => {
  it('is asked once a visit', () => {
    const log = bench();
    expect(bodyNow(log.book(), 'ines', SOON)).toBeNull();
    body(log, { ill: true });
    expect(bodyNow(log.book(), 'ines', SOON)).toEqual({ sore: false, ill: true, unslept: false });
    expect(bodyNow(log.book(), 'tobi', SOON)).toBeNull();
  });
  it('is asked again once nobody has shot for three hours after the answer', () => {
    const log = bench();
    body(log);
    expect(bodyNow(log.book(), 'ines', at(2.9 * HOUR))).not.toBeNull();
    expect(bodyNow(log.book(), 'ines', at(3.1 * HOUR))).toBeNull();
  });
  it('is asked again on the next visit', () => {
    const log = bench();
    body(log);
    played(log, 'round 1', true);
    expect(bodyNow(log.book(), 'ines', at(2.9 * HOUR))).not.toBeNull();
    expect(bodyNow(log.book(), 'ines', at(3.1 * HOUR))).toBeNull();
    expect(bodyNow(log.book(), 'ines', at(24 * HOUR))).toBeNull();
  });
  it('told before the first round begins the visit, and that round is part of it', async () => {
    const { gym } = await evening(onCourt().events.slice(0, 1));
    const well = { sore: false, ill: false, unslept: true };
    expect(await tellBody(gym, 'ines', well)).toBe(true);
    const { book } = gym.store.getState();
    expect(book.sessions.size).toBe(1);
    expect(bodyNow(book, 'ines', gym.moment())).toEqual(well);
    await tellBody(gym, 'ines', { ...well, unslept: false });
    expect(gym.store.getState().book.sessions.size).toBe(1);
  });
  it('that could not be saved is not known', async () => {
    const log = gymLog([]);
    const gym = createGym(fakeWorld(log));
    await gym.open(false);
    log.mood = 'refuses';
    expect(await tellBody(gym, 'ines', { sore: true, ill: false, unslept: false })).toBe(false);
    expect(bodyNow(gym.store.getState().book, 'ines', gym.moment())).toBeNull();
  });
});

describe('what a round is refused for', () => {
  const refusal = (book: Book, change: Partial<PressureWish>, mark = true): Refusal | null => {
    const line = lineFor(book, 'ines', SOON);
    const wish = { ...freshWish(4), ...change };
    return refusalOf(book, 'ines', line, wish, setupOf(wish, mark ? { makes: 3, chance: 0.5 } : null, 7));
  };
  const well = (): Diary => {
    const log = bench();
    body(log);
    return log;
  };
  const young = (allowed: boolean): Diary => {
    const log = well();
    log.write('AgeTold', { shooter: 'ines', under18: true });
    if (allowed) log.write('FavoursAllowed', { shooter: 'ines', allowed });
    return log;
  };

  it('is not having said how the body is', () => {
    expect(refusal(bench().book(), {})).toBe('unasked');
    expect(refusal(well().book(), {})).toBeNull();
  });
  it('is money, and nothing else small', () => {
    expect(refusal(well().book(), { stake: '5 euro' })).toBe('money');
    expect(refusal(well().book(), { stake: 'Loser buys lunch' })).toBeNull();
  });
  it.each<readonly [boolean, string, Refusal | null]>([
    [false, '', null],
    [false, 'Loser buys lunch', 'age'],
    [false, FAVOURS[0], 'age'],
    [true, FAVOURS[0], null],
    [true, 'Loser buys lunch', 'age'],
  ])('is a stake under 18 (favours allowed: %s): %j', (allowed, stake, why) => {
    expect(refusal(young(allowed).book(), { stake })).toBe(why);
  });
  it('is a step up with a brake on: from nothing, anything', () => {
    const log = bench();
    body(log, { unslept: true });
    const book = log.book();
    expect(refusal(book, {})).toBeNull();
    expect(refusal(book, { stake: 'Loser buys lunch' })).toBe('brake');
    expect(refusal(book, { seen: 'watched' })).toBe('brake');
  });
  it('is nothing with a brake on that was done last time', () => {
    const log = bench();
    played(log, 'round 1', true);
    body(log, { sore: true });
    expect(refusal(log.book(), { stake: 'Loser buys lunch' })).toBeNull();
  });
  it('is a video of someone under 18 without a guardian’s word', () => {
    const book = young(false).book();
    expect(refusal(book, { seen: 'filmed' })).toBe('guardian');
    expect(refusal(book, { seen: 'filmed', guardian: true })).toBeNull();
    expect(refusal(book, { seen: 'judged' })).toBeNull();
    expect(refusal(well().book(), { seen: 'filmed' })).toBeNull();
  });

  describe('for double or nothing', () => {
    const on = (round: string, times: 1 | 2 = 1) => ({
      stake: 'Loser buys lunch',
      doubles: { round, times },
    });
    const owing = (): Diary => {
      const log = well();
      played(log, 'round 1', false);
      return log;
    };
    it('is nothing on an open debt', () => {
      expect(refusal(owing().book(), on('round 1'))).toBeNull();
    });
    it('is having nothing to beat', () => {
      expect(refusal(owing().book(), { ...on('round 1'), mark: false }, false)).toBe('double what');
    });
    it('is a tired body', () => {
      const log = owing();
      body(log, { ill: true });
      expect(refusal(log.book(), on('round 1'))).toBe('double today');
    });
    it('is a debt that is settled, unknown, told wrongly or grown enough', () => {
      const log = owing();
      expect(refusal(log.book(), on('round 9'))).toBe('double no more');
      expect(refusal(log.book(), on('round 1', 2))).toBe('double no more');
      log.write('StakeSettled', { round: 'round 1' });
      expect(refusal(log.book(), on('round 1'))).toBe('double no more');
      log.write('StakeReopened', { round: 'round 1' });
      played(log, 'round 2', false, { doubles: { round: 'round 1', times: 1 } });
      expect(refusal(log.book(), on('round 2', 2))).toBeNull();
      played(log, 'round 3', false, { doubles: { round: 'round 2', times: 2 } });
      expect(refusal(log.book(), on('round 3', 2))).toBe('double no more');
    });
  });
});

describe('the wish that is left', () => {
  const wish: PressureWish = { ...freshWish(4), stake: 'Loser buys lunch', seen: 'filmed' };
  const left = (log: Diary, change: Partial<PressureWish> = {}) => {
    const { stake, seen } = wishOnLine(lineFor(log.book(), 'ines', SOON), { ...wish, ...change });
    return [stake, seen];
  };
  it('is all of it, where nothing stands against it', () => {
    const log = bench();
    body(log);
    expect(left(log)).toEqual(['Loser buys lunch', 'filmed']);
  });
  it('has no stake under 18, and nobody who sees it with a brake on', () => {
    const log = bench();
    log.write('AgeTold', { shooter: 'ines', under18: true });
    body(log);
    expect(left(log)).toEqual(['', 'filmed']);
    body(log, { sore: true });
    expect(left(log)).toEqual(['', 'nobody']);
  });
  it('keeps the stake of a debt, so that it can be said why it is refused', () => {
    const log = bench();
    body(log, { sore: true });
    expect(left(log, { doubles: { round: 'r', times: 1 } })[0]).toBe('Loser buys lunch');
  });
});

describe('who shoots', () => {
  it('may say their age when they are added, and an adult may allow favours', async () => {
    const { gym } = await evening(onCourt().events.slice(0, 1));
    const fields = { name: 'Fay', hand: 'left', rules: 'FIBA', units: 'metric' } as const;
    expect(await addShooter(gym, fields, true)).toBe(true);
    const fay = present(gym.store.getState().settings.shooter, 'whoever was added');
    const policy = () => stakesFor(gym.store.getState().book, [fay]);
    expect(policy()).toBe('off');
    await allowFavours(gym, fay, true);
    expect(policy()).toBe('favours');
    await allowFavours(gym, fay, false);
    expect(policy()).toBe('off');
    await tellAge(gym, fay, false);
    expect(policy()).toBe('open');
    await addShooter(gym, { ...fields, name: 'Gus' });
    const gus = present(gym.store.getState().settings.shooter, 'whoever was added');
    expect(gym.store.getState().book.shooters.get(gus)).not.toHaveProperty('under18');
  });

  it('decides what may be on the line: one under 18 in a group, and it is nothing', () => {
    const log = bench();
    log.write('ShooterAdded', { ...INES, shooter: 'tobi', name: 'Tobi' });
    log.write('AgeTold', { shooter: 'tobi', under18: true });
    log.write('FavoursAllowed', { shooter: 'tobi', allowed: true });
    const book = log.book();
    expect(present(book.shooters.get('tobi'), 'Tobi').favoursSince).toBeGreaterThan(0);
    expect([stakesFor(book, ['ines']), stakesFor(book, ['tobi'])]).toEqual(['open', 'favours']);
    expect(stakesFor(book, ['ines', 'tobi'])).toBe('off');
    expect([hasMinor(book, ['ines']), hasMinor(book, ['ines', 'tobi'])]).toEqual([false, true]);
  });
});
