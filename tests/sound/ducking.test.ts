import { describe, expect, test } from 'vitest';

import { clipSeconds } from '../../renderer/sound/clips.ts';
import { startCountdown } from '../../renderer/sound/countdown.ts';
import { ducking, duckUnder } from '../../renderer/sound/ducking.ts';
import { StandInContext } from './standIns.ts';

const cue = (clip: string, at: number) => ({ clip, at, gain: 1 });

describe('the crowd makes room', () => {
  test('for a word, from just before it until it is over', () => {
    const [down, up, ...rest] = duckUnder([cue('go', 10)]);
    expect(rest).toEqual([]);
    expect(down?.at).toBeLessThan(10);
    // Settled to 95 % when the word begins.
    expect((down?.at ?? 0) + 3 * (down?.settle ?? 1)).toBeLessThanOrEqual(10);
    expect(down?.level).toBeLessThan(0.5);
    expect(up).toMatchObject({ at: 10 + clipSeconds('go'), level: 1 });
  });

  test('once for a whole countdown', () => {
    expect(duckUnder(startCountdown(105, 5, 'voice', 0))).toHaveLength(2);
  });

  test('for words far apart one by one, in whatever order they were planned', () => {
    const steps = duckUnder([cue('time-up', 20), cue('go', 10)]);
    expect(steps.map(({ at }) => at)).toEqual(steps.map(({ at }) => at).toSorted((a, b) => a - b));
    expect(steps).toHaveLength(4);
  });

  test('not for what cuts through by itself', () => {
    expect(duckUnder([cue('beep-low', 1), cue('buzzer', 2), cue('cheer-big', 3)])).toEqual([]);
  });
});

describe('ducking', () => {
  const levels = (context: StandInContext, at: number) => context.headingAt(at);

  test('holds under the words of every plan, until the last of them is called off', () => {
    const context = new StandInContext();
    const room = ducking(context.asContext(), context.param());
    const first = room.add([cue('go', 10)]);
    const second = room.add([cue('time-up', 20)]);
    expect([levels(context, 10), levels(context, 15), levels(context, 20)]).toEqual([0.25, 1, 0.25]);
    first();
    expect([levels(context, 10), levels(context, 20)]).toEqual([1, 0.25]);
    second();
    expect(levels(context, 20)).toBe(1);
  });

  test('stays low where another plan is made in the middle of a word', () => {
    const context = new StandInContext();
    const room = ducking(context.asContext(), context.param());
    room.add([cue('sound-check', 10)]);
    context.currentTime = 11;
    room.add([cue('buzzer', 30)]);
    expect(levels(context, 11)).toBe(0.25);
    expect(levels(context, 14)).toBe(1);
  });

  test('forgets plans that are long over', () => {
    const context = new StandInContext();
    const room = ducking(context.asContext(), context.param());
    for (let at = 0; at < 1000; at += 5) {
      context.currentTime = at;
      room.add([cue('go', at + 1)]);
    }
    context.currentTime = 2000;
    room.add([cue('buzzer', 2001)]);
    expect(context.steps.filter(({ at }) => at >= 2000)).toHaveLength(1);
  });
});
