import { contextBridge, ipcRenderer } from 'electron';

import type { KeepAwakeChannel, ShellBridge } from './bridge.ts';

const CHANNEL: KeepAwakeChannel = 'loud-gym:keep-awake';

const bridge: ShellBridge = {
  keepAwake: async (on) => {
    await ipcRenderer.invoke(CHANNEL, on);
  },
  platform: process.platform,
};

// Two plain things cross over; neither ipcRenderer nor its events do.
contextBridge.exposeInMainWorld('loudGymShell', bridge);
