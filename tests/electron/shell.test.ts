import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { REQUEST_NAMES } from '../../core/contract/names.ts';
import { takeLock } from '../../electron/service/register/lock.ts';
import { ensureBuilt } from '../build.ts';
import { CHROMIUM_FLAGS, ensureChromium } from '../chromium.ts';
import { app } from './standin/app.ts';
import { errorBoxes, menus, opened, session } from './standin/electron.ts';
import { handlers, privileged } from './standin/protocol.ts';
import { forked } from './standin/utility.ts';
import { BrowserWindow, foreignRequests, ipcMain, useContext } from './standin/window.ts';

vi.mock('electron', () => import('./standin/electron.ts'));

let browser: Browser;
let folder: string;
let starts = 0;
const words = process.argv;

beforeAll(async () => {
  ensureBuilt();
  const program = ensureChromium((line) => process.stdout.write(`${line}\n`));
  browser = await chromium.launch({ executablePath: program, args: CHROMIUM_FLAGS });
});

afterAll(() => browser.close());

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'studbook-shell-'));
  app.reset();
  ipcMain.removeAllListeners();
  handlers.clear();
  for (const list of [privileged, forked, opened, errorBoxes, menus, foreignRequests]) list.length = 0;
  BrowserWindow.all = [];
  await useContext(await browser.newContext());
});

afterEach(async () => {
  process.argv = words;
  app.removeAllListeners();
  for (const window of BrowserWindow.all) await window.webContents.page?.context().close();
  for (const { worker } of forked) await worker.terminate();
  rmSync(folder, { recursive: true, force: true });
});

/** Ends what hangs; what is waited for comes within a second on a quiet machine. */
const PATIENT = { timeout: 15_000 };

/** Runs main.ts as Electron would, on a data folder of its own. */
async function startShell(): Promise<void> {
  process.argv = ['electron', '.', '--data', folder];
  starts += 1;
  // A new address makes it run anew, as a new process would.
  const program = join(import.meta.dirname, '..', '..', 'electron', 'main.ts');
  await import(/* @vite-ignore */ `${program}?start=${starts}`);
}

async function startedWindow(): Promise<{ window: BrowserWindow; page: Page }> {
  await startShell();
  await vi.waitFor(() => expect(BrowserWindow.all).toHaveLength(1), PATIENT);
  const [window] = BrowserWindow.all;
  if (window === undefined) throw new Error('no window');
  const page = await window.webContents.ready;
  await page.waitForFunction(() => document.readyState === 'complete' && location.protocol === 'https:');
  return { window, page };
}

type Bridge = Record<string, (input: unknown) => Promise<unknown>>;

function ask(page: Page, name: string, input: unknown): Promise<unknown> {
  return page.evaluate(
    ([asked, given]) => (window as unknown as { studbook: Bridge }).studbook[asked]?.(given),
    [name, input] as const,
  );
}

const opening = { state: 'none' };
const newSite = (key: string) => ({
  key,
  data: { content: 'empty', siteName: 'Test site', timeZone: 'Europe/Berlin' },
});

describe('the window', () => {
  it('is asked for with every protection on', async () => {
    const { window } = await startedWindow();
    const { preload, ...preferences } = window.options.webPreferences ?? {};
    expect(preferences).toEqual({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    });
    expect(preload).toMatch(/dist[\\/]electron[\\/]preload\.cjs$/);
    expect(app.sandboxEnabled).toBe(true);
    expect(window.loaded).toEqual(['app://studbook/']);
    expect(privileged).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
    expect(menus).toHaveLength(1);
  });

  it('shows the built application, which reaches the register', async () => {
    const { page } = await startedWindow();
    await page.getByRole('button', { name: /register/i }).waitFor();
    expect(await page.title()).toBe('Studbook');
    expect(foreignRequests).toEqual([]);
  });

  it('gets one function per request and nothing else', async () => {
    const { page } = await startedWindow();
    const bridge = await page.evaluate(() => {
      const host = window as unknown as { studbook: Bridge; electronHost: { exposed: string[] } };
      return {
        exposed: host.electronHost.exposed,
        names: Object.keys(host.studbook),
        kinds: [...new Set(Object.values(host.studbook).map((value) => typeof value))],
        node: ['require', 'process', 'module', 'Buffer'].filter((name) => name in window),
      };
    });
    expect(bridge).toEqual({
      exposed: ['studbook'],
      names: [...REQUEST_NAMES],
      kinds: ['function'],
      node: [],
    });
  });

  it('has every permission refused', async () => {
    await startedWindow();
    const answers: boolean[] = [];
    const { request, check, device } = session.defaultSession;
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'serial',
      'clipboard-read',
      'openExternal',
    ]) {
      request?.(null, permission, (granted) => answers.push(granted));
    }
    expect(answers).toEqual([false, false, false, false, false, false]);
    expect([check?.(), device?.()]).toEqual([false, false]);
  });
});

