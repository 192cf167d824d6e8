import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { findBrowser, QUIET_FLAGS, sandboxFlags } from '../electron/launch/browser.ts';

const VARIABLE = 'STUDBOOK_CHROMIUM';

/** How every test starts Chromium. */
export const CHROMIUM_FLAGS = [...QUIET_FLAGS, '--disable-gpu', '--disable-quic', ...sandboxFlags()];

/** The installed Chromium the tests use, or null: the one the variable names, a system browser, Playwright's own. */
export function installedChromium(): string | null {
  const found = findBrowser(VARIABLE);
  if (found !== null) return found;
  const own = chromium.executablePath();
  return existsSync(own) ? own : null;
}

/** Finds a Chromium or installs one where that is allowed; says what to install where it is not. */
export function ensureChromium(say: (line: string) => void): string {
  const there = installedChromium();
  if (there !== null) return there;
  if (process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    say('No Chromium found; installing the package "chromium" with apt-get.');
    run('apt-get', ['update']);
    run('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium']);
    const installed = installedChromium();
    if (installed !== null) return installed;
  }
  say("No Chromium found; trying Playwright's own download.");
  run(process.execPath, [
    join(import.meta.dirname, '..', 'node_modules', '@playwright', 'test', 'cli.js'),
    'install',
    'chromium',
  ]);
  const fetched = installedChromium();
  if (fetched !== null) return fetched;
  throw new Error(
    'The window is tested in a real Chromium and none could be found or installed. Install Chromium, Chrome or Edge ' +
      `(on Debian: apt-get install chromium), or set ${VARIABLE} to the program's path, and start again.`,
  );
}

// Whether it worked shows in whether a Chromium is there afterwards.
function run(program: string, words: string[]): void {
  spawnSync(program, words, {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    timeout: 240_000,
  });
}
