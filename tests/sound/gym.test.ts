import { describe, expect, test } from 'vitest';

import type { Cue } from '../../renderer/sound/cues.ts';
import { createGymSound } from '../../renderer/sound/gym.ts';
import type { Place } from '../../renderer/sound/place.ts';
import type { Speaker } from '../../renderer/sound/speaker.ts';
import type { GymSound } from '../../renderer/store/ports.ts';

/** An audio context as the gym sees it; time passes only when the world's does. */
class StandInContext extends EventTarget {
  state: AudioContextState | 'interrupted' = 'suspended';
  currentTime = 0;
  allowed = true;
  stuck = false;

  resume(): Promise<void> {
    if (!this.allowed) return new Promise(() => {});
    this.turn('running');
    return Promise.resolve();
  }
  turn(state: AudioContextState | 'interrupted'): void {
    if (state === this.state) return;
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

/** A world whose time passes while somebody sleeps in it. */
function world(options: { hasAudio?: boolean; fetches?: boolean; loads?: boolean; touched?: boolean } = {}) {
  const { hasAudio = true, fetches = true, loads = true, touched = true } = options;
  const context = new StandInContext();
  const planned: (readonly Cue[])[] = [];
  const volumes: number[] = [];
  const crowd: string[] = [];
  let time = 1000;
  let asleep = 0;
  let looks = () => {};
  let wakes = () => {};

  const pass = (seconds: number) => {
    for (let left = seconds; left > 0; left -= 0.5) {
      const step = Math.min(0.5, left);
      time += step;
      if (context.state === 'running' && !context.stuck) context.currentTime += step;
      if (step === 0.5) looks();
    }
  };
  const speaker: Speaker = {
    context: context as unknown as AudioContext,
    crowd: {
      enter: () => void crowd.push('enter'),
      swell: () => void crowd.push('swell'),
      answer: () => void crowd.push('answer'),
      leave: () => void crowd.push('leave'),
    },
    setVolume: (volume) => void volumes.push(volume),
    shownTime: () => context.currentTime - 0.04,
    load: () => Promise.resolve(loads),
    plan: (cues) => {
      planned.push(cues);
      return { cancel: () => void planned.pop() };
    },
  };
  const place: Place = {
    fetchSpeaker: () =>
      fetches
        ? Promise.resolve({
            openSpeaker: (volume) => {
              volumes.push(volume);
              return hasAudio ? speaker : null;
            },
          })
        : Promise.reject(new Error('no connection')),
    steady: () => time,
    calendar: () => time + asleep,
    touched: () => touched,
    sleep: (seconds) => {
      if (seconds < 1) pass(seconds);
      return Promise.resolve();
    },
    every: (_, look) => {
      looks = look;
    },
    whenIdle: () => {},
    onWake: (wake) => {
      wakes = wake;
    },
  };
  const gym: GymSound = createGymSound(place);
  const states: string[] = [];
  gym.onState((state) => states.push(state));
  return {
    context,
    planned,
    volumes,
    crowd,
    gym,
    states,
    pass,
    touch: () => wakes(),
    sleepFor: (seconds: number) => {
      asleep += seconds;
      pass(0.5);
    },
  };
}

const CUE: Cue = { clip: 'buzzer', at: 1010, gain: 1 };

describe('before it is unlocked', () => {
  test('the clock runs and nothing sounds', () => {
    const { gym, pass, planned, crowd } = world();
    expect(gym.state()).toBe('locked');
    expect(gym.now()).toBe(1000);
    pass(2);
    expect([gym.now(), gym.shownNow()]).toEqual([1002, 1002]);
    gym.plan([CUE]).cancel();
    gym.crowd.enter();
    expect([planned, crowd]).toEqual([[], []]);
  });

  test('the volume is quiet, and kept for later', async () => {
    const quiet = world();
    await quiet.gym.unlock();
    expect(quiet.volumes).toEqual([0.3]);

    const louder = world();
    louder.gym.setVolume(0.6);
    louder.gym.setVolume(7);
    louder.gym.setVolume(0.5);
    await louder.gym.unlock();
    louder.gym.setVolume(-1);
    expect(louder.volumes).toEqual([0.5, 0]);
  });
});

describe('unlocked', () => {
  test('it runs, and its clock goes on from where it was', async () => {
    const { gym, states, pass, context } = world();
    const before = gym.now();
    expect(await gym.unlock()).toBe('running');
    expect(states).toEqual(['running']);
    const after = gym.now();
    expect(after - before).toBeLessThan(0.1);
    const audio = context.currentTime;
    pass(3);
    expect(gym.now() - after).toBeCloseTo(context.currentTime - audio, 9);
  });

  test('cues are planned on the audio clock, and called off on it', async () => {
    const { gym, planned, context } = world();
    await gym.unlock();
    const plan = gym.plan([{ ...CUE, at: gym.now() + 5 }]);
    expect(planned[0]?.[0]?.at).toBeCloseTo(context.currentTime + 5, 9);
    expect(planned[0]?.[0]).toMatchObject({ clip: 'buzzer', gain: 1 });
    plan.cancel();
    expect(planned).toEqual([]);
  });

  test('the clock that is drawn is behind by the way to the ear, and never goes back', async () => {
    const { gym, pass, context } = world();
    pass(1);
    const before = gym.shownNow();
    await gym.unlock();
    expect(gym.shownNow()).toBeGreaterThanOrEqual(before);
    pass(1);
    expect(gym.shownNow()).toBeCloseTo(gym.now() - 0.04, 9);
    context.turn('closed');
    expect(gym.shownNow()).toBeCloseTo(gym.now(), 9);
  });

  test('the crowd does as it is told', async () => {
    const { gym, crowd } = world();
    await gym.unlock();
    gym.crowd.enter();
    gym.crowd.swell(6, 0.5);
    gym.crowd.answer(true, 0.5);
    gym.crowd.leave();
    expect(crowd).toEqual(['enter', 'swell', 'answer', 'leave']);
  });

  test('a second unlock changes nothing', async () => {
    const { gym, states, volumes } = world();
    expect(await Promise.all([gym.unlock(), gym.unlock()])).toEqual(['running', 'running']);
    await gym.unlock();
    expect([states, volumes]).toEqual([['running'], [0.3]]);
  });

  test('a listener that stopped listening hears no more', async () => {
    const { gym } = world();
    const heard: string[] = [];
    gym.onState((state) => heard.push(state))();
    await gym.unlock();
    expect(heard).toEqual([]);
  });
});

describe('where the browser wants a touch', () => {
  test('it stays locked, its clock runs on, and it runs once it may', async () => {
    const { gym, context, states } = world({ touched: false });
    context.allowed = false;
    expect(await gym.unlock()).toBe('locked');
    expect(gym.now()).toBeGreaterThan(1001);
    context.allowed = true;
    expect(await gym.unlock()).toBe('running');
    expect(states).toEqual(['running']);
  });

  test('it runs by itself where the browser starts the clock later', async () => {
    const { gym, context } = world({ touched: false });
    context.allowed = false;
    await gym.unlock();
    context.turn('running');
    await expect.poll(() => gym.state()).toBe('running');
  });
});

describe('where there is no sound', () => {
  test.each([
    ['the browser has no audio', { hasAudio: false }],
    ['its code cannot be fetched', { fetches: false }],
    ['no signal can be loaded', { loads: false }],
  ])('because %s, the clock runs on in silence', async (_, options) => {
    const { gym, pass, planned } = world(options);
    expect(await gym.unlock()).toBe('silent');
    const then = gym.now();
    pass(4);
    expect(gym.now()).toBeCloseTo(then + 4, 9);
    expect(gym.shownNow()).toBeCloseTo(gym.now(), 9);
    gym.plan([CUE]).cancel();
    expect(planned).toEqual([]);
  });

  test('because the audio clock does not move, the same', async () => {
    const { gym, context, pass } = world();
    context.stuck = true;
    expect(await gym.unlock()).toBe('silent');
    const then = gym.now();
    pass(4);
    expect(gym.now()).toBeCloseTo(then + 4, 9);
    context.stuck = false;
    expect(await gym.unlock()).toBe('running');
    expect(gym.now()).toBeGreaterThanOrEqual(then + 4);
  });

  test('because the context was closed, the clock goes on from where it was', async () => {
    const { gym, context, pass, states } = world();
    await gym.unlock();
    pass(2);
    const then = gym.now();
    context.turn('closed');
    expect(states).toEqual(['running', 'silent']);
    pass(2);
    expect(gym.now()).toBeCloseTo(then + 2, 9);
  });
});

describe('interrupted', () => {
  test.each(['suspended', 'interrupted'] as const)(
    'by the system (%s), its clock stands, and goes on after',
    async (how) => {
      const { gym, context, states, pass } = world();
      await gym.unlock();
      context.turn(how);
      const stood = gym.now();
      pass(10);
      expect(gym.now()).toBe(stood);
      context.turn('running');
      expect(states).toEqual(['running', 'interrupted', 'running']);
      pass(1);
      expect(gym.now()).toBeCloseTo(stood + 1, 9);
    },
  );

  test('it comes back with the next touch', async () => {
    const { gym, context, touch } = world();
    await gym.unlock();
    context.turn('suspended');
    touch();
    expect(gym.state()).toBe('running');
  });

  test('and refused, it stays interrupted', async () => {
    const { gym, context } = world();
    await gym.unlock();
    context.turn('suspended');
    context.allowed = false;
    expect(await gym.unlock()).toBe('interrupted');
  });

  test('by sleep that nobody told of, it says so, and runs again', async () => {
    const { gym, states, pass, sleepFor } = world();
    await gym.unlock();
    pass(5);
    sleepFor(600);
    expect(states).toEqual(['running', 'interrupted']);
    pass(1);
    expect(gym.state()).toBe('running');
  });

  test('by a loudspeaker that is gone, it stays so until the audio clock moves', async () => {
    const { gym, context, pass } = world();
    await gym.unlock();
    pass(5);
    context.stuck = true;
    pass(4);
    expect(gym.state()).toBe('interrupted');
    pass(10);
    expect(gym.state()).toBe('interrupted');
    context.stuck = false;
    pass(2);
    expect(gym.state()).toBe('running');
  });
});
