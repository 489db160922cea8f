import { describe, expect, test } from 'vitest';

import type { Cue } from '../../renderer/sound/cues.ts';
import { scheduler } from '../../renderer/sound/scheduler.ts';
import { StandInContext, standInBank } from './standIns.ts';

const OUT = {} as AudioNode;
const cue = (at: number, clip = 'beep-low') => ({ clip, at, gain: 1 });

function setUp(options: { loaded?: boolean; tolerance?: number } = {}) {
  const context = new StandInContext();
  context.currentTime = 100;
  const bank = standInBank(0.002, options.loaded ?? true);
  const planner = scheduler(context.asContext(), OUT, bank.bank, options.tolerance);
  const plan = (cues: readonly Cue[]) => planner.plan(cues);
  const starts = () => context.sources.map(({ startedAt }) => startedAt);
  return { context, bank, plan, starts };
}

describe('the scheduler', () => {
  test('plans everything at once, each clip earlier by its own onset', () => {
    const { plan, starts } = setUp();
    plan([cue(101), cue(102), cue(3700)]);
    expect(starts()).toEqual([101 - 0.002, 102 - 0.002, 3700 - 0.002]);
  });

  test('drops a cue whose time has passed, and plays the others', () => {
    const { plan, starts } = setUp();
    plan([cue(99.9), cue(100), cue(101)]);
    expect(starts()).toEqual([101 - 0.002]);
  });

  test('drops a cue that the buffer which is being rendered would make late', () => {
    const { context, plan, starts } = setUp();
    context.baseLatency = 0.01;
    plan([cue(100.011), cue(100.013)]);
    expect(starts()).toEqual([100.013 - 0.002]);
  });

  test('plays a cue that is late by less than it may', () => {
    const { plan, starts } = setUp({ tolerance: 0.5 });
    plan([cue(99.4), cue(99.6)]);
    expect(starts()).toEqual([99.6 - 0.002]);
  });

  test('starts a clip that arrives in time, and none that arrives late', async () => {
    const { context, bank, plan, starts } = setUp({ loaded: false });
    plan([cue(101), cue(102), cue(103)]);
    expect(starts()).toEqual([]);
    context.currentTime = 101.5;
    bank.arrive();
    await expect.poll(starts).toEqual([102 - 0.002, 103 - 0.002]);
  });

  test('goes on without a clip that cannot be had', async () => {
    const { bank, plan, starts } = setUp({ loaded: false });
    plan([cue(101)]);
    bank.fail();
    await Promise.resolve();
    expect(starts()).toEqual([]);
  });

  test('calls off what is still to come, what sounds, and what is still being loaded', async () => {
    const ready = setUp();
    const planned = ready.plan([cue(101), cue(110)]);
    ready.context.currentTime = 101.05;
    planned.cancel();
    const [sounding, ahead] = ready.context.sources;
    expect(sounding?.stoppedAt).toBeCloseTo(101.06, 9);
    expect(ahead?.stoppedAt).toBeLessThan(ahead?.startedAt ?? 0);

    const loading = setUp({ loaded: false });
    loading.plan([cue(101)]).cancel();
    loading.bank.arrive();
    await Promise.resolve();
    await Promise.resolve();
    expect(loading.starts()).toEqual([]);
  });

  test('leaves alone what has ended by itself', () => {
    const { context, plan } = setUp();
    const planned = plan([cue(101)]);
    context.sources[0]?.dispatchEvent(new Event('ended'));
    planned.cancel();
    expect(context.sources[0]?.stoppedAt).toBeNull();
  });

  test('does not know a clip that nobody made', () => {
    expect(() => setUp().plan([cue(101, 'vuvuzela')])).toThrow('vuvuzela is the name of a clip');
  });
});
