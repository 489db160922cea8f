import { describe, expect, test } from 'vitest';

import { loopOf } from '../../renderer/sound/clips.ts';
import { crowdNoise } from '../../renderer/sound/crowdNoise.ts';
import { StandInContext, standInBank } from './standIns.ts';

const OUT = {} as AudioNode;

function setUp(loaded = true) {
  const context = new StandInContext();
  const bank = standInBank(0, loaded);
  return { context, bank, crowd: crowdNoise(context.asContext(), OUT, bank.bank) };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the crowd', () => {
  test('loops both layers between their seams while it is here', () => {
    const { context, crowd } = setUp();
    crowd.enter();
    const loops = context.sources.map(
      ({ loop, loopStart, loopEnd }) => loop && { start: loopStart, end: loopEnd },
    );
    expect(loops).toEqual([loopOf('crowd-bed'), loopOf('crowd-swell')]);
    expect(context.sources.every(({ stoppedAt }) => stoppedAt === null)).toBe(true);
  });

  test('comes once, however often it is called in', () => {
    const { context, crowd } = setUp();
    crowd.enter();
    crowd.enter();
    expect(context.sources).toHaveLength(2);
  });

  test('fades before its sources stop', () => {
    const { context, crowd } = setUp();
    crowd.enter();
    context.currentTime = 50;
    crowd.leave();
    expect(context.headingAt(50)).toBe(0);
    for (const { stoppedAt } of context.sources) expect(stoppedAt).toBeGreaterThan(51);
  });

  test('does nothing before it came and after it left: a relaxed round is quiet', () => {
    const { context, crowd } = setUp();
    crowd.swell(5, 1);
    crowd.answer(true, 1);
    crowd.leave();
    expect([context.steps, context.sources]).toEqual([[], []]);
    crowd.enter();
    crowd.leave();
    const steps = context.steps.length;
    crowd.answer(true, 1);
    expect(context.steps).toHaveLength(steps);
    expect(context.sources).toHaveLength(2);
  });

  test('answers with one shout, and a new one cuts the last short', () => {
    const { context, crowd } = setUp();
    crowd.enter();
    crowd.answer(true, 1);
    context.currentTime = 1;
    crowd.answer(false, 1);
    const [, , cheer, groan] = context.sources;
    expect(cheer?.stoppedAt).toBeGreaterThan(1);
    expect(groan?.stoppedAt).toBeNull();
  });

  test('is heard once its noise is loaded, and not if it has left by then', async () => {
    const stayed = setUp(false);
    stayed.crowd.enter();
    stayed.bank.arrive();
    await settled();
    expect(stayed.context.sources).toHaveLength(2);

    const left = setUp(false);
    left.crowd.enter();
    left.crowd.leave();
    left.bank.arrive();
    await settled();
    expect(left.context.sources).toHaveLength(0);
  });

  test('comes again after it left', () => {
    const { context, crowd } = setUp();
    crowd.enter();
    crowd.leave();
    crowd.enter();
    expect(context.sources).toHaveLength(4);
    expect(context.sources.slice(2).every(({ stoppedAt }) => stoppedAt === null)).toBe(true);
  });
});
