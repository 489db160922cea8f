import { describe, expect, test } from 'vitest';

import { clipBank, type ClipSource } from '../../renderer/sound/clipBank.ts';
import {
  CLIP_NAMES,
  clipSeconds,
  filesOf,
  isClipName,
  isSpoken,
  loopOf,
  SIGNALS,
} from '../../renderer/sound/clips.ts';
import { onsetOf, type Samples } from '../../renderer/sound/onset.ts';

describe('the clips', () => {
  test('are known by name', () => {
    expect(CLIP_NAMES).toContain('buzzer');
    expect(isClipName('buzzer')).toBe(true);
    expect(isClipName('toString')).toBe(false);
    expect(SIGNALS.every(isClipName)).toBe(true);
  });

  test('that speak are the countdown, go and the sentences', () => {
    expect(CLIP_NAMES.filter(isSpoken).toSorted()).toEqual(
      ['count-1', 'count-2', 'count-3', 'count-4', 'count-5', 'go', 'sound-check', 'time-up'].toSorted(),
    );
  });

  test('that loop do so inside themselves; the others do not', () => {
    const loops = CLIP_NAMES.filter((name) => loopOf(name) !== null);
    expect(loops.toSorted()).toEqual(['crowd-bed', 'crowd-swell']);
    for (const name of loops) {
      const { start, end } = loopOf(name) ?? { start: 0, end: 0 };
      expect(0 < start && start < end && end < clipSeconds(name)).toBe(true);
    }
  });

  test('come in the format the browser plays first, and in the other after it', () => {
    const paths = (plays: string) => filesOf('go', (extension) => extension === plays);
    expect(paths('webm')).toEqual(['sound/go.webm', 'sound/go.m4a']);
    expect(paths('m4a')).toEqual(['sound/go.m4a', 'sound/go.webm']);
    expect(paths('flac')).toHaveLength(2);
  });

  test('of a countdown are over before the next one is due', () => {
    for (const name of SIGNALS.slice(0, 5)) expect(clipSeconds(name)).toBeLessThan(1);
  });
});

function soundOf(channels: readonly (readonly number[])[]): Samples {
  return {
    sampleRate: 8000,
    numberOfChannels: channels.length,
    getChannelData: (channel) => Float32Array.from(channels[channel] ?? []),
  };
}

describe('a clip is heard', () => {
  test('from where it first reaches a fiftieth of its peak', () => {
    expect(onsetOf(soundOf([[0, 0.009, 0.0101, -0.5]]))).toBe(2 / 8000);
    expect(onsetOf(soundOf([[0, 0.001, -0.011, 0.5]]))).toBe(2 / 8000);
    expect(onsetOf(soundOf([[1, 0]]))).toBe(0);
  });

  test('on whichever channel is first, by the peak of the loudest', () => {
    const quietFirst = [0.001, 0.001, 0.02, 0.02];
    expect(onsetOf(soundOf([[0, 0, 0, 0.9], quietFirst]))).toBe(2 / 8000);
    expect(onsetOf(soundOf([quietFirst, [0, 0, 0, 0.9]]))).toBe(2 / 8000);
    expect(
      onsetOf(
        soundOf([
          [0, 0.9],
          [0, 0],
        ]),
      ),
    ).toBe(1 / 8000);
  });

  test('at once where it is silent or empty', () => {
    expect(onsetOf(soundOf([[0, 0]]))).toBe(0);
    expect(onsetOf(soundOf([[]]))).toBe(0);
  });
});

describe('the bank of clips', () => {
  const bytes = new ArrayBuffer(1);
  /** Silent for two of its four samples. */
  const buffer = soundOf([[0, 0, 0.5, 0.1]]) as unknown as AudioBuffer;
  const onset = 2 / 8000;

  function setUp(failing: (path: string) => boolean) {
    const fetched: string[] = [];
    const source: ClipSource = {
      plays: (extension) => extension === 'webm',
      fetch: (path) => {
        fetched.push(path);
        return Promise.resolve(bytes);
      },
      decode: () =>
        failing(fetched.at(-1) ?? '') ? Promise.reject(new Error('broken')) : Promise.resolve(buffer),
    };
    return { fetched, bank: clipBank(source) };
  }

  test('fetches a clip once, however often and however soon it is asked for', async () => {
    const { bank, fetched } = setUp(() => false);
    expect(bank.get('go')).toBeNull();
    const [one, other] = await Promise.all([bank.load('go'), bank.load('go')]);
    await bank.load('go');
    expect(one).toBe(other);
    expect(bank.get('go')).toBe(one);
    expect(fetched).toEqual(['sound/go.webm']);
  });

  test('takes the other format where the browser was wrong, and listens when it is heard', async () => {
    const { bank, fetched } = setUp((path) => path.endsWith('.webm'));
    expect(await bank.load('count-2')).toEqual({ buffer, onset });
    expect(fetched).toEqual(['sound/count-2.webm', 'sound/count-2.m4a']);
  });

  test('takes a loop as heard at once', async () => {
    expect(await setUp(() => false).bank.load('crowd-bed')).toEqual({ buffer, onset: 0 });
  });

  test('says that there is no clip where none plays, and tries again later', async () => {
    let broken = true;
    const { bank, fetched } = setUp(() => broken);
    expect(await bank.load('go')).toBeNull();
    expect(bank.get('go')).toBeNull();
    broken = false;
    expect(await bank.load('go')).not.toBeNull();
    expect(fetched).toHaveLength(3);
  });
});
