import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { browserPlaces, findBrowser } from './browser.ts';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'studbook-browser-'));
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the browser', () => {
  it('is the one the variable names, or an error that names it', () => {
    const program = join(folder, 'mine');
    const place = { env: { STUDBOOK_BROWSER: program }, platform: 'linux', home: folder } as const;
    expect(() => findBrowser('STUDBOOK_BROWSER', place)).toThrow(
      `STUDBOOK_BROWSER names ${program}, which is not`,
    );
    writeFileSync(program, '');
    expect(() => findBrowser('STUDBOOK_BROWSER', place)).toThrow('not a program');
    chmodSync(program, 0o755);
    expect(findBrowser('STUDBOOK_BROWSER', place)).toBe(program);
  });

  it('is found on the path too, and is null where there is none', () => {
    const windows = { platform: 'win32', home: folder, env: { LOCALAPPDATA: folder } } as const;
    expect(findBrowser('STUDBOOK_BROWSER', windows)).toBeNull();
    const onPath = { platform: 'linux', home: folder, env: { PATH: `${folder}:relative` } } as const;
    expect(browserPlaces(onPath)).toContain(join(folder, 'chromium'));
    expect(browserPlaces(onPath).filter((path) => !path.startsWith('/'))).toEqual([]);
  });

  it('is looked for where each system keeps programs', () => {
    const places = (platform: NodeJS.Platform, env: NodeJS.ProcessEnv) =>
      browserPlaces({ platform, env, home: '/people/anna' });
    expect(places('linux', {})).toContain('/usr/bin/chromium');
    expect(places('darwin', {})).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
    expect(places('win32', { ProgramFiles: '/Programs' })).toContain(
      join('/Programs', 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
    );
  });
});
