import type { IpcMain, IpcMainInvokeEvent, PowerSaveBlocker, WebContents } from 'electron';

import type { KeepAwakeChannel } from './bridge.ts';
import { isFromOwnPage } from './security.ts';

const CHANNEL: KeepAwakeChannel = 'loud-gym:keep-awake';

/** Keeps the display awake while the page says that a round is on, and no longer than the page lives. */
export function keepAwakeOnRequest(ipc: IpcMain, blocker: PowerSaveBlocker, contents: WebContents): void {
  let held: number | null = null;
  const hold = (): void => {
    held ??= blocker.start('prevent-display-sleep');
  };
  const release = (): void => {
    if (held !== null) blocker.stop(held);
    held = null;
  };

  ipc.handle(CHANNEL, (event: IpcMainInvokeEvent, on: unknown) => {
    if (!isFromOwnPage(event)) throw new Error('The display is kept awake for the app’s own page alone.');
    if (typeof on !== 'boolean') throw new TypeError('Say true or false: whether a round is on.');
    if (on) hold();
    else release();
  });
  // A page that is loaded anew, or that broke, can no longer say that its round is over.
  contents.on('did-start-navigation', ({ isMainFrame, isSameDocument }) => {
    if (isMainFrame && !isSameDocument) release();
  });
  contents.on('render-process-gone', release);
  contents.once('destroyed', release);
}
