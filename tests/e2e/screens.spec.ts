import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { goTo, openDemoPlant } from './steps.ts';

/** Every address the window has a page for, as its own list of routes says it. */
function routePatterns(): string[] {
  const source = readFileSync(join(import.meta.dirname, '../../renderer/app/routes.tsx'), 'utf8');
  return [...source.matchAll(/<Route path="([^"]+)"/g)].flatMap(([, path]) => path ?? []);
}

/** "/joints/:id/edit/:field?" → an expression that an address of it matches. */
function addressOf(pattern: string): RegExp {
  const source = pattern
    .split('/')
    .slice(1)
    .map((part) => (part.endsWith('?') ? '(/[^/]+)?' : part.startsWith(':') ? '/[^/]+' : `/${part}`))
    .join('');
  return new RegExp(`^${source}$`);
}

/** Every screen, reached the way the window's own links do; ids come from the lists. */
async function eachScreen(page: Page, look: (name: string, route: string) => Promise<void>): Promise<void> {
  const settle = () => expect(page.getByRole('progressbar')).toHaveCount(0);
  const visit = async (name: string, route: string) => {
    await goTo(page, route);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await settle();
    await look(name, route);
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
  await visit('joint compare', `${joint}/compare`);
  await visit('joint edit at a field', `${joint}/edit/gasket.factorM`);
  await visit('setting', `${joint}/setting`);
  await page.getByLabel('Tightened with').selectOption('hand torque wrench');
  await page.getByLabel('Number of the tool').fill('HW-1');
  await page.getByLabel('Least setting', { exact: true }).fill('60');
  await page.getByLabel('Highest setting', { exact: true }).fill('12,5');
  await page.getByLabel('Graduation', { exact: true }).fill('5');
  await expect(page.getByRole('alert')).toContainText('Highest setting');
  await look('setting with a value that is none', `${joint}/setting`);
  for (const step of ['assess', 'release', 'inspect', 'make-up', 'reinstate']) {
    await visit(`step: ${step}`, `${joint}/step/${step}`);
  }
  await visit('deviations', '/deviations');
  const deviating = await firstLink('/deviations', 'joints');
  await visit('joint with a deviation', deviating);
  await visit('step of a joint with a deviation', `${deviating}/step/break`);
  await visit('leaks', '/leaks');
  await visit('which joints to verify first', '/leaks/verify');
  await visit('thermal cycles', `${joint}/cycles`);
  await visit('breakout', `${joint}/breakout`);
  await visit('breakout of the plant', '/breakout');
  await visit('forecasts of all joints', '/breakout/forecasts');
  await visit('model of the load', `${joint}/scatter`);
  await visit('retightening', `${joint}/retightening`);
  await page.getByLabel('in service, under pressure').check();
  await look('retightening in service', `${joint}/retightening`);
  await visit('record tightening', `${joint}/record/tightening`);
  await visit('record breakout', `${joint}/record/breakout`);
  await visit('at the joint', '/at');
  await visit('at this joint', joint.replace('joints', 'at'));
  await visit('is this my joint', '/is-this');
  await visit('is this my joint, with its job', joint.replace('joints', 'is-this'));
  await visit('tags', joint.replace('joints', 'tags'));
  await visit('tool room', '/tool-room');
  await visit('due list', '/due');
  await visit('due calendar', '/due/calendar');
  await visit('custody desk', '/custody');
  await visit('friction', '/friction');
  await visit('what if', '/replay');
  await visit('campaigns', '/plan/campaigns');
  const campaign = await firstLink('/plan/campaigns', 'plan/campaigns');
  await visit('campaign', campaign);
  await visit('campaign edit', `${campaign}/edit`);
  await visit('campaign new', '/plan/campaigns/new');
  await visit('board of a campaign', `${campaign}/board`);
  await visit('materials of a campaign', `${campaign}/materials`);
  await visit('what changed in a campaign', `${campaign}/changes`);
  await visit('job new', `${campaign}/jobs/new`);
  const job = await firstLink(campaign, 'plan/jobs');
  await visit('job', job);
  await visit('job edit', `${job}/edit`);
  await visit('import jobs', '/import/jobs');
  await visit('kits', '/kits');
  await visit('kit new', '/kits/new');
  await page.getByLabel('Name of the kit').fill('Kit of the test');
  await page.getByLabel('Scan or type a tool').fill('W-01');
  await page.getByLabel('Scan or type a tool').press('Enter');
  await expect(page.getByRole('listitem').filter({ hasText: 'W-01' })).toBeVisible();
  await page.getByRole('button', { name: 'Save kit' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Kit of the test/ })).toBeVisible();
  const kit = new URL(page.url()).hash.slice(1);
  await visit('kit', kit);
  await visit('kit edit', `${kit}/edit`);
  await visit('cases', '/cases');
  await page.getByLabel('State').selectOption('');
  await expect(page.getByRole('link', { name: /^OT-/ }).first()).toBeVisible();
  await visit('case', routeOf(await page.getByRole('link', { name: /^OT-/ }).first().getAttribute('href')));
  await visit('case new', '/cases/new');
  await visit('tools', '/tools');
  const tool = await firstLink('/tools', 'tools');
  await visit('tool', tool);
  await visit('tool edit', `${tool}/edit`);
  await visit('tool new', '/tools/new');
  await visit('tool uses', `${tool}/uses`);
  await visit('label', tool.replace('tools', 'labels'));
  await visit('certificate new', `${tool}/certificates/new`);
  await goTo(page, '/tool-room');
  await page.getByLabel('Scan or type a tool').fill('W-01');
  await page.getByLabel('Scan or type a tool').press('Enter');
  await page.getByRole('link', { name: 'Record a check' }).click();
  const check = new URL(page.url()).hash.slice(1);
  await visit('check', check);
  for (const kind of ['comparison', 'pressure test']) {
    await page.getByLabel('Checklist').selectOption('none');
    await page.getByLabel('Kind of check').selectOption(kind);
    await page.getByRole('radio', { name: 'passed' }).check();
    await look(`check, ${kind}`, check);
  }
  await visit('checklists', '/checklists');
  const list = await firstLink('/checklists', 'checklists');
  await visit('checklist', list);
  await visit('checklist edit', `${list}/edit`);
  await page.getByLabel('Answer to question 1').selectOption('pressure');
  await look('checklist edit with a measured question', `${list}/edit`);
  await visit('checklist new', '/checklists/new');
  await visit('tool rules', '/tool-rules');
  await visit('tool rule edit', await ruleLink(page, 'edit the rule for the hose'));
  await goTo(page, '/tool-rules');
  await visit('tool rule new', await ruleLink(page, 'Enter one for the coupler'));
  await visit('evidence', '/evidence');
  const issued = await firstLink('/evidence', 'settings');
  await visit('issued setting', issued);
  await visit('record against a setting', await recordLink(page));
  await visit('verify the history', '/verify');
  await page.getByRole('button', { name: 'Verify' }).click();
  await expect(page.getByRole('heading', { name: 'It holds' })).toBeVisible();
  await look('verified history', '/verify');
  await visit('audit trail', '/audit');
  await visit('record', routeOf(await page.locator('a[href^="#/records/"]').first().getAttribute('href')));
  await goTo(page, joint);
  const event = page.getByRole('region', { name: 'History' }).locator('a[href^="#/events/"]').first();
  await visit('event', (await event.getAttribute('href'))?.slice(1) ?? '');
  await visit('site tables', '/site-tables');
  await visit('site row new', '/site-tables/new/grade');
  await addLubricant(page);
  await visit('site tables with a row', '/site-tables');
  await visit('site row edit', await editLink(page, 'Site paste'));
  await visit('pass plans', '/plans');
  await visit('pass plan new', '/plans/new');
  await addPlan(page);
  await visit('pass plan edit', await editLink(page, 'Site plan'));
  await visit('classes of joints', '/class-rules');
  await visit('class new', '/class-rules/new');
  await addClass(page);
  await visit('class edit', await editLink(page, 'class Class A'));
  await visit('people', '/people');
  const person = await firstLink('/people', 'people');
  await visit('person', person);
  await visit('competence new', `${person}/competences/new`);
  await visit('sign-in not begun', '/sign-in');
  await visit('own secret', '/secret');
  await visit('units', '/units');
  await visit('import joints', '/import/joints');
  await visit('import tools', '/import/tools');
  await visit('import certificate', '/import/certificate');
  await visit('no such page', '/nowhere');
}

