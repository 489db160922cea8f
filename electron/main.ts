import { join } from 'node:path';

import { app, BrowserWindow, dialog, ipcMain, powerSaveBlocker, protocol, session } from 'electron';

import { HOME, SCHEME } from './address.ts';
import { keepAwakeOnRequest } from './power.ts';
import { APP_SCHEME, serveFile } from './protocol.ts';
import { fence, guardPermissions } from './security.ts';
import { windowOptions } from './window.ts';

// Both must be said before Electron is ready.
protocol.registerSchemesAsPrivileged([APP_SCHEME]);
app.enableSandbox();

// The log of shots has one owner, so there is one instance.
if (app.requestSingleInstanceLock()) {
  app.on('web-contents-created', (_event, contents) => fence(contents));
  app.on('window-all-closed', () => app.quit());
  app.whenReady().then(openWindow).catch(giveUp);
} else {
  app.quit();
}

async function openWindow(): Promise<void> {
  const appFolder = app.getAppPath();
  const page = join(appFolder, 'dist/renderer');
  guardPermissions(session.defaultSession);
  protocol.handle(SCHEME, (request) => serveFile(page, request));

  const window = new BrowserWindow(windowOptions(appFolder));
  keepAwakeOnRequest(ipcMain, powerSaveBlocker, window.webContents);
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  window.once('ready-to-show', () => window.show());
  await window.loadURL(HOME);
}

function giveUp(error: unknown): void {
  const reason = error instanceof Error ? error.message : String(error);
  dialog.showErrorBox('Loud Gym cannot open its window', `Please start it again. Reason: ${reason}`);
  app.exit(1);
}
