import { join } from 'node:path';

import type { BrowserWindowConstructorOptions } from 'electron';

/**
 * The one window. Every guard is written out, also where it is Electron's default today.
 *
 * @param appFolder the folder of package.json, or the packaged archive
 */
export function windowOptions(appFolder: string): BrowserWindowConstructorOptions {
  return {
    title: 'Loud Gym',
    width: 1280,
    height: 800,
    minWidth: 360,
    minHeight: 600,
    // Nothing white flashes up before the page is drawn.
    show: false,
    backgroundColor: '#101014',
    autoHideMenuBar: true,
    webPreferences: {
      preload: join(appFolder, 'dist/electron/preload.cjs'),
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
      // The clock and the crowd go on while another window is in front.
      backgroundThrottling: false,
    },
  };
}
