import { EventEmitter } from 'node:events';

import type { IpcMain, PowerSaveBlocker, WebContents } from 'electron';
import { beforeEach, describe, expect, test } from 'vitest';

import { keepAwakeOnRequest } from '../../electron/power.ts';
import { standFor } from './standFor.ts';

const OWN = { senderFrame: { url: 'app://bundle/index.html', parent: null } };
const FOREIGN = { senderFrame: { url: 'https://other.example/', parent: null } };

describe('keeping the display awake', () => {
  let held: Set<number>;
  let kinds: string[];
  let contents: EventEmitter;
  let say: (event: object, on: unknown) => void;

  beforeEach(() => {
    held = new Set();
    kinds = [];
    contents = new EventEmitter();
    const blocker = {
      start: (kind: string) => {
        held.add(kinds.push(kind));
        return kinds.length;
      },
      stop: (id: number) => held.delete(id),
    };
    const ipc = {
      handle: (channel: string, listener: typeof say) => {
        expect(channel).toBe('loud-gym:keep-awake');
        say = listener;
      },
    };
    keepAwakeOnRequest(
      standFor<IpcMain>(ipc),
      standFor<PowerSaveBlocker>(blocker),
      standFor<WebContents>(contents),
    );
  });

  test('holds it while a round is on, once however often it is said', () => {
    say(OWN, true);
    say(OWN, true);
    expect(kinds).toEqual(['prevent-display-sleep']);
    expect(held.size).toBe(1);
    say(OWN, false);
    say(OWN, false);
    expect(held.size).toBe(0);
  });

  test('holds it anew for the next round', () => {
    for (const on of [true, false, true]) say(OWN, on);
    expect(kinds).toHaveLength(2);
    expect(held).toEqual(new Set([2]));
  });

  test('refuses a foreign sender, who can neither hold it nor let it go', () => {
    expect(() => say(FOREIGN, true)).toThrow(/own page alone/);
    expect(() => say({ senderFrame: null }, true)).toThrow(/own page alone/);
    expect(kinds).toEqual([]);
    say(OWN, true);
    expect(() => say(FOREIGN, false)).toThrow(/own page alone/);
    expect(held.size).toBe(1);
  });

  test.each([undefined, null, 1, 'true', {}])('refuses %j, which is neither yes nor no', (on) => {
    expect(() => say(OWN, on)).toThrow(TypeError);
    expect(kinds).toEqual([]);
  });

  test.each([
    ['did-start-navigation', { isMainFrame: true, isSameDocument: false }],
    ['render-process-gone', {}],
    ['destroyed', {}],
  ])('lets it go with the page that asked: %s', (event, details) => {
    say(OWN, true);
    expect(held.size).toBe(1);
    contents.emit(event, details);
    expect(held.size).toBe(0);
  });

  test('keeps it while the page only moves within itself', () => {
    say(OWN, true);
    contents.emit('did-start-navigation', { isMainFrame: true, isSameDocument: true });
    contents.emit('did-start-navigation', { isMainFrame: false, isSameDocument: false });
    expect(held.size).toBe(1);
  });
});
