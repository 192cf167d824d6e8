/**
 * Stands in for the `electron` module so that main.ts and preload.ts run against a real Chromium without Electron's
 * program. It records what the shell asks for and carries what the shell answers; every refusal, header and check
 * is the shell's own. What this can't show stands in docs/real-launch.md.
 */
export { app } from './app.ts';
export { MessageChannelMain } from './ports.ts';
export { protocol } from './protocol.ts';
export { utilityProcess } from './utility.ts';
export { BrowserWindow, ipcMain } from './window.ts';

type Permission = (contents: unknown, permission: string, answer: (granted: boolean) => void) => void;

class Session {
  request: Permission | null = null;
  check: (() => boolean) | null = null;
  device: (() => boolean) | null = null;

  setPermissionRequestHandler(handler: Permission): void {
    this.request = handler;
  }

  setPermissionCheckHandler(handler: () => boolean): void {
    this.check = handler;
  }

  setDevicePermissionHandler(handler: () => boolean): void {
    this.device = handler;
  }
}

export const session = { defaultSession: new Session() };

export const opened: string[] = [];
export const shell = {
  openExternal(url: string): Promise<void> {
    opened.push(url);
    return Promise.resolve();
  },
};

export const errorBoxes: string[] = [];
export const dialog = {
  showErrorBox(_title: string, text: string): void {
    errorBoxes.push(text);
  },
};

export const menus: unknown[] = [];
export const Menu = {
  buildFromTemplate: (template: unknown) => template,
  setApplicationMenu: (menu: unknown) => menus.push(menu),
};