const routeOf = (href: string | null) => href?.slice(1) ?? '';

const editLink = async (page: Page, name: string) =>
  routeOf(await page.getByRole('link', { name: `Edit ${name}` }).getAttribute('href'));

const ruleLink = async (page: Page, name: string) =>
  routeOf(await page.getByRole('link', { name }).getAttribute('href'));

const recordLink = async (page: Page) =>
  routeOf(await page.getByRole('link', { name: /^Record / }).getAttribute('href'));

async function addLubricant(page: Page): Promise<void> {
  await goTo(page, '/site-tables/new/lubricant');
  await page.getByLabel('Name', { exact: true }).fill('Site paste');
  await page.getByLabel('Source').fill('Test 12');
  await page.getByLabel('Nut factor K', { exact: true }).fill('0.15');
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'Site paste' })).toBeVisible();
}

async function addPlan(page: Page): Promise<void> {
  await goTo(page, '/plans/new');
  await page.getByLabel('Name', { exact: true }).fill('Site plan');
  await page.getByLabel('Source').fill('Site procedure 7');
  await page.getByLabel('Name of step 1').fill('All of it');
  await page.getByLabel('Step 1 is done when').fill('no nut turns');
  await page.getByRole('button', { name: 'Save plan' }).click();
  await expect(page.getByRole('heading', { name: 'Site plan' })).toBeVisible();
}

