import { describe, expect, it } from 'vitest';

import { startRound } from '../../renderer/store/roundActions.ts';
import { STOPS } from '../log/diary.ts';
import {
  beforeRound,
  evening,
  opening,
  over,
  phase,
  pressured,
  said,
  type Evening,
} from '../tools/evening.ts';

/*
 * The way of a round on court, as the shooter lives it. How it is left or broken off is in courtLeaving.test.ts, its
 * clocks are in courtClock.test.ts and courtShotClock.test.ts, its crowd in courtCrowd.test.ts.
 */

const PRESSURED = pressured();
const ROUND_CLOCK = pressured({ clock: { kind: 'round', seconds: 20 } });

const cuesOf = ({ sound }: Evening, plan = 0) =>
  sound.plans[plan]?.cues.map(({ clip, at }) => [clip, Number(at.toFixed(6))]);

describe('a pressured round', () => {
  it('counts five to one, and is live at the very moment of "go"', async () => {
    const night = await evening(beforeRound(PRESSURED));
    expect(phase(night)).toBe('ready');
    await night.court.go();
    expect(phase(night)).toBe('countdown');
    const liveAt = night.court.store.getState().liveAt ?? Number.NaN;
    expect(cuesOf(night)).toEqual([
      ['count-5', 0.3],
      ['count-4', 1.3],
      ['count-3', 2.3],
      ['count-2', 3.3],
      ['count-1', 4.3],
      ['go', 5.3],
    ]);
    expect(liveAt).toBeCloseTo(5.3, 9);
    await night.pass(5.299);
    expect(phase(night)).toBe('countdown');
    await night.pass(0.001001);
    expect(phase(night)).toBe('live');
  });
  it('is not live early where the page is woken early', async () => {
    const night = await evening(beforeRound(PRESSURED));
    await night.court.go();
    await night.pass(2);
    night.sound.wakeEarly();
    expect(phase(night)).toBe('countdown');
    await night.pass(4);
    expect(phase(night)).toBe('live');
  });
  it('is counted in beeps where the shooter chose them', async () => {
    const night = await evening(beforeRound(PRESSURED));
    night.gym.set({ countdown: 'beeps' });
    await night.court.go();
    expect(cuesOf(night)?.map(([clip]) => clip)).toEqual([
      ...Array.from({ length: 5 }, () => 'beep-low'),
      'beep-high',
    ]);
  });
  it('sounds as loud as the shooter set it', async () => {
    const night = await evening(beforeRound(PRESSURED));
    night.gym.set({ volume: 0.7 });
    await night.court.go();
    expect(night.sound.volumes).toEqual([0.7]);
  });
  it('takes no tap before it is live', async () => {
    const night = await evening(beforeRound(PRESSURED));
    night.court.shot(true, null);
    await night.court.go();
    night.court.shot(true, null);
    await night.pass(5);
    night.court.shot(true, null);
    expect(night.round().entries).toEqual([]);
    await night.pass(1);
    night.court.shot(true, null);
    expect(night.round().entries).toHaveLength(1);
  });
  it('starts one countdown at a double tap, in whichever moment the second tap comes', async () => {
    const night = await evening(beforeRound(PRESSURED));
    const opened = opening(night);
    const taps = [night.court.go(), night.court.go()];
    await opened('running');
    await Promise.all(taps);
    expect(night.sound.plans).toHaveLength(1);
    await night.court.go();
    await night.pass(6);
    await night.court.go();
    expect(night.sound.plans).toHaveLength(1);
    expect(phase(night)).toBe('live');
  });
  it('is played out to its end, and leaves the court ready', async () => {
    const night = await evening(beforeRound(PRESSURED));
    await night.begin();
    for (const made of [true, false, true, true]) night.court.shot(made, null);
    await night.pass(0);
    expect(said(night)).toEqual(['ShotTaken', 'ShotTaken', 'ShotTaken', 'ShotTaken', 'RoundEnded']);
    expect(over(night)).toMatchObject({ ending: 'played-out' });
    expect(phase(night)).toBe('ready');
    night.court.shot(true, null);
    await night.pass(0);
    expect(said(night)).toHaveLength(5);
  });
  it('stays ready where the device has taken the sound away, and starts once it is back', async () => {
    const night = await evening(beforeRound(PRESSURED));
    night.sound.unlocks = () => Promise.resolve('interrupted');
    await night.court.go();
    expect(phase(night)).toBe('ready');
    expect(night.sound.plans).toEqual([]);
    expect(night.court.store.getState().sound).toBe('interrupted');
    night.sound.unlocks = () => Promise.resolve('running');
    await night.court.go();
    expect(phase(night)).toBe('countdown');
  });
});

