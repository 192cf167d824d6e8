import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { DRIFTING_WRENCH, SEIZING } from '../../seed/faults.ts';
import { CHROMIUM_FLAGS, ensureChromium } from '../chromium.ts';
import { startApp } from './app.ts';
import { goTo, openDemoPlant, openJoint } from './steps.ts';

/** Draws the README's pictures from the demo plant: npm run shots (build first). */
const out = (name: string) => join(import.meta.dirname, '..', '..', 'docs', 'shots', `${name}.png`);
const route = (page: Page) => new URL(page.url()).hash.slice(1);
const say = (line: string) => process.stdout.write(`${line}\n`);

const app = await startApp();
const browser = await chromium.launch({ executablePath: ensureChromium(say), args: CHROMIUM_FLAGS });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.address);
  await openDemoPlant(page);
  const shoot = async (name: string, route: string, { fullPage = false, chart = false } = {}) => {
    await goTo(page, route);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.getByRole('progressbar').waitFor({ state: 'detached' });
    if (chart) await page.locator('.chart svg').first().waitFor();
    await page.evaluate(() => document.fonts.ready);
    await page.screenshot({ path: out(name), fullPage });
    say(`docs/shots/${name}.png`);
  };
  await shoot('joints', '/joints');
  await openJoint(page, SEIZING);
  await shoot('joint', route(page), { fullPage: true, chart: true });
  const sheet = page.getByRole('region', { name: 'History' }).locator('a[href^="#/settings/"]').first();
  await shoot('setting', (await sheet.getAttribute('href'))?.slice(1) ?? '', { fullPage: true });
  await goTo(page, '/tools');
  await page.getByRole('searchbox', { name: 'Find a tool' }).fill(DRIFTING_WRENCH);
  await page.getByRole('table').getByRole('link', { name: DRIFTING_WRENCH, exact: true }).click();
  await page.getByRole('heading', { level: 1, name: DRIFTING_WRENCH }).waitFor();
  await shoot('tool', route(page), { fullPage: true, chart: true });
} finally {
  await browser.close();
  await app.close();
}