async function addClass(page: Page): Promise<void> {
  await goTo(page, '/class-rules/new');
  await page.getByLabel('Name', { exact: true }).fill('Class A');
  await page.getByLabel('Rests on').selectOption('critical');
  await page.getByLabel('Source').fill('Site procedure 7');
  await page.getByRole('checkbox', { name: /^A list of required fields/ }).check();
  await page.getByRole('button', { name: 'Save class' }).click();
  await expect(page.getByRole('heading', { name: /^Class A/ })).toBeVisible();
}

for (const [scheme, width, height] of [
  ['light', 1440, 900],
  ['dark', 1024, 768],
] as const) {
  test(`every screen passes the accessibility check and fits ${width} wide, ${scheme}`, async ({
    app,
    page,
  }) => {
    test.setTimeout(900_000);
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
    await eachScreen(page, async (name, route) => {
      seen.push(route);
      await expect(page.getByRole('banner').getByText('Demo plant, invented')).toBeVisible();
      await expectNoFaults(page, name);
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(overflow, `${name} is wider than the window`).toBeLessThanOrEqual(0);
    });
    const patterns = routePatterns().filter((pattern) => pattern !== '/');
    expect(patterns.length).toBeGreaterThan(20);
    // As the window does, each address goes to the first route that takes it.
    const taken = new Set(seen.map((route) => patterns.find((pattern) => addressOf(pattern).test(route))));
    expect(
      patterns.filter((pattern) => !taken.has(pattern)),
      'routes no screen was looked at for',
    ).toEqual([]);
    expect(complaints).toEqual([]);
  });
}

test('by keyboard alone: find a joint, open it, work out its setting', async ({ demo, page }) => {
  await page.goto(demo.address);
  await expect(page.getByRole('heading', { name: 'Joints', level: 1 })).toBeVisible();
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
