import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { takeLock } from '../../electron/service/register/lock.ts';
import { ensureBuilt } from '../build.ts';

const open = join(import.meta.dirname, '..', '..', 'dist', 'electron', 'open.js');

let folder: string;
const started: ChildProcess[] = [];

beforeAll(ensureBuilt);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'studbook-launch-'));
});

afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

interface Start {
  readonly child: ChildProcess;
  output(): string;
  readonly ended: Promise<number | null>;
}

function start(words: readonly string[], env: NodeJS.ProcessEnv = {}): Start {
  const child = spawn(process.execPath, [open, ...words], {
    env: { ...process.env, STUDBOOK_DATA: '', STUDBOOK_BROWSER: '', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  started.push(child);
  let text = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (part: string) => {
      text += part;
    });
  }
  return { child, output: () => text, ended: new Promise((resolve) => child.on('close', resolve)) };
}

const addressIn = (text: string) => /http:\/\/127\.0\.0\.1:\d+\/#token=\S+/.exec(text)?.[0];

async function startServing(): Promise<Start & { address: string }> {
  const first = start(['--data', folder, '--window', 'address']);
  const address = await vi.waitFor(
    () => addressIn(first.output()) ?? Promise.reject(new Error(first.output())),
    {
      timeout: 20_000,
    },
  );
  return { ...first, address };
}

/** A browser of the Chromium family, as far as the launcher sees it: writes down its arguments and stays. */
function pretendBrowser(seconds: number): { program: string; words(): string } {
  const program = join(folder, 'browser');
  const record = join(folder, 'browser-words');
  writeFileSync(program, `#!/bin/sh\necho "$@" > '${record}'\nexec sleep ${seconds}\n`);
  chmodSync(program, 0o755);
  return { program, words: () => readFileSync(record, 'utf8') };
}

describe('a start that shows the address', () => {
  it('serves until it is told to end, then leaves nothing behind that says it runs', async () => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      const { child, ended, address } = await startServing();
      expect((await fetch(address)).status).toBe(200);
      expect(() => takeLock(folder)).toThrow(/Another running Studbook/);
      child.kill(signal);
      expect(await ended).toBe(0);
      takeLock(folder).release();
      expect(existsSync(join(folder, 'service.json'))).toBe(false);
      await expect(fetch(address)).rejects.toThrow();
    }
  });

  it('keeps the token to the one user', async () => {
    const { address } = await startServing();
    const file = join(folder, 'service.json');
    expect(readFileSync(file, 'utf8')).toContain(address.split('=')[1]);
    if (process.platform !== 'win32') expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  it('is joined by a second start on the same folder, and not by one on another', async () => {
    const first = await startServing();
    const second = start(['--data', folder, '--window', 'address']);
    expect(await second.ended).toBe(0);
    expect(second.output()).toContain('already runs on this data folder');
    expect(addressIn(second.output())).toBe(first.address);

    const elsewhere = start(['--data', join(folder, 'other'), '--window', 'address']);
    await vi.waitFor(() => expect(addressIn(elsewhere.output())).toBeDefined(), { timeout: 20_000 });
    expect(addressIn(elsewhere.output())).not.toBe(first.address);
  });

  it('takes the place of one that was killed and could not clear up', async () => {
    const first = await startServing();
    first.child.kill('SIGKILL');
    await first.ended;
    expect(existsSync(join(folder, 'service.json'))).toBe(true);
    const second = await startServing();
    expect(second.address).not.toBe(first.address);
    expect((await fetch(second.address)).status).toBe(200);
  });

  it('takes two starts at the same moment to one service', async () => {
    const pair = [0, 1].map(() => start(['--data', folder, '--window', 'address']));
    await vi.waitFor(
      () => {
        for (const { output } of pair) expect(addressIn(output())).toBeDefined();
      },
      { timeout: 20_000 },
    );
    const addresses = pair.map(({ output }) => addressIn(output()));
    expect(addresses[0]).toBe(addresses[1]);
  });

  it('takes the folder from STUDBOOK_DATA when no flag names one', async () => {
    const { output } = start(['--window', 'address'], { STUDBOOK_DATA: folder });
    await vi.waitFor(() => expect(addressIn(output())).toBeDefined(), { timeout: 20_000 });
    expect(output()).toContain(`Data folder: ${folder}`);
  });
});

describe('a start that opens a browser’s window', () => {
  it('ends with the window, says what it opened, and keeps the address out of the program’s arguments', async () => {
    const { program, words } = pretendBrowser(4);
    const { ended, output } = start(['--data', folder, '--window', 'browser'], {
      STUDBOOK_BROWSER: program,
      DISPLAY: ':99',
    });
    await vi.waitFor(() => expect(existsSync(join(folder, 'browser-words'))).toBe(true), { timeout: 20_000 });
    const page = readFileSync(join(folder, 'window.html'), 'utf8');
    expect(addressIn(page.replace('">', ' '))).toBeDefined();
    if (process.platform !== 'win32') expect(statSync(join(folder, 'window.html')).mode & 0o777).toBe(0o600);
    expect(words()).toContain('--app=file:');
    expect(words()).not.toContain('token');
    expect(words().includes('--no-sandbox')).toBe(process.getuid?.() === 0);
    expect(output().includes('--no-sandbox')).toBe(process.getuid?.() === 0);
    expect(output()).toContain(program);
    expect(await ended).toBe(0);
    expect(existsSync(join(folder, 'window.html'))).toBe(false);
    takeLock(folder).release();
  });

  it('closes the window when it is told to end', async () => {
    const { program } = pretendBrowser(600);
    const { child, ended } = start(['--data', folder, '--window', 'browser'], {
      STUDBOOK_BROWSER: program,
      DISPLAY: ':99',
    });
    await vi.waitFor(() => expect(existsSync(join(folder, 'browser-words'))).toBe(true), { timeout: 20_000 });
    child.kill('SIGTERM');
    expect(await ended).toBe(0);
    takeLock(folder).release();
  });

  it('goes on serving when the browser ends at once', async () => {
    const { program } = pretendBrowser(0);
    const { output } = start(['--data', folder, '--window', 'browser'], {
      STUDBOOK_BROWSER: program,
      DISPLAY: ':99',
    });
    await vi.waitFor(() => expect(output()).toContain('Studbook goes on'), { timeout: 20_000 });
    const address = addressIn(output());
    expect((await fetch(address ?? '')).status).toBe(200);
  });
});

describe('a start that can’t', () => {
  it.each([
    [['--window', 'tab'], '--window tab: electron, browser or address is allowed.'],
    [['--colour', 'blue'], "Unknown option '--colour'"],
  ])('says what is allowed for %j', async (words, message) => {
    const { ended, output } = start(['--data', folder, ...words]);
    expect(await ended).toBe(1);
    expect(output()).toContain(message);
    expect(existsSync(join(folder, 'register.lock'))).toBe(false);
  });

  it('names a browser that is not there', async () => {
    const { ended, output } = start(['--data', folder, '--window', 'browser'], {
      STUDBOOK_BROWSER: join(folder, 'nothing'),
      DISPLAY: ':99',
    });
    expect(await ended).toBe(1);
    expect(output()).toContain(`STUDBOOK_BROWSER names ${join(folder, 'nothing')}, which is not a program`);
    takeLock(folder).release();
  });
});
