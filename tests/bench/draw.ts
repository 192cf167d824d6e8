import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { CHROMIUM_FLAGS, installedChromium } from '../chromium.ts';
import { fillWithOneJoint, ONE_JOINT } from './hashed-events.ts';
import { type Measured, onTheClock } from './measure.ts';

type ServeModule = typeof import('../../electron/launch/serve.ts');

const EVENTS = 20_000;
const ROUNDS = 5;
const root = join(import.meta.dirname, '..', '..');

/** A joint with twenty thousand records: from the click to the drawn chart, in real Chromium on the built window. */
export async function drawBench(): Promise<Measured> {
  spawnSync(process.execPath, [join(root, 'electron', 'launch', 'build.mjs'), '--if-stale'], {
    stdio: 'ignore',
  });
  const folder = mkdtempSync(join(tmpdir(), 'studbook-draw-'));
  const database = new Database(join(folder, 'register.sqlite'));
  await migrate(database, queryBuilder(database));
  database.pragma('synchronous = OFF');
  fillWithOneJoint(database, EVENTS);
  database.close();
  const dist = join(root, 'dist');
  const { serve } = (await import(pathToFileURL(join(dist, 'electron', 'serve.js')).href)) as ServeModule;
  const serving = await serve({ folder, pageFolder: join(dist, 'renderer'), clock: () => new Date() });
  const program = installedChromium();
  const browser = await chromium.launch({
    args: CHROMIUM_FLAGS,
    ...(program === null ? {} : { executablePath: program }),
  });
  try {
    const page = await browser.newPage();
    await page.goto(serving.address);
    const seconds: number[] = [];
    for (let round = 0; round <= ROUNDS; round += 1) seconds.push(await drawOnce(page));
    // The first visit also fetches the chart's code.
    return onTheClock(
      'History drawn',
      `page of a joint with ${EVENTS.toLocaleString('en')} records, from its address to the drawn chart, in real Chromium`,
      's',
      seconds.slice(1),
      1,
    );
  } finally {
    await browser.close();
    await serving.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function drawOnce(page: Page): Promise<number> {
  await page.evaluate(() => {
    window.location.hash = '/joints';
  });
  await page.getByRole('heading', { level: 1, name: 'Joints' }).waitFor();
  const start = performance.now();
  await page.evaluate((id) => {
    window.location.hash = `/joints/${id}`;
  }, ONE_JOINT);
  const marks = page.locator('.chart svg .recharts-scatter-symbol');
  await marks.first().waitFor();
  const seconds = (performance.now() - start) / 1000;
  const drawn = await marks.count();
  if (drawn < 100) throw new Error(`only ${drawn} marks were drawn`);
  return seconds;
}
