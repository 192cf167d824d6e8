import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import type { BrowserContext, Frame, Page, Request as PageRequest, Route } from '@playwright/test';
import { app } from './app.ts';
import { preloadHost } from './page-host.ts';
import type { MessagePortMain } from './ports.ts';
import { handlers } from './protocol.ts';

/** Chromium can't be taught a scheme from outside, so app://name/ travels as https://name.app.test/ and back. */
const asWeb = (url: string) => url.replace(/^app:\/\/([^/]+)/, 'https://$1.app.test');
const asApp = (url: string) => url.replace(/^https:\/\/([^/]+)\.app\.test/, 'app://$1');

export const ipcMain = new EventEmitter();

/** Requests that left the application's own scheme. */
export const foreignRequests: string[] = [];

let context: BrowserContext | null = null;
let lastPort = 0;

export async function useContext(given: BrowserContext): Promise<void> {
  context = given;
  await given.route('**/*', carry);
  given.on('page', () => closeDenied(given));
}

/** Popups exist in Chromium before anybody can be asked about what they load. */
const denied = new WeakSet<BrowserContext>();

function closeDenied(of: BrowserContext): void {
  if (!denied.has(of)) return;
  for (const page of of.pages()) {
    if (!BrowserWindow.all.some(({ webContents }) => webContents.page === page)) void page.close();
  }
}

/** Asks the shell what becomes of a request, as Electron asks it, and carries the protocol handler's own answer. */
async function carry(route: Route): Promise<void> {
  const request = route.request();
  const url = asApp(request.url());
  const own = ownerOf(request);
  if (own === null) {
    const opener = BrowserWindow.all.at(-1)?.webContents;
    if (opener?.openHandler?.({ url }).action === 'deny' && context !== null) {
      denied.add(context);
      await route.abort('aborted');
      return closeDenied(context);
    }
  } else if (
    request.isNavigationRequest() &&
    request.frame() === own.page?.mainFrame() &&
    url !== own.loading
  ) {
    let prevented = false;
    own.emit('will-navigate', {
      url,
      preventDefault: () => {
        prevented = true;
      },
    });
    if (prevented) return route.abort('aborted');
  }
  if (own !== null) own.loading = null;
  const handler = handlers.get(new URL(url).protocol.slice(0, -1));
  if (handler === undefined) {
    foreignRequests.push(url);
    return route.abort();
  }
  const response = await handler(new Request(url, { method: request.method() }));
  await route.fulfill({
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: Buffer.from(await response.arrayBuffer()),
  });
}

/** Whose page sent the request; null for a page the shell did not make. */
function ownerOf(request: PageRequest): WebContents | null {
  for (const { webContents } of BrowserWindow.all) {
    if (webContents.page?.frames().includes(frameOf(request) as Frame)) return webContents;
  }
  return null;
}

function frameOf(request: PageRequest): Frame | null {
  try {
    return request.frame();
  } catch {
    // A popup's first request comes before its page is announced.
    return null;
  }
}

type OpenHandler = (details: { url: string }) => { action: 'allow' | 'deny' };

class WebFrameMain {
  readonly frame: Frame;

  constructor(frame: Frame) {
    this.frame = frame;
  }

  get url(): string {
    return asApp(this.frame.url());
  }

  postMessage(channel: string, message: unknown, ports: readonly MessagePortMain[] = []): void {
    const carried = ports.map((main) => {
      lastPort += 1;
      const id = lastPort;
      pagePorts.set(id, main);
      main.on('message', ({ data }: { data: unknown }) => {
        this.run('fromPort', id, data);
      });
      main.start();
      return id;
    });
    this.run('fromMain', channel, message, carried);
  }

  private run(name: string, ...words: unknown[]): void {
    this.frame
      .evaluate(
        ([called, given]) => {
          const host = (window as unknown as { electronHost: Record<string, (...all: unknown[]) => void> })
            .electronHost;
          host[called]?.(...given);
        },
        [name, words] as const,
      )
      .catch((error: unknown) => {
        // What is posted to a page that is just being left arrives nowhere, as in Electron.
        const left = error instanceof Error && LEFT_PAGE.test(error.message);
        if (!left && !this.frame.page().isClosed()) throw error;
      });
  }
}

const LEFT_PAGE = /Execution context was destroyed|frame was detached/i;
const pagePorts = new Map<number, MessagePortMain>();

export class WebContents extends EventEmitter {
  readonly ready: Promise<Page>;
  page: Page | null = null;
  openHandler: OpenHandler | null = null;
  private readonly frames = new WeakMap<Frame, WebFrameMain>();

  constructor(preload: string) {
    super();
    this.ready = this.create(preload);
  }

  get mainFrame(): WebFrameMain {
    if (this.page === null) throw new Error('The page is not there yet.');
    return this.frameOf(this.page.mainFrame());
  }

  setWindowOpenHandler(handler: OpenHandler): void {
    this.openHandler = handler;
  }

  private frameOf(frame: Frame): WebFrameMain {
    const known = this.frames.get(frame) ?? new WebFrameMain(frame);
    this.frames.set(frame, known);
    return known;
  }

  private async create(preload: string): Promise<Page> {
    if (context === null) throw new Error('No Chromium was given.');
    const page = await context.newPage();
    this.page = page;
    await page.exposeBinding('electronSend', ({ frame }, channel: string) => {
      ipcMain.emit(channel, { sender: this, senderFrame: this.frameOf(frame) });
    });
    await page.exposeBinding('electronPortSend', (_source, id: number, data: unknown) => {
      pagePorts.get(id)?.postMessage(data);
    });
    await page.addInitScript({ content: preloadHost(readFileSync(preload, 'utf8')) });
    return page;
  }

  /** The address the shell itself is loading: that is no navigation of the page's own. */
  loading: string | null = null;
}

export class BrowserWindow extends EventEmitter {
  static all: BrowserWindow[] = [];
  readonly options: Electron.BrowserWindowConstructorOptions;
  readonly webContents: WebContents;
  readonly loaded: string[] = [];

  static getAllWindows(): BrowserWindow[] {
    return BrowserWindow.all;
  }

  constructor(options: Electron.BrowserWindowConstructorOptions) {
    super();
    this.options = options;
    this.webContents = new WebContents(options.webPreferences?.preload ?? '');
    BrowserWindow.all.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }

  async loadURL(url: string): Promise<void> {
    this.loaded.push(url);
    const page = await this.webContents.ready;
    this.webContents.loading = url;
    await page.goto(asWeb(url));
    this.emit('ready-to-show');
  }

  isDestroyed(): boolean {
    return this.webContents.page?.isClosed() ?? false;
  }

  show(): void {
    this.emit('show');
  }

  async close(): Promise<void> {
    await this.webContents.page?.close();
    BrowserWindow.all = BrowserWindow.all.filter((window) => window !== this);
    if (BrowserWindow.all.length === 0) app.emit('window-all-closed');
  }
}
