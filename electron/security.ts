import type { IpcMainInvokeEvent, Session, WebContents } from 'electron';

import { isOwn } from './address.ts';

/**
 * What a page of ours may be granted; all else (camera, microphone, Bluetooth, place, notices ...) is refused unasked.
 * `persistent-storage` keeps the engine from clearing the log of shots when the disk fills up.
 */
const GRANTED: ReadonlySet<string> = new Set(['persistent-storage']);

/** Electron grants what nobody decides: so decide everything. */
export function guardPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, { requestingUrl }) => {
    answer(GRANTED.has(permission) && isOwn(requestingUrl));
  });
  session.setPermissionCheckHandler(
    (_contents, permission, origin) => GRANTED.has(permission) && isOwn(origin),
  );
  session.setDevicePermissionHandler(() => false);
}

/** Keeps a page where it is: it goes nowhere else, opens no window and holds no other page. */
export function fence(contents: WebContents): void {
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

function stay(event: { readonly url: string; preventDefault(): void }): void {
  if (!isOwn(event.url)) event.preventDefault();
}

/** Whether a message comes from the app's own page itself, and not from a frame in it or from a page that took its place. */
export function isFromOwnPage({ senderFrame }: Pick<IpcMainInvokeEvent, 'senderFrame'>): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOwn(senderFrame.url);
}
