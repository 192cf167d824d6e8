import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { test } from './app.ts';
import { goTo, openDemoPlant } from './steps.ts';

async function expectNoFaults(page: Page, where: string): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  expect(passes.length, `${where}: the accessibility check looked at something`).toBeGreaterThan(5);
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
    where,
  ).toEqual([]);
}

/** Every screen, reached the way the window's own links do; ids come from the lists. */
async function eachScreen(page: Page, look: (name: string) => Promise<void>): Promise<void> {
  const settle = () => expect(page.getByRole('progressbar')).toHaveCount(0);
  const visit = async (name: string, route: string) => {
    await goTo(page, route);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await settle();
    await look(name);
  };
  const firstLink = async (route: string, prefix: string) => {
    await goTo(page, route);
    const link = page.getByRole('table').locator(`a[href^="#/${prefix}/"]`).first();
    return (await link.getAttribute('href'))?.slice(1) ?? '';
  };
  await visit('joints', '/joints');
  const joint = await firstLink('/joints', 'joints');
  await visit('joint', joint);
  await visit('joint edit', `${joint}/edit`);
  await visit('joint new', '/joints/new');
  await visit('setting', `${joint}/setting`);
  await visit('record tightening', `${joint}/record/tightening`);
  await visit('record breakout', `${joint}/record/breakout`);
  await visit('tools', '/tools');
  const tool = await firstLink('/tools', 'tools');
  await visit('tool', tool);
  await visit('tool edit', `${tool}/edit`);
  await visit('tool new', '/tools/new');
  await visit('certificate new', `${tool}/certificates/new`);
  await visit('evidence', '/evidence');
  await visit('issued setting', await firstLink('/evidence', 'settings'));
  await goTo(page, joint);
  const event = page.getByRole('region', { name: 'History' }).locator('a[href^="#/events/"]').first();
  await visit('event', (await event.getAttribute('href'))?.slice(1) ?? '');
  await visit('site tables', '/site-tables');
  await visit('site row new', '/site-tables/new/grade');
  await visit('pass plans', '/plans');
  await visit('pass plan new', '/plans/new');
  await visit('people', '/people');
  await visit('units', '/units');
  await visit('import joints', '/import/joints');
  await visit('import tools', '/import/tools');
  await visit('import certificate', '/import/certificate');
}

for (const [scheme, width, height] of [
  ['light', 1440, 900],
  ['dark', 1024, 768],
] as const) {
  test(`every screen passes the accessibility check and fits ${width} wide, ${scheme}`, async ({
    app,
    page,
  }) => {
    test.setTimeout(240_000);
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await page.setViewportSize({ width, height });
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(app.address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expectNoFaults(page, 'first start');
    await openDemoPlant(page);
    const seen: string[] = [];
    await eachScreen(page, async (name) => {
      seen.push(name);
      await expect(page.getByRole('banner').getByText('Demo plant, invented')).toBeVisible();
      await expectNoFaults(page, name);
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(overflow, `${name} is wider than the window`).toBeLessThanOrEqual(0);
    });
    expect(seen).toHaveLength(24);
    expect(complaints).toEqual([]);
  });
}

test('by keyboard alone: find a joint, open it, work out its setting', async ({ app, page }) => {
  await page.goto(app.address);
  await openDemoPlant(page);
  await page.keyboard.press('/');
  await page.keyboard.type('J-200-00');
  await expect(page.getByRole('table').getByRole('row')).not.toHaveCount(1);
  await expect(page.getByRole('table')).not.toContainText('J-100-001');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: /J-200-00/ })).toBeVisible();
  const setting = page.getByRole('link', { name: 'Work out a setting' });
  for (let press = 0; press < 80; press++) {
    if (await setting.evaluate((element) => element === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await expect(setting).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/setting/);
  await expect(page.getByRole('heading', { name: 'Findings' })).toBeVisible();
});
