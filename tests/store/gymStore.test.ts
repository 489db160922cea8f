import { beforeEach, describe, expect, it } from 'vitest';

import { isUuid, uuidV7 } from '../../renderer/basics/ids.ts';
import type { Fact } from '../../renderer/log/facts.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { onCourt } from '../log/diary.ts';
import { fakeLog, fakeShelf, fakeWorld, type FakeLog } from './fakeWorld.ts';

const shot = (made: boolean, stop = 0): Fact => ({
  type: 'ShotTaken',
  body: { round: 'round 1', stop, made, side: null },
});
const FULL = new Error('no room');

let log: FakeLog;
let gym: Gym;
const state = () => gym.store.getState();
const made = (which: 'book' | 'ahead') =>
  state()[which].open?.entries.map((entry) => (entry.kind === 'shot' ? entry.made : null)) ?? null;

beforeEach(async () => {
  log = fakeLog();
  const world = fakeWorld(log);
  // The diary's readable ids stand for what an earlier visit wrote.
  const earlier = onCourt().events.map((event) => ({
    ...event,
    id: uuidV7<'event'>(world.at(), world.random()),
  }));
  log.durable.push(...earlier);
  gym = createGym(world);
  await gym.open(false);
});

describe('opening', () => {
  it('folds what is stored, silently', async () => {
    const heard: unknown[] = [];
    gym.onDurable((_before, _after, events) => heard.push(events));
    await gym.open(false);
    expect(state().log).toEqual({ is: 'ready' });
    expect(state().book.open?.id).toBe('round 1');
    expect(state().ahead).toBe(state().book);
    expect(heard).toEqual([]);
  });
  it('fails openly, and can be tried again', async () => {
    log.opens = () => Promise.reject(new Error('another window'));
    await gym.open(false);
    expect(state().log).toMatchObject({ is: 'failed', error: { message: 'another window' } });
    log.opens = () => Promise.resolve(log.durable);
    await gym.open(true);
    expect(state().log).toEqual({ is: 'ready' });
  });
  it('refuses a log with a damaged event, and keeps one that a later version wrote', async () => {
    const later = { ...log.durable[0], type: 'HeartRateMeasured', body: {} } as never;
    log.opens = () => Promise.resolve([...log.durable, later]);
    await gym.open(false);
    expect(state().log.is).toBe('ready');
    expect(state().book.skipped).toBe(1);
    log.opens = () => Promise.resolve([...log.durable, { ...log.durable[0], body: {} } as never]);
    await gym.open(false);
    expect(state().log).toMatchObject({ is: 'failed', error: { name: 'DamagedEventError' } });
  });
  it('tells when the log is lost', () => {
    log.lose(new Error('taken over'));
    expect(state().log).toMatchObject({ is: 'failed', error: { message: 'taken over' } });
  });
});

