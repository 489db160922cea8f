import { EventEmitter } from 'node:events';

import type {
  IpcMainInvokeEvent,
  Session,
  WebContents,
  WebFrameMain,
  WindowOpenHandlerResponse,
} from 'electron';
import { describe, expect, test } from 'vitest';

import { isOwn } from '../../electron/address.ts';
import { SAFETY_HEADERS } from '../../electron/policy.ts';
import { fence, guardPermissions, isFromOwnPage } from '../../electron/security.ts';
import { windowOptions } from '../../electron/window.ts';
import { standFor } from './standFor.ts';

/*
 * Item numbers: the security checklist in Electron's documentation, docs/tutorial/security.md, commit 01e0ddf.
 */

describe('the window (items 2, 3, 4, 6, 8, 9, 10, 11)', () => {
  const options = windowOptions('/app');

  test('has every guard up and every opening shut', () => {
    expect(options.webPreferences).toEqual({
      preload: expect.stringMatching(/dist[/\\]electron[/\\]preload\.cjs$/),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      plugins: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      backgroundThrottling: false,
    });
  });
});

describe('the content security policy (item 7)', () => {
  const policy = new Map(
    (SAFETY_HEADERS['Content-Security-Policy'] ?? '').split('; ').map((line) => {
      const [name = '', ...sources] = line.split(' ');
      return [name, sources.join(' ')];
    }),
  );

  test('runs the app’s own scripts and compiled code, and nothing typed into the page', () => {
    expect(Object.fromEntries(policy)).toEqual({
      'default-src': "'none'",
      'script-src': "'self' 'wasm-unsafe-eval'",
      'style-src': "'self'",
      'worker-src': "'self'",
      'connect-src': "'self'",
      'media-src': "'self' blob:",
      'img-src': "'self' data:",
      'font-src': "'self'",
      'manifest-src': "'self'",
      'base-uri': "'none'",
      'form-action': "'none'",
      'frame-ancestors': "'none'",
    });
    for (const sources of policy.values()) {
      expect(sources).not.toMatch(/'unsafe-inline'|'unsafe-eval'|\*|https?:/);
    }
  });
});

describe('an address', () => {
  test.each(['app://bundle/index.html', 'app://bundle', 'app://bundle/?round=1'])(
    '%s is our own',
    (address) => {
      expect(isOwn(address)).toBe(true);
    },
  );

  test.each([
    '',
    'null',
    'about:blank',
    'app://bundle.example/index.html',
    'app://bundle:99/',
    'app://bundle@other.example/',
    'app:bundle',
    'https://bundle/index.html',
    'file:///index.html',
    'javascript:1',
  ])('"%s" is not', (address) => {
    expect(isOwn(address)).toBe(false);
  });
});

describe('permissions (item 5)', () => {
  const OWN = 'app://bundle/index.html';
  const ASKED = [
    'media',
    'geolocation',
    'notifications',
    'midi',
    'fullscreen',
    'usb',
    'hid',
    'serial',
    'unknown',
  ];

  test.each(ASKED)('%s is refused to our own page', (permission) => {
    expect(answers(permission, OWN)).toEqual({ request: false, check: false, device: false });
  });

  test('lasting storage is granted to our own page, and to no other', () => {
    expect(answers('persistent-storage', OWN)).toEqual({ request: true, check: true, device: false });
    expect(answers('persistent-storage', 'https://other.example/')).toEqual({
      request: false,
      check: false,
      device: false,
    });
  });
});

describe('the page stays where it is (items 11 to 14)', () => {
  test.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('%s', (event) => {
    expect(isStopped(event, 'https://other.example/')).toBe(true);
    expect(isStopped(event, 'file:///etc/passwd')).toBe(true);
    expect(isStopped(event, 'app://other/index.html')).toBe(true);
    expect(isStopped(event, 'app://bundle/index.html')).toBe(false);
  });

  test('no page is held inside it, its own neither', () => {
    expect(isStopped('will-attach-webview', 'app://bundle/index.html')).toBe(true);
  });

  test('no window is opened', () => {
    expect(fenced().openWindow()).toEqual({ action: 'deny' });
  });
});

describe('who sent a message (item 17)', () => {
  test('our own page may', () => {
    expect(isFromOwnPage(sentBy('app://bundle/index.html'))).toBe(true);
  });

  test('a page that took its place, a frame in it, and a frame that is gone may not', () => {
    expect(isFromOwnPage(sentBy('https://other.example/'))).toBe(false);
    expect(isFromOwnPage(sentBy('app://bundle/index.html', {}))).toBe(false);
    expect(isFromOwnPage({ senderFrame: null })).toBe(false);
  });
});

/** What a page is told when it asks, and when the engine checks without asking. */
function answers(permission: string, from: string): { request: unknown; check: unknown; device: unknown } {
  const handlers: Record<string, (...args: readonly unknown[]) => unknown> = {};
  const keep =
    (name: string) =>
    (handler: (...args: readonly unknown[]) => unknown): void => {
      handlers[name] = handler;
    };
  const session = {
    setPermissionRequestHandler: keep('request'),
    setPermissionCheckHandler: keep('check'),
    setDevicePermissionHandler: keep('device'),
  };
  guardPermissions(standFor<Session>(session));
  let request: unknown;
  handlers['request']?.({}, permission, (granted: boolean) => (request = granted), { requestingUrl: from });
  return {
    request,
    check: handlers['check']?.({}, permission, from, {}),
    device: handlers['device']?.({ deviceType: permission, origin: from }),
  };
}

function fenced(): { contents: EventEmitter; openWindow: () => WindowOpenHandlerResponse } {
  let openWindow: (() => WindowOpenHandlerResponse) | undefined;
  const contents = Object.assign(new EventEmitter(), {
    setWindowOpenHandler: (handler: () => WindowOpenHandlerResponse) => (openWindow = handler),
  });
  fence(standFor<WebContents>(contents));
  if (!openWindow) throw new Error('Nobody decides about new windows.');
  return { contents, openWindow };
}

function isStopped(event: string, url: string): boolean {
  let stopped = false;
  fenced().contents.emit(event, { url, preventDefault: () => (stopped = true) });
  return stopped;
}

function sentBy(url: string, parent: object | null = null): Pick<IpcMainInvokeEvent, 'senderFrame'> {
  return { senderFrame: standFor<WebFrameMain>({ url, parent }) };
}
