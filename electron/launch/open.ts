import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { clearHandover, findBrowser, openWindow, sandboxFlags } from './browser.ts';
import { electronProgram } from './electron-program.ts';
import { dataFolder } from './folder.ts';
import { type RunningService, runningService } from './running.ts';
import { type Serving, serve } from './serve.ts';

const USAGE = `npm start -- [--data FOLDER] [--window electron|browser|address]
  --data    folder of the register (else STUDBOOK_DATA, else the platform's data folder)
  --window  electron, a browser's window, or only the printed address (else the first that works)
  STUDBOOK_BROWSER names the browser's program.`;

const FETCH_LIMIT_MS = 30_000;
/** An Electron that fails sooner than this has not shown a window, for want of a system library for instance. */
const EARLY_END_MS = 10_000;
/** A browser that ends sooner has handed the window to one of its own that was still running. */
const HANDED_OVER_MS = 3000;

const projectFolder = join(import.meta.dirname, '..', '..');
const say = (line: string) => process.stdout.write(`${line}\n`);

interface Choice {
  readonly folder: string;
  readonly window: 'electron' | 'browser' | 'address' | null;
}

function choose(words: string[]): Choice {
  const { values } = parseArgs({
    args: words,
    options: { data: { type: 'string' }, window: { type: 'string' }, help: { type: 'boolean' } },
  });
  if (values.help === true) {
    say(USAGE);
    process.exit(0);
  }
  const { window = null } = values;
  if (window !== null && window !== 'electron' && window !== 'browser' && window !== 'address') {
    throw new Error(`--window ${window}: electron, browser or address is allowed.`);
  }
  return { folder: dataFolder(values.data), window };
}

async function open({ folder, window }: Choice): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  say(`Data folder: ${folder}`);
  const running = await runningService(folder);
  if (running !== null) return openAnother(running, folder, window);

  if (window === null || window === 'electron') {
    const reason = noDisplay() ?? (await runElectron(folder));
    if (reason === null) return;
    if (window === 'electron') throw new Error(`Electron was asked for, but ${reason}.`);
    say(`Electron is not used: ${reason}.`);
  }

  const serving = await serve({ folder, pageFolder: join(projectFolder, 'dist', 'renderer') });
  if (serving.problem?.code === 'register_locked') {
    await serving.close();
    const first = await announcedSoon(folder);
    if (first !== null) return openAnother(first, folder, window);
    throw new Error(`${serving.problem.message}. Close the other window, or name another --data folder.`);
  }
  await showUntilClosed(serving, folder, window);
}

function openAnother(running: RunningService, folder: string, window: Choice['window']): void {
  const address = `${running.origin}/#token=${running.token}`;
  say('Studbook already runs on this data folder; this start opens another window on it.');
  const browser = browserFor(window);
  if ('reason' in browser) say(`Open this address in a browser (${browser.reason}):\n${address}`);
  else openWindow(browser.program, address, folder).unref();
}

/** Another start may have taken the register a moment ago and not yet have announced itself. */
async function announcedSoon(folder: string): Promise<RunningService | null> {
  for (let tries = 0; tries < 20; tries += 1) {
    const running = await runningService(folder);
    if (running !== null) return running;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  return null;
}

/** Null when Electron ran and was closed; else why it could not be used. */
async function runElectron(folder: string): Promise<string | null> {
  const electron = await electronProgram(projectFolder, FETCH_LIMIT_MS);
  if ('reason' in electron) return electron.reason;
  say('Opening an Electron window.');
  noticeSandbox();
  const start = performance.now();
  const child = spawn(electron.program, [...sandboxFlags(), projectFolder, '--data', folder], {
    stdio: 'inherit',
  });
  forwardSignals((signal) => child.kill(signal));
  const [code, signal] = await ended(child);
  if (code === 0 || signal !== null || performance.now() - start > EARLY_END_MS) return null;
  return `its program ended at once with ${code}`;
}

async function showUntilClosed(serving: Serving, folder: string, window: Choice['window']): Promise<void> {
  const browser = browserFor(window);
  let closeWindow = () => {};
  const stop = async () => {
    closeWindow();
    clearHandover(folder);
    await serving.close();
  };
  forwardSignals(() => {
    stop().then(() => process.exit(0), fail);
  });

  if ('reason' in browser) {
    say(`Open this address in a browser (${browser.reason}). Ctrl+C ends Studbook.\n${serving.address}`);
    return;
  }
  say(`Opening a window of ${browser.program}. Closing it ends Studbook.`);
  noticeSandbox();
  const start = performance.now();
  const child = openWindow(browser.program, serving.address, folder);
  closeWindow = () => child.kill();
  const [code] = await ended(child);
  if (performance.now() - start > HANDED_OVER_MS) return stop();
  const reason = code === 0 ? 'the browser handed the window over' : `the browser ended at once with ${code}`;
  say(`Studbook goes on (${reason}). Ctrl+C ends it.\n${serving.address}`);
}

function browserFor(window: Choice['window']): { program: string } | { reason: string } {
  if (window === 'address') return { reason: 'only the address was asked for' };
  const display = noDisplay();
  if (display !== null) return { reason: display };
  const program = findBrowser('STUDBOOK_BROWSER');
  return program === null ? { reason: 'no browser of the Chromium family was found' } : { program };
}

function noDisplay(): string | null {
  if (process.platform !== 'linux') return null;
  return process.env['DISPLAY'] || process.env['WAYLAND_DISPLAY'] ? null : 'this session has no display';
}

function noticeSandbox(): void {
  if (sandboxFlags().length > 0) {
    say('Started as root: the window runs with --no-sandbox. Start as an ordinary user to keep the sandbox.');
  }
}

function forwardSignals(listener: (signal: NodeJS.Signals) => void): void {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => listener(signal));
}

function ended(child: ReturnType<typeof spawn>): Promise<[number | null, NodeJS.Signals | null]> {
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', (code, signal) => resolve([code, signal]));
  });
}

function fail(error: unknown): void {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}

try {
  await open(choose(process.argv.slice(2)));
} catch (error) {
  fail(error);
}