describe('a tap', () => {
  it('shows at once as pending, and counts when it is durable', async () => {
    const saved = gym.dispatch([shot(true)]);
    expect(made('ahead')).toEqual([true]);
    expect(made('book')).toEqual([]);
    expect(state().pending.size).toBe(1);
    await log.answer();
    expect(await saved).toBe(true);
    expect(made('book')).toEqual([true]);
    expect(state().pending.size).toBe(0);
    expect(state().ahead).toBe(state().book);
  });
  it('is stamped with an id, the moment, the place and the device', async () => {
    void gym.dispatch([shot(true)]);
    await log.answer();
    const event = log.durable.at(-1);
    expect(event).toMatchObject({ type: 'ShotTaken', v: 1, zone: 60, device: state().settings.device });
    expect(isUuid(event?.id ?? '')).toBe(true);
  });
  it('that could not be saved does not count, and says so', async () => {
    const before = state().book;
    const saved = gym.dispatch([shot(true)]);
    await log.answer(FULL);
    expect(await saved).toBe(false);
    expect(state().book).toBe(before);
    expect(state().ahead).toBe(before);
    expect(state().pending.size).toBe(0);
    expect(state().trouble).toBe(FULL);
  });
  it('that was refused is said until it is seen, whatever is saved after it', async () => {
    void gym.dispatch([shot(true)]);
    void gym.dispatch([shot(false)]);
    await log.answer(FULL);
    await log.answer();
    expect(made('book')).toEqual([false]);
    expect(state().trouble).toBe(FULL);
    gym.dismissTrouble();
    expect(state().trouble).toBeNull();
  });
  it('in the middle that was refused is taken out of what lies ahead', async () => {
    void gym.dispatch([shot(true)]);
    void gym.dispatch([shot(false)]);
    void gym.dispatch([shot(true, 1)]);
    await log.answer();
    await log.answer(FULL);
    expect(made('ahead')).toEqual([true, true]);
    expect(made('book')).toEqual([true]);
    expect(state().pending.size).toBe(1);
    await log.answer();
    expect(made('book')).toEqual([true, true]);
    expect(state().ahead).toBe(state().book);
  });
  it('keeps its place: taps are written in the order they were made', async () => {
    const rounds = Array.from({ length: 4 }, (_, at) => gym.dispatch([shot(at % 2 === 0, at < 2 ? 0 : 1)]));
    expect(made('ahead')).toEqual([true, false, true, false]);
    expect(log.waiting()).toBe(4);
    for (let at = 0; at < 4; at += 1) await log.answer();
    expect(await Promise.all(rounds)).toEqual([true, true, true, true]);
    expect(made('book')).toEqual([true, false, true, false]);
  });
  it('of nothing needs no answer', async () => {
    expect(await gym.dispatch([])).toBe(true);
    expect(log.waiting()).toBe(0);
  });
  it('that could not be read again is never written', async () => {
    const before = state().book;
    const long = {
      type: 'AfterRated',
      body: { round: 'round 1', nerves: 11, effort: null, note: '' },
    } as const;
    expect(await gym.dispatch([long])).toBe(false);
    expect(log.waiting()).toBe(0);
    expect(state().book).toBe(before);
    expect(state().ahead).toBe(before);
    expect(state().trouble?.message).toMatch(/not written: .*nerves/);
  });
});

describe('whoever listens', () => {
  it('hears of what became durable, once, with the books before and after', async () => {
    const heard: [number | undefined, number | undefined, number][] = [];
    const stop = gym.onDurable((before, after, events) =>
      heard.push([before.open?.entries.length, after.open?.entries.length, events.length]),
    );
    void gym.dispatch([shot(true)]);
    expect(heard).toEqual([]);
    await log.answer();
    void gym.dispatch([shot(true)]);
    await log.answer(FULL);
    expect(heard).toEqual([[0, 1, 1]]);
    stop();
    void gym.dispatch([shot(true)]);
    await log.answer();
    expect(heard).toHaveLength(1);
  });
});

describe('settings', () => {
  it('are kept on this device, and the device keeps its own id', () => {
    const shelf = fakeShelf();
    const first = createGym(fakeWorld(fakeLog(), shelf));
    first.set({ volume: 0.5, theme: 'light' });
    const again = createGym(fakeWorld(fakeLog(), shelf)).store.getState().settings;
    expect(again).toEqual(first.store.getState().settings);
    expect(again).toMatchObject({ volume: 0.5, theme: 'light' });
  });
  it.each(['{', '[]', 'null', '{"volume":7,"theme":"pink","device":3}'])(
    'that read %s fall back to quiet ones',
    (text) => {
      const shelf = fakeShelf();
      shelf.write('loud-gym-settings', text);
      const { settings } = createGym(fakeWorld(fakeLog(), shelf)).store.getState();
      expect(settings).toMatchObject({ volume: 0.3, theme: 'dark', countdown: 'voice', shooter: null });
      expect(isUuid(settings.device)).toBe(true);
    },
  );
});

describe('the doors to the world', () => {
  it('give seeds of 32 bits, and the log as a file', async () => {
    const seeds = Array.from({ length: 50 }, () => gym.newSeed());
    expect(new Set(seeds).size).toBe(50);
    expect(seeds.every((seed) => Number.isInteger(seed) && seed >= 0 && seed <= 0xffffffff)).toBe(true);
    expect(await gym.exportFile()).toEqual(new Uint8Array([1, 2, 3]));
  });
});
