import { type ChildProcess, spawn } from 'node:child_process';
import { accessSync, constants, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Programs of the Chromium family as Linux systems name them. */
const LINUX_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
  'vivaldi-stable',
];
const LINUX_FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin', '/var/lib/flatpak/exports/bin'];
const MAC_NAMES = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser', 'Vivaldi'];
const WINDOWS_PATHS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'],
];

interface Place {
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly home: string;
}

const here = (): Place => ({ env: process.env, platform: process.platform, home: homedir() });

/** Where a browser of the Chromium family usually lies, best first. */
export function browserPlaces(place: Place = here()): string[] {
  const { env, platform, home } = place;
  if (platform === 'win32') {
    return [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LOCALAPPDATA']]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => WINDOWS_PATHS.map((path) => join(folder, ...path)));
  }
  if (platform === 'darwin') {
    return ['/Applications', join(home, 'Applications')].flatMap((folder) =>
      MAC_NAMES.map((name) => join(folder, `${name}.app`, 'Contents', 'MacOS', name)),
    );
  }
  const onPath = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder.startsWith('/'));
  const folders = [...new Set([...LINUX_FOLDERS, ...onPath])];
  return LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** The browser named in `variable`, else the first one that is installed; null when there is none. */
export function findBrowser(variable: string, place: Place = here()): string | null {
  const named = place.env[variable];
  if (named !== undefined && named !== '') {
    if (isProgram(named)) return named;
    throw new Error(`${variable} names ${named}, which is not a program on this machine.`);
  }
  return browserPlaces(place).find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** What keeps a browser from being more than a window: no first-run pages, no account, no calls of its own. */
export const QUIET_FLAGS = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Chromium's sandbox refuses to run for root; nobody else gives it up. */
export function sandboxFlags(): string[] {
  return process.getuid?.() === 0 ? ['--no-sandbox'] : [];
}

/**
 * Opens one window without tabs or address bar, with a profile of its own so that nothing is shared with browsing.
 * The address carries the token, and every user of a machine can read a program's arguments: the browser gets it
 * from a page that only this user can read.
 */
export function openWindow(program: string, address: string, folder: string): ChildProcess {
  const page = handoverPage(folder);
  rmSync(page, { force: true });
  writeFileSync(page, `<!doctype html><meta http-equiv="refresh" content="0; url=${address}">`, {
    mode: 0o600,
  });
  return spawn(
    program,
    [
      `--app=${pathToFileURL(page).href}`,
      `--user-data-dir=${join(folder, 'window')}`,
      '--window-size=1440,900',
      ...QUIET_FLAGS,
      ...sandboxFlags(),
    ],
    { stdio: 'ignore' },
  );
}

export function clearHandover(folder: string): void {
  rmSync(handoverPage(folder), { force: true });
}

const handoverPage = (folder: string) => join(folder, 'window.html');
