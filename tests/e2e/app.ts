import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { test as base } from '@playwright/test';
import { openDemoPlant } from './steps.ts';

type ServeModule = typeof import('../../electron/launch/serve.ts');

const dist = join(import.meta.dirname, '..', '..', 'dist');

/** The built service behind the built window, on a data folder of its own. */
export interface App {
  /** Address of the running start, token included; it changes with every restart. */
  readonly address: string;
  readonly folder: string;
  /** From now on the service's clock shows this moment and stands still. */
  setClock(moment: string): void;
  /** Closes the register as the app does when its window is closed, and starts anew on the same folder. */
  restart(): Promise<void>;
  /** Closes the register and leaves its folder. */
  stop(): Promise<void>;
  /** Closes the register and clears its folder away. */
  close(): Promise<void>;
}

const dataFolder = () => mkdtempSync(join(tmpdir(), 'studbook-e2e-'));

export async function startApp(folder = dataFolder()): Promise<App> {
  const { serve } = (await import(pathToFileURL(join(dist, 'electron', 'serve.js')).href)) as ServeModule;
  let clock = () => new Date();
  const start = () => serve({ folder, pageFolder: join(dist, 'renderer'), clock: () => clock() });
  let serving = await start();
  return {
    get address() {
      return serving.address;
    },
    folder,
    setClock(moment) {
      const time = new Date(moment);
      clock = () => time;
    },
    async restart() {
      await serving.close();
      serving = await start();
    },
    stop: () => serving.close(),
    async close() {
      await serving.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

interface Apps {
  /** On an empty data folder. */
  readonly app: App;
  /** On a demo plant of its own, open already. */
  readonly demo: App;
}

/** A test with an app of its own, closed and cleared away afterwards. */
export const test = base.extend<Apps, { demoFolder: string }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this pattern.
  app: async ({}, use) => {
    const app = await startApp();
    await use(app);
    await app.close();
  },
  // The plant takes seconds to make, so each worker makes one through the window, and its tests get copies.
  demoFolder: [
    async ({ browser }, use) => {
      const app = await startApp();
      const page = await browser.newPage();
      await page.goto(app.address);
      await openDemoPlant(page);
      await page.close();
      await app.stop();
      await use(app.folder);
      rmSync(app.folder, { recursive: true, force: true });
    },
    { scope: 'worker', timeout: 90_000 },
  ],
  demo: async ({ demoFolder }, use) => {
    const folder = dataFolder();
    cpSync(demoFolder, folder, { recursive: true });
    const app = await startApp(folder);
    await use(app);
    await app.close();
  },
});
