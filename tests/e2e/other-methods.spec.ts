import { expect, type Page } from '@playwright/test';
import { test } from './app.ts';
import { goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

const JOINT = 'HX-310 N3';
const PERSON = 'Greta Example';

async function beginWithJoints(page: Page): Promise<void> {
  await makeEmptyRegister(page);
  await namePerson(page, PERSON, 'technician');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
}

async function openDesk(page: Page, method: string): Promise<void> {
  await openJoint(page, JOINT);
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await page.getByLabel('Tightened with').selectOption(method);
}

async function issue(page: Page): Promise<void> {
  await page.getByLabel('Issued by', { exact: true }).selectOption({ label: `${PERSON}, technician` });
  await page.getByRole('button', { name: 'Issue this setting' }).click();
  await expect(page.getByText('S-0001').first()).toBeVisible();
}

async function fillRecord(page: Page, studs: string): Promise<void> {
  await page.getByLabel('When it was done').fill('2026-03-16T07:40');
  await page.getByLabel(PERSON).check();
  await page.getByLabel('Studs tightened').fill(studs);
}

async function recordTightening(page: Page, studs: string): Promise<void> {
  await fillRecord(page, studs);
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page).toHaveURL(/#\/events\//);
}

const setting = (page: Page) => page.getByRole('region', { name: 'Setting', exact: true });
const line = (page: Page, name: string) =>
  page.getByRole('main').locator('dl > div').filter({ hasText: name });

test.beforeEach(async ({ app, page }) => {
  app.setClock('2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await beginWithJoints(page);
});

test('a tensioner is set to a load, its sheet speaks of no torque, and the load left is recorded', async ({
  page,
}) => {
  await openDesk(page, 'tensioner');
  await expect(setting(page)).toContainText('Load to be left in each stud');
  // Worked joint A: half of 105 ksi on the tensile area of 7/8-9 UNC, 107 829 N.
  await expect(setting(page)).toContainText('107.8');
  await expect(setting(page)).toContainText('none, the stud is tensioned');
  const passes = page.getByRole('region', { name: /^Passes/ });
  await expect(passes.getByRole('columnheader', { name: /^Torque/ })).toHaveCount(0);
  await expect(passes).toContainText('run down to firm contact while the load stands');
  await expect(page.getByRole('main')).not.toContainText('set pressure');
  await issue(page);

  await page.getByRole('link', { name: 'Record tightening' }).click();
  await expect(page.getByText(/tension to 107\.8 kN left in each stud/)).toBeVisible();
  await expect(page.getByLabel('Done with')).toHaveValue('tensioner');
  await expect(page.getByLabel('Torque', { exact: true })).toHaveCount(0);
  await fillRecord(page, '12');
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page.getByRole('alert')).toContainText('Load left in each stud: needed for a tensioned joint');
  await page.getByLabel('Load left in each stud', { exact: true }).fill('106');
  await recordTightening(page, '12');
  await expect(line(page, 'Done with')).toContainText('tensioner');
  await expect(line(page, 'Load left in each stud')).toContainText('106.0 kN');
  await expect(page.getByText('Nothing was flagged.')).toBeVisible();
});

test('a tool with numbered steps: a value that is none is named by its field, the step is issued and recorded', async ({
  page,
}) => {
  await openDesk(page, 'battery torque tool');
  await page.getByLabel('Number of the tool').fill('B-7');
  await page.getByLabel('Set by').selectOption('numbered steps');
  await page.getByLabel('Step 1, as marked').fill('4');
  await page.getByLabel('Torque of step 1', { exact: true }).fill('29,5');
  await expect(page.getByRole('alert')).toContainText('Torque of step 1: "29,5" is not a number');
  await expect(page.getByRole('heading', { level: 1, name: JOINT })).toBeVisible();
  await page.getByLabel('Torque of step 1', { exact: true }).fill('295');
  await page.getByRole('button', { name: 'Add a step' }).click();
  await page.getByLabel('Step 2, as marked').fill('5');
  await page.getByLabel('Torque of step 2', { exact: true }).fill('380');
  await page.getByLabel('Certificate', { exact: true }).fill('C-9');
  await page.getByLabel('Certificate valid until').fill('2026-12-31');
  // Worked joint A wants K F D = 0.16 × 107 829 N × 22.225 mm = 383.4 N·m; step 5 gives 380.
  await expect(setting(page)).toContainText('step 5');
  await expect(setting(page)).toContainText('380');
  await expect(page.getByRole('region', { name: /^Passes/ })).toContainText(
    'the tool stops at the set torque',
  );
  await issue(page);

  await page.getByRole('link', { name: 'Record tightening' }).click();
  await expect(page.getByText(/set step 5 on battery torque tool B-7/)).toBeVisible();
  await expect(page.getByLabel('Number of the tool')).toHaveValue('B-7');
  await page.getByLabel('Torque', { exact: true }).fill('380');
  await recordTightening(page, '12');
  await expect(line(page, 'Done with')).toContainText('battery torque tool');
  const tools = page.getByRole('listitem').filter({ hasText: 'B-7' });
  await expect(tools).toContainText('certificate C-9');
  await expect(page.getByRole('row', { name: /^all/ })).toContainText('380.0');
  await expect(page.getByText('Nothing was flagged.')).toBeVisible();
});

test('a second bolt set takes a site lubricant, gets its own setting, and its work is recorded as its own', async ({
  page,
}) => {
  await goTo(page, '/site-tables/new/lubricant');
  await page.getByLabel('Name', { exact: true }).fill('Site paste');
  await page.getByLabel('Source').fill('Test 12');
  await page.getByLabel('Nut factor K', { exact: true }).fill('0.15');
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'Site paste' })).toBeVisible();

  await openJoint(page, JOINT);
  await page.getByRole('link', { name: 'Edit joint' }).click();
  await page.getByText('Further bolt sets').click();
  await page.getByRole('button', { name: 'Add a bolt set' }).click();
  await page.getByLabel('Name of set 2').fill('cover bolts');
  await page.getByLabel('Number of studs of set 2').fill('4');
  await page.getByLabel('Thread of set 2', { exact: true }).fill('3/4-10 UNC');
  await page.getByLabel('Bolt circle of set 2', { exact: true }).fill('200');
  await page.getByLabel('Stud grade of set 2').fill('ASTM A193 B7');
  await page.getByLabel('Nut series of set 2').selectOption('ASME B18.2.2 heavy hex');
  await page
    .getByLabel('Take the lubricant of set 2 from the site’s table')
    .selectOption({ label: 'Site paste' });
  await expect(page.getByLabel('Nut factor K of set 2', { exact: true })).toHaveValue('0.15');
  await page.getByLabel('Target given as of set 2').selectOption('share of yield');
  await page.getByLabel('Share of yield of set 2', { exact: true }).fill('50');
  await page.getByLabel('Basis of the target of set 2').fill('invented procedure');
  await page.getByRole('button', { name: 'Save joint' }).click();
  await expect(page.getByRole('heading', { level: 1, name: JOINT })).toBeVisible();

  await openDesk(page, 'hand torque wrench');
  await page.getByLabel('Bolt set', { exact: true }).selectOption('cover bolts');
  await page.getByLabel('Number of the tool').fill('HW-1');
  await page.getByLabel('Least setting', { exact: true }).fill('60');
  await page.getByLabel('Highest setting', { exact: true }).fill('400');
  await page.getByLabel('Graduation', { exact: true }).fill('5');
  await page.getByLabel('Certificate', { exact: true }).fill('C-12');
  await page.getByLabel('Certificate valid until').fill('2026-12-31');
  // 0.15 × (0.5 × 105 ksi × 0.3345 in², ASME B1.1) × 3/4 in = 223.3 N·m; the scale is marked every 5 N·m.
  await expect(setting(page)).toContainText('225 N·m');
  await expect(page.getByText('Tightening, cover bolts')).toBeVisible();
  await issue(page);

  await page.getByRole('link', { name: 'Record tightening' }).click();
  await expect(page.getByText('The bolt set has 4')).toBeVisible();
  await page.getByLabel('Torque', { exact: true }).fill('225');
  await recordTightening(page, '4');
  await expect(line(page, 'Bolt set')).toContainText('cover bolts');
  await expect(line(page, 'Done with')).toContainText('hand torque wrench');
  await expect(page.getByText('Nothing was flagged.')).toBeVisible();
});

