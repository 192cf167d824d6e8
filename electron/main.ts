import { join } from 'node:path';
import { parseArgs } from 'node:util';
import {
  app,
  BrowserWindow,
  dialog,
  type IpcMainEvent,
  ipcMain,
  Menu,
  MessageChannelMain,
  protocol,
  type Session,
  session,
  shell,
  type UtilityProcess,
  utilityProcess,
} from 'electron';
import { dataFolder } from './launch/folder.ts';
import { pageFile, SECURITY_HEADERS } from './transport/page.ts';

const SCHEME = 'app';
const ORIGIN = `${SCHEME}://studbook`;
const PORT_CHANNEL = 'studbook:port';

/** Public pages that sources of the calculations cite. Everything else stays shut. */
const EXTERNAL_HOSTS: ReadonlySet<string> = new Set(['www.bipm.org', 'www.nist.gov']);

/** A service that dies again and again has a reason that restarting does not mend. */
const RESTARTS_PER_MINUTE = 3;

const { values } = parseArgs({
  args: process.argv.slice(1),
  strict: false,
  options: { data: { type: 'string' } },
});
const folder = dataFolder(typeof values.data === 'string' ? values.data : undefined);
const built = (...path: string[]) => join(app.getAppPath(), 'dist', ...path);

let service: UtilityProcess | null = null;
let quitting = false;
let restarts: number[] = [];

app.enableSandbox();
protocol.registerSchemesAsPrivileged([
  { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
// Electron's own lock goes by this folder: one program per register, however often it is started.
app.setPath('userData', join(folder, 'window'));

if (app.requestSingleInstanceLock()) {
  app.on('second-instance', () => openWindow());
  app.on('window-all-closed', () => app.quit());
  app.on('before-quit', closeService);
  app.on('web-contents-created', (_event, contents) => confine(contents));
  ipcMain.on(PORT_CHANNEL, issuePort);
  void app.whenReady().then(start);
} else {
  app.quit();
}

function start(): void {
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(process.platform === 'darwin' ? [{ role: 'appMenu' as const }] : []),
      {
        label: 'File',
        submenu: [{ label: 'New window', accelerator: 'CmdOrCtrl+N', click: openWindow }, { role: 'quit' }],
      },
      { role: 'editMenu' },
      { label: 'View', submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }] },
    ]),
  );
  protocol.handle(SCHEME, servePage);
  refusePermissions(session.defaultSession);
  startService();
  openWindow();
}

function openWindow(): void {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 800,
    minHeight: 600,
    show: false,
    title: 'Studbook',
    webPreferences: {
      preload: built('electron', 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => window.show());
  window.loadURL(`${ORIGIN}/`).catch((error: unknown) => {
    // A window that is closed while it loads has nothing left to show.
    if (!window.isDestroyed()) dialog.showErrorBox('Studbook', `The window could not be loaded: ${error}`);
  });
}

/** Files of the built window, and nothing beside them, with the content security policy as a header. */
async function servePage(request: Request): Promise<Response> {
  const { host, pathname } = new URL(request.url);
  const file =
    `${SCHEME}://${host}` === ORIGIN && request.method === 'GET'
      ? await pageFile(built('renderer'), pathname)
      : null;
  if (file === null) return new Response('Not found', { status: 404, headers: SECURITY_HEADERS });
  return new Response(file.body, { headers: { ...SECURITY_HEADERS, 'content-type': file.contentType } });
}

function refusePermissions(of: Session): void {
  of.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  of.setPermissionCheckHandler(() => false);
  of.setDevicePermissionHandler(() => false);
}

/** Whatever the window holds, it stays on its own page. */
function confine(contents: Electron.WebContents): void {
  contents.on('will-navigate', (event) => {
    if (originOf(event.url) !== ORIGIN) event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    if (originOf(event.url) !== ORIGIN) event.preventDefault();
  });
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    openExternal(url);
    return { action: 'deny' };
  });
}

function openExternal(address: string): void {
  const url = URL.parse(address);
  if (url?.protocol === 'https:' && EXTERNAL_HOSTS.has(url.host) && url.username === '') {
    void shell.openExternal(url.href);
  }
}

/** URL.origin is "null" for a scheme of one's own, so scheme and host are compared as they stand. */
function originOf(address: string): string | null {
  const url = URL.parse(address);
  return url === null ? null : `${url.protocol}//${url.host}`;
}

/** A window's main frame asks for its line to the service; a frame inside it or a foreign page gets none. */
function issuePort({ sender, senderFrame }: IpcMainEvent): void {
  if (senderFrame === null || senderFrame !== sender.mainFrame || originOf(senderFrame.url) !== ORIGIN)
    return;
  connect(sender);
}

function connect(contents: Electron.WebContents): void {
  if (service === null) return;
  const { port1, port2 } = new MessageChannelMain();
  service.postMessage('window', [port1]);
  contents.mainFrame.postMessage(PORT_CHANNEL, null, [port2]);
}

function startService(): void {
  const started = utilityProcess.fork(built('electron', 'utility.js'), ['--data', folder], {
    serviceName: 'Studbook register',
    stdio: 'inherit',
  });
  service = started;
  started.once('exit', (code) => {
    service = null;
    if (!quitting) restartService(code);
  });
}

function restartService(code: number): void {
  const now = Date.now();
  restarts = [...restarts.filter((time) => now - time < 60_000), now];
  if (restarts.length > RESTARTS_PER_MINUTE) {
    dialog.showErrorBox(
      'Studbook',
      `The register's process ended ${restarts.length} times within a minute (last with ${code}). ` +
        `Nothing recorded is lost; the log in ${folder} has the reason.`,
    );
    app.quit();
    return;
  }
  startService();
  for (const window of BrowserWindow.getAllWindows()) {
    if (originOf(window.webContents.mainFrame.url) === ORIGIN) connect(window.webContents);
  }
}

/** The register is closed before the program goes: what is being written is finished first. */
function closeService(event: Electron.Event): void {
  if (service === null) return;
  event.preventDefault();
  if (quitting) return;
  quitting = true;
  service.once('exit', () => app.quit());
  service.postMessage('close');
}