describe('a relaxed round', () => {
  it('goes live at once, without a word', async () => {
    const night = await evening(beforeRound());
    await night.court.go();
    expect(phase(night)).toBe('live');
    expect(night.sound.plans).toEqual([]);
    expect(night.sound.crowdCalls).toEqual([]);
  });
  it('needs no sound', async () => {
    const night = await evening(beforeRound());
    night.sound.unlocks = () => Promise.resolve('interrupted');
    await night.court.go();
    expect(phase(night)).toBe('live');
    night.court.shot(true, null);
    night.sound.become('running');
    night.sound.become('interrupted');
    night.court.shot(false, 'short');
    await night.pass(0);
    expect(said(night)).toEqual(['ShotTaken', 'ShotTaken']);
  });
  it('runs on while the page is out of sight, and is paused when the shooter asks', async () => {
    const night = await evening(beforeRound());
    await night.court.go();
    night.court.leave('hidden');
    expect(phase(night)).toBe('live');
    night.court.leave('asked');
    await night.pass(0);
    expect(phase(night)).toBe('ready');
    expect(night.log.said()).toMatchObject([
      { type: 'RoundPaused', body: { why: 'asked', clockLeft: null } },
    ]);
    await night.court.go();
    await night.pass(0);
    expect(said(night)).toEqual(['RoundPaused', 'RoundResumed']);
  });
  it('may be told in counts, stop by stop', async () => {
    const night = await evening(beforeRound({ entry: 'counts' }));
    await night.court.go();
    night.court.count(1);
    night.court.count(2);
    await night.pass(0);
    expect(over(night)?.entries).toMatchObject([
      { kind: 'count', makes: 1, attempts: 2 },
      { kind: 'count', makes: 2, attempts: 2 },
    ]);
  });
});

describe('a second round', () => {
  it('starts afresh after the first', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.begin();
    await night.pass(7);
    for (let shot = 0; shot < 4; shot += 1) night.court.shot(true, null);
    await night.pass(0);
    const { seed, mark } = pressured().pressure ?? {};
    const second = await startRound(night.gym, {
      shooter: 'ines',
      condition: 'pressured',
      card: { id: 'small', name: 'A small card', stops: STOPS },
      entry: 'each-shot',
      nerves: null,
      pressure: {
        ingredients: ['clock'],
        stake: null,
        mark: mark ?? null,
        clock: { kind: 'round', seconds: 30 },
        crowd: false,
        showChance: true,
        seed: seed ?? 0,
      },
      pair: null,
    });
    night.court.enter();
    expect(night.court.store.getState()).toMatchObject({
      round: second,
      phase: 'ready',
      clock: { full: 30, left: 30, since: null },
      liveAt: null,
    });
    await night.begin();
    await night.pass(10);
    night.court.shot(false, 'long');
    expect(night.round().entries).toHaveLength(1);
    expect(night.round().clockLeft).toBeCloseTo(20, 9);
  });
});

describe('the court without a round', () => {
  it('does nothing at all', async () => {
    const night = await evening(beforeRound().slice(0, 2));
    await night.court.go();
    night.court.shot(true, null);
    night.court.count(1);
    night.court.nothingInTheAir();
    night.court.leave('asked');
    expect(await night.court.end('stopped')).toBe(true);
    expect(said(night)).toEqual([]);
    expect(night.court.store.getState()).toMatchObject({ round: null, phase: 'ready' });
  });
});

describe('the sound check', () => {
  it('is planned a moment ahead, and remembers whether it was heard', async () => {
    const night = await evening(beforeRound());
    expect(await night.court.unlock()).toBe('running');
    night.court.playCheck();
    expect(cuesOf(night)).toEqual([['sound-check', 0.3]]);
    expect(night.court.store.getState()).toMatchObject({ sound: 'running', heard: null });
    night.court.heard(false);
    night.court.setVolume(0.2);
    expect(night.court.store.getState().heard).toBe(false);
    expect(night.sound.volumes).toEqual([0.2]);
  });
});
