import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { test as base } from '@playwright/test';

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
  close(): Promise<void>;
}

export async function startApp(): Promise<App> {
  const { serve } = (await import(pathToFileURL(join(dist, 'electron', 'serve.js')).href)) as ServeModule;
  const folder = mkdtempSync(join(tmpdir(), 'studbook-e2e-'));
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
    async close() {
      await serving.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A test with an app on an empty data folder, closed and cleared away afterwards. */
export const test = base.extend<{ app: App }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this pattern.
  app: async ({}, use) => {
    const app = await startApp();
    await use(app);
    await app.close();
  },
});
