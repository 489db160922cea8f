import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { LogEvent } from '../../renderer/log/envelope.ts';
import type { Fact } from '../../renderer/log/facts.ts';
import type { StudyAsk } from '../../renderer/stats/studyAsk.ts';
import type { Fitting } from '../../renderer/store/ports.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { loadDemoSeason } from '../../renderer/store/shooterActions.ts';
import { createStudyRoom } from '../../renderer/store/study.ts';
import type { WhatHangs } from '../../renderer/store/whatHangs.ts';
import { forecastScore } from '../../renderer/stats/forecastScore.ts';
import { type Study, studyOf } from '../../renderer/stats/study.ts';
import { groupOf, shoot } from '../games/onCourt.ts';
import { INES } from '../log/diary.ts';
import { fakeLog, fakeShelf, fakeWorld } from './fakeWorld.ts';

const settle = () => new Promise((resolve) => setImmediate(resolve));

const SCORE = forecastScore([]);
const HANGS: WhatHangs = {
  leverage: { shots: 0, rounds: 0, drop: null },
  doubles: { singles: 0, doubles: 0, drop: null },
};

/** A fitting that answers when the test says so. */
function fakeFitting() {
  const told: { changed: number; gone: number }[] = [];
  const asks: {
    of: StudyAsk;
    progress: (share: number) => void;
    answer: (study: Study | null) => void;
    fail: () => void;
  }[] = [];
  let rests = 0;
  const records = new Map<string, Map<string, Round>>();
  const fitting: Fitting = {
    tell: (shooter, changed, gone) => {
      const record = records.get(shooter) ?? new Map<string, Round>();
      records.set(shooter, record);
      for (const round of changed) record.set(round.id, round);
      for (const id of gone) record.delete(id);
      told.push({ changed: changed.length, gone: gone.length });
    },
    study: (of, progress) =>
      new Promise((resolve, reject) => {
        asks.push({ of, progress, answer: resolve, fail: () => reject(new Error('broke')) });
      }),
    change: () => Promise.resolve(null),
    forecasts: () => Promise.resolve(SCORE),
    hangs: () => Promise.resolve(HANGS),
    rest: () => void (rests += 1),
  };
  /** Answers a question as the real fitting would. */
  const answer = async (number: number): Promise<Study> => {
    const ask = present(asks.at(number), 'a question');
    const { mix, pressure, hyper } = ask.of;
    const study = studyOf([...(records.get(ask.of.shooter)?.values() ?? [])], {
      mix,
      draws: 100,
      ...(pressure ? { pressure } : {}),
      ...(hyper ? { hyper } : {}),
    }).study;
    ask.answer(study);
    await settle();
    return study;
  };
  const recordOf = (shooter: string): number => records.get(shooter)?.size ?? 0;
  return { fitting, told, asks, answer, recordOf, rests: () => rests };
}

async function room(stored: readonly LogEvent[] = []) {
  const log = fakeLog();
  log.durable.push(...stored);
  let held: Promise<void> = Promise.resolve();
  // Durable at once, unless the test holds it.
  log.append = async (events) => {
    await held;
    log.durable.push(...events);
  };
  const hold = () => {
    let letGo = (): void => undefined;
    held = new Promise((resolve) => {
      letGo = resolve;
    });
    return letGo;
  };
  const shelf = fakeShelf();
  const gym = createGym(fakeWorld(log, shelf));
  await gym.open(false);
  const fake = fakeFitting();
  const idle: { wake: (() => void) | null } = { wake: null };
  const made = createStudyRoom(gym, fake.fitting, shelf, (wake) => {
    idle.wake = wake;
    return () => {
      idle.wake = null;
    };
  });
  return { gym, shelf, log, hold, idle, studyRoom: made, state: () => made.store.getState(), ...fake };
}

async function withSeason({ mixKept = false } = {}): ReturnType<typeof room> {
  const made = await room();
  if (!mixKept) {
    await loadDemoSeason(made.gym);
    return made;
  }
  const first = await withSeason();
  await first.answer(0);
  const second = await room(first.log.durable);
  second.gym.set({ shooter: first.state().shooter });
  return second;
}

const startRound = (gym: Gym, shooter: string) =>
  gym.dispatch([
    { type: 'SessionStarted', body: { session: 'now', shooter, date: '2026-11-25' } },
    {
      type: 'RoundStarted',
      body: {
        round: 'now',
        session: 'now',
        shooter,
        condition: 'relaxed',
        card: { id: 'c', name: 'Card', stops: [{ spot: 'top', shot: 'catch', attempts: 2 }] },
        entry: 'each-shot',
        first: null,
        nerves: 2,
        pair: null,
        pressure: null,
      },
    },
  ]);