test('work without a setting is recorded by the method it was done with, and a breakout too', async ({
  page,
}) => {
  await openJoint(page, JOINT);
  await page.getByRole('link', { name: 'Record tightening' }).click();
  await page.getByLabel('Done with').selectOption('pneumatic torque tool');
  await expect(page.getByRole('combobox', { name: 'Drive unit' })).toHaveCount(0);
  await page.getByLabel('Torque', { exact: true }).fill('370');
  await page.getByLabel('Certificate', { exact: true }).fill('C-3');
  await fillRecord(page, '12');
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page.getByRole('alert')).toContainText('Number of the tool: needed');
  await page.getByLabel('Certificate', { exact: true }).fill('');
  await recordTightening(page, '12');
  await expect(line(page, 'Done with')).toContainText('pneumatic torque tool');
  await expect(page.getByText('No tool was named.')).toBeVisible();
  await expect(page.getByText('recorded without an issued setting')).toBeVisible();
  await expect(page.getByText('tools not recorded')).toBeVisible();

  await openJoint(page, JOINT);
  await page.getByRole('link', { name: 'Record breakout' }).click();
  await page.getByLabel('Done with').selectOption('hand torque wrench');
  await expect(page.getByLabel('Read as').getByRole('option')).toHaveText(['torque']);
  await expect(page.getByLabel('Unit of the readings')).toHaveValue('N.m');
  await page.getByLabel('Stud 3 reading').fill('410');
  await page.getByLabel('When it was done').fill('2026-03-16T07:50');
  await page.getByLabel(PERSON).check();
  await page.getByRole('button', { name: 'Record breakout' }).click();
  await expect(page).toHaveURL(/#\/events\//);
  await expect(line(page, 'Done with')).toContainText('hand torque wrench');
  await expect(page.getByRole('row', { name: /^3/ })).toContainText('410.0');
});