describe('the page', () => {
  it('comes with the strict policy, and nothing outside the built folder comes at all', async () => {
    await startedWindow();
    const handler = handlers.get('app');
    if (handler === undefined) throw new Error('no handler');
    const page = await handler(new Request('app://studbook/'));
    expect(page.status).toBe(200);
    expect(page.headers.get('content-security-policy')).toMatch(/^default-src 'none'; script-src 'self';/);
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
    for (const address of [
      'app://studbook/../package.json',
      'app://studbook/%2e%2e/%2e%2e/package.json',
      'app://studbook/..%2f..%2fpackage.json',
      'app://studbook/..%5c..%5cpackage.json',
      'app://studbook/assets/../../electron/main.js',
      'app://other/index.html',
      'app://studbook/nothing.js',
    ]) {
      const response = await handler(new Request(address));
      expect([address, response.status]).toEqual([address, 404]);
      expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
    }
    expect((await handler(new Request('app://studbook/', { method: 'POST' }))).status).toBe(404);
  });

  it('runs no script and loads nothing that is not a file of its own, in a real Chromium', async () => {
    const { page } = await startedWindow();
    const blocked = await page.evaluate(async () => {
      const directives: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => {
        directives.push(event.effectiveDirective);
      });
      const add = (tag: string, set: (element: Record<string, string>) => void) => {
        const element = document.createElement(tag);
        set(element as unknown as Record<string, string>);
        document.body.append(element);
      };
      add('script', (element) => {
        element['textContent'] = 'window.planted = 1';
      });
      add('script', (element) => {
        element['src'] = 'https://evil.example/a.js';
      });
      add('style', (element) => {
        element['textContent'] = 'body { color: red }';
      });
      add('img', (element) => {
        element['src'] = 'https://evil.example/a.png';
      });
      add('iframe', (element) => {
        element['src'] = 'https://evil.example/';
      });
      add('object', (element) => {
        element['data'] = 'https://evil.example/a';
      });
      await fetch('https://evil.example/').catch(() => {});
      await new Promise((resolve) => setTimeout(resolve, 300));
      return { directives: [...new Set(directives)].sort(), planted: 'planted' in window };
    });
    expect(blocked).toEqual({
      directives: ['connect-src', 'frame-src', 'img-src', 'object-src', 'script-src-elem', 'style-src-elem'],
      planted: false,
    });
    expect(foreignRequests).toEqual([]);
  });

  it.each(['https://evil.example/', 'file:///etc/passwd', 'app://other/'])(
    'does not go to %s',
    async (address) => {
      const { window } = await startedWindow();
      const refused = vi.fn();
      window.webContents.emit('will-navigate', { url: address, preventDefault: refused });
      window.webContents.emit('will-redirect', { url: address, preventDefault: refused });
      expect(refused).toHaveBeenCalledTimes(2);
    },
  );

  it('stays where it is when a script sends it elsewhere, and may move within itself', async () => {
    const { window, page } = await startedWindow();
    const seen: string[] = [];
    window.webContents.on('will-navigate', ({ url }: { url: string }) => seen.push(url));
    await page.evaluate(() => {
      location.href = 'https://evil.example/';
    });
    await vi.waitFor(() => expect(seen).toEqual(['https://evil.example/']), PATIENT);
    expect(window.webContents.mainFrame.url).toMatch(/^app:\/\/studbook\//);
    expect(foreignRequests).toEqual([]);
    // The refused navigation may still be winding down, and takes the first reload with it.
    await vi.waitFor(() => page.reload(), PATIENT);
    expect(seen.at(-1)).toMatch(/^app:\/\/studbook\//);
    expect(await ask(page, 'register.state', {})).toMatchObject({ ok: true, value: opening });
  });

  it('opens no window, and hands only listed https hosts to the system', async () => {
    const { window, page } = await startedWindow();
    const ask = window.webContents.openHandler;
    if (ask === null) throw new Error('no handler');
    const asked: string[] = [];
    window.webContents.openHandler = (details) => {
      asked.push(details.url);
      return ask(details);
    };
    await page.evaluate(() => {
      open('https://evil.example/');
    });
    await vi.waitFor(() => expect(asked).toEqual(['https://evil.example/']), PATIENT);
    await vi.waitFor(() => expect(page.context().pages()).toEqual([page]), PATIENT);
    const addresses = [
      'https://www.nist.gov/pml',
      'http://www.nist.gov/pml',
      'https://nist.gov.evil.example/',
      'https://user@www.nist.gov/',
      'https://www.nist.gov:8443/',
      'file:///etc/passwd',
      'javascript:alert(1)',
      'app://studbook/',
      'no address',
    ];
    expect(addresses.map((url) => ask({ url }).action)).toEqual(addresses.map(() => 'deny'));
    expect(opened).toEqual(['https://www.nist.gov/pml']);
    expect(foreignRequests).toEqual([]);
  });

  it('can hold no webview', async () => {
    const { window } = await startedWindow();
    const refused = vi.fn();
    window.webContents.emit('will-attach-webview', { preventDefault: refused });
    expect(refused).toHaveBeenCalledOnce();
  });
});

describe('the line to the register', () => {
  it('carries a request to the service and its answer back', async () => {
    const { page } = await startedWindow();
    expect(await ask(page, 'register.state', {})).toMatchObject({ ok: true, value: { ...opening, folder } });
    expect(await ask(page, 'joint.list', { nonsense: 1 })).toMatchObject({ ok: false });
    const answers = await Promise.all([1, 2, 3].map(() => ask(page, 'register.state', {})));
    expect(answers).toHaveLength(3);
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
  });

  it('goes to the main frame at the exact origin and to nobody else', async () => {
    const { window } = await startedWindow();
    const { webContents } = window;
    const sent = vi.spyOn(forked[0] ?? {}, 'postMessage' as never);
    const frame = webContents.mainFrame;
    const at = (url: string) => ({ url });
    for (const senderFrame of [null, at('app://studbook/'), at('https://evil.example/')]) {
      ipcMain.emit('studbook:port', { sender: webContents, senderFrame });
    }
    for (const url of [
      'https://evil.example/',
      'app://other/',
      'app://studbook.evil/',
      'about:blank',
      'data:text/html,',
    ]) {
      const foreign = { mainFrame: at(url) };
      ipcMain.emit('studbook:port', { sender: foreign, senderFrame: foreign.mainFrame });
    }
    expect(sent).not.toHaveBeenCalled();
    ipcMain.emit('studbook:port', { sender: webContents, senderFrame: frame });
    expect(sent).toHaveBeenCalledOnce();
  });

  it('is not given to a frame inside the page, in a real Chromium', async () => {
    const { page } = await startedWindow();
    const sent = vi.spyOn(forked[0] ?? {}, 'postMessage' as never);
    await page.evaluate(() => {
      document.body.append(document.createElement('iframe'));
    });
    const inner = page.frames().find((frame) => frame !== page.mainFrame());
    await inner?.evaluate(() =>
      (window as unknown as { electronSend(channel: string): void }).electronSend('studbook:port'),
    );
    expect(inner).toBeDefined();
    expect(sent).not.toHaveBeenCalled();
  });

  it('is laid anew when the register’s process dies, and nothing recorded is lost', async () => {
    const { page } = await startedWindow();
    const key = '0190a000-0000-7000-8000-000000000001';
    expect(await ask(page, 'register.create', newSite(key))).toMatchObject({ ok: true });
    await forked[0]?.worker.terminate();
    await vi.waitFor(() => expect(forked).toHaveLength(2), PATIENT);
    await vi.waitFor(async () => {
      expect(await ask(page, 'register.state', {})).toMatchObject({
        ok: true,
        value: { state: 'open', siteName: 'Test site' },
      });
    }, PATIENT);
  });

  it('answers what was under way when the process died', async () => {
    const { page } = await startedWindow();
    const worker = forked[0]?.worker;
    // The service is busy making a register while its process is ended under it.
    const answer = ask(page, 'register.create', newSite('0190a000-0000-7000-8000-000000000002'));
    await worker?.terminate();
    const got = (await answer) as { ok: boolean; error?: { code: string } };
    expect(got.ok || got.error?.code === 'busy').toBe(true);
  });

  it('gives up with a message when the process dies again and again', async () => {
    await startedWindow();
    for (let times = 1; times <= 4; times += 1) {
      await forked.at(-1)?.worker.terminate();
      if (times < 4) await vi.waitFor(() => expect(forked).toHaveLength(times + 1), PATIENT);
    }
    await vi.waitFor(() => expect(errorBoxes).toHaveLength(1), PATIENT);
    expect(errorBoxes[0]).toContain(folder);
    expect(app.gone).toBe(true);
  });
});

describe('starting and ending', () => {
  it('keeps one program per data folder: a second start opens a window in the first', async () => {
    await startedWindow();
    expect(app.paths.get('userData')).toBe(join(folder, 'window'));
    app.emit('second-instance', {}, [], '');
    expect(BrowserWindow.all).toHaveLength(2);
    const page = await BrowserWindow.all[1]?.webContents.ready;
    await page?.waitForFunction(() => 'studbook' in window);
    expect(forked).toHaveLength(1);
  });

  it('is gone at once where another has the lock', async () => {
    app.lockIsFree = false;
    await startShell();
    expect(app.gone).toBe(true);
    expect([BrowserWindow.all.length, forked.length]).toEqual([0, 0]);
  });

  it('closes the register before it goes when the last window is closed', async () => {
    const { window, page } = await startedWindow();
    expect(await ask(page, 'register.create', newSite('0190a000-0000-7000-8000-000000000003'))).toMatchObject(
      {
        ok: true,
      },
    );
    expect(() => takeLock(folder)).toThrow(/Another running Studbook/);
    await window.close();
    await vi.waitFor(() => expect(app.gone).toBe(true), PATIENT);
    takeLock(folder).release();
    expect(errorBoxes).toEqual([]);
    expect(readFileSync(join(folder, 'register.sqlite')).subarray(0, 15).toString()).toBe('SQLite format 3');
  });
});