describe('the study of the shooter at the bench', () => {
  it('asks nothing while there is nobody', async () => {
    const { asks, state } = await room();
    expect(asks).toEqual([]);
    expect(state()).toMatchObject({ shooter: null, study: null, working: null });
  });

  it('is thorough at first, keeps the spreads, and says how far it is', async () => {
    const { asks, answer, state, shelf } = await withSeason();
    expect(asks).toHaveLength(1);
    expect(asks[0]?.of).toMatchObject({ mix: 'relaxed', hyper: null });
    asks[0]?.progress(0.4);
    expect(state().working).toBe(0.4);
    const study = await answer(0);
    expect(state().study).toBe(study);
    if (study.index.kind === 'none') throw new Error('no index');
    expect(shelf.kept.get('loud-gym-spreads')).toContain(String(study.index.hyper.mean.day));
  });

  it('keeps mix and pressure with the first verdict, and works with them from then on', async () => {
    const { asks, answer, gym, state } = await withSeason();
    const { index } = await answer(0);
    if (index.kind === 'none') throw new Error('no index');
    const { book, settings } = gym.store.getState();
    const kept = book.mixes.get(settings.shooter ?? '');
    expect(kept?.mix.length).toBeGreaterThan(3);
    expect(asks.at(-1)?.of.mix).toEqual(kept?.mix);
    expect(kept?.pressure).toEqual(index.usual);
    expect(asks.at(-1)?.of.pressure).toEqual(index.usual);
    expect(state().study?.verdict.kind).not.toBe('none');
  });

  it('keeps the pressure with a mix that was kept without it, and the mix as it was', async () => {
    const first = await withSeason();
    const mix = [{ spot: 'free-throw', shot: 'free-throw', weight: 1 }] as const;
    await first.gym.dispatch([{ type: 'MixKept', body: { shooter: first.state().shooter ?? '', mix } }]);
    const second = await room(first.log.durable);
    second.gym.set({ shooter: first.state().shooter });
    expect(second.asks.at(-1)?.of).toMatchObject({ mix, pressure: null });
    const { index } = await second.answer(-1);
    expect(second.asks.at(-1)?.of).toMatchObject({ mix, pressure: index.kind === 'index' && index.usual });
    // And no more than once.
    await second.answer(-1);
    const kept = second.log.durable.filter(({ type }) => type === 'MixKept');
    expect(kept).toHaveLength(2);
  });

  it('after a round studies quickly, and thoroughly once the device is idle', async () => {
    const { asks, answer, gym, idle, told, state } = await withSeason();
    const shooter = state().shooter ?? '';
    await answer(0);
    // The mix is kept by now, so a second study is under way.
    await answer(1);
    const before = asks.length;
    await startRound(gym, shooter);
    expect(asks).toHaveLength(before);
    const shot = (made: boolean) =>
      ({ type: 'ShotTaken', body: { round: 'now', stop: 0, made, side: null } }) as const;
    await gym.dispatch([shot(true), shot(false)]);
    await gym.dispatch([{ type: 'RoundEnded', body: { round: 'now', why: 'played-out', clockLeft: null } }]);
    expect(told.at(-1)).toEqual({ changed: 1, gone: 0 });
    expect(asks).toHaveLength(before + 1);
    expect(asks.at(-1)?.of.hyper).not.toBeNull();
    await answer(-1);
    expect(idle.wake).not.toBeNull();
    idle.wake?.();
    expect(asks.at(-1)?.of.hyper).toBeNull();
  });

  it('leaves the device to a round that is being played', async () => {
    const { answer, gym, rests, state, idle } = await withSeason();
    const before = rests();
    await startRound(gym, state().shooter ?? '');
    expect(rests()).toBe(before + 1);
    // Its taps are no news to the worker.
    await gym.dispatch([{ type: 'ShotTaken', body: { round: 'now', stop: 0, made: true, side: null } }]);
    expect(rests()).toBe(before + 1);
    expect(state().working).toBeNull();
    expect(idle.wake).toBeNull();
    // What comes too late is not shown.
    await answer(0);
    expect(state().study).toBeNull();
  });

  it('asks again for free throws alone, and says where the model cannot run', async () => {
    const { asks, studyRoom, state } = await withSeason();
    studyRoom.choose('free-throws');
    expect(asks.at(-1)?.of.mix).toBe('free-throws');
    asks.at(-1)?.fail();
    await settle();
    expect(state()).toMatchObject({ broken: true, working: null });
  });

  it('shows how the forecasts came out after a thorough study, and not after a quick one', async () => {
    const { answer, state } = await withSeason();
    await answer(0);
    // The mix was kept, so this is a quick one.
    await answer(1);
    expect(state().forecasts).toBeNull();
    const again = await withSeason({ mixKept: true });
    await again.answer(-1);
    expect(again.state()).toMatchObject({ forecasts: SCORE, hangs: HANGS });
  });

  it('tells the record of whoever was duelled with too, and of nobody else', async () => {
    const plan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 0 } as const;
    const log = groupOf(plan, 'shot', ['ines', 'tarek']);
    for (const shot of 'oxoxox') shoot(log, shot === 'o');
    log.write('ShooterAdded', { ...INES, shooter: 'mara', name: 'Mara' });
    const { gym, recordOf } = await room();
    await gym.dispatch(log.events.map(({ type, body }) => ({ type, body }) as Fact));
    gym.set({ shooter: 'ines' });
    expect([recordOf('ines'), recordOf('tarek'), recordOf('mara')]).toEqual([1, 1, 0]);
  });

  it('keeps one mix where two answers come before the first is written', async () => {
    const { asks, answer, gym, log, hold } = await withSeason();
    const written = hold();
    await answer(0);
    gym.set({ shooter: 'nobody' });
    gym.set({ shooter: asks[0]?.of.shooter ?? null });
    await answer(-1);
    written();
    await settle();
    expect(log.durable.filter(({ type }) => type === 'MixKept')).toHaveLength(1);
  });

  it('forgets a shooter who is taken off while a study is under way', async () => {
    const { asks, answer, gym, log, rests, state } = await withSeason();
    const shooter = asks[0]?.of.shooter ?? '';
    await gym.dispatch(
      [...gym.store.getState().book.shooters.keys()].map((one) => ({
        type: 'ShooterRemoved',
        body: { shooter: one },
      })),
    );
    expect(state()).toMatchObject({ shooter: null, study: null, working: null });
    expect(rests()).toBeGreaterThan(0);
    await answer(0);
    expect(state().study).toBeNull();
    expect(log.durable.some((event) => event.type === 'MixKept' && event.body.shooter === shooter)).toBe(
      false,
    );
  });

  it('goes over to another shooter, and never shows the one before as theirs', async () => {
    const { asks, answer, gym, state } = await withSeason();
    const other =
      [...gym.store.getState().book.shooters.keys()].find((one) => one !== asks[0]?.of.shooter) ?? '';
    gym.set({ shooter: other });
    await answer(0);
    expect(state()).toMatchObject({ shooter: other, study: null });
    await answer(1);
    expect(state().study?.have.pressured.attempts).toBeGreaterThan(0);
  });

  it('asks nothing where nothing changed', async () => {
    const { asks, answer, gym } = await withSeason();
    await answer(0);
    await answer(1);
    const before = asks.length;
    await gym.dispatch([{ type: 'OwnSpotPlaced', body: { spot: 'Short corner', x: 1, y: 1 } }]);
    gym.set({ volume: 0.1 });
    expect(asks).toHaveLength(before);
  });

  it('begins no thorough study beside a round that was left open', async () => {
    const first = await withSeason();
    await startRound(first.gym, first.state().shooter ?? '');
    const second = await room(first.log.durable);
    second.gym.set({ shooter: first.state().shooter });
    expect(second.asks).toEqual([]);
    await second.gym.dispatch([
      { type: 'RoundEnded', body: { round: 'now', why: 'stopped', clockLeft: null } },
    ]);
    expect(second.asks).toHaveLength(1);
  });

  it('works with the mix of today from when the shooter asks for it', async () => {
    const { asks, answer, gym, state, studyRoom } = await withSeason();
    await answer(0);
    await answer(1);
    const { index } = present(state().study, 'a study');
    if (index.kind === 'none') throw new Error('no index');
    expect(await studyRoom.keepMixOfToday()).toBe(true);
    const { book, settings } = gym.store.getState();
    const { mix, pressure } = present(book.mixes.get(settings.shooter ?? ''), 'a mix');
    expect(pressure).toEqual(index.usual);
    expect(asks.at(-1)?.of).toMatchObject({ mix, pressure });
  });
});
