import { expect } from '@playwright/test';
import { test } from './app.ts';
import { chooseTool, finding, goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

test('a site’s plan is refused until it is approved, and then the issued card follows it', async ({
  app,
  page,
}) => {
  test.setTimeout(120_000);
  app.setClock('2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'engineer');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');

  await goTo(page, '/evidence');
  await page.getByRole('link', { name: /^Pass plans/ }).click();
  await page.getByRole('link', { name: 'Add a pass plan' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Staged thirds');
  await page.getByLabel('Source').fill('Site procedure 7');
  await page.getByLabel('Name of step 1').fill('Half');
  await page.getByLabel('Share of the target, step 1', { exact: true }).fill('50');
  await page.getByLabel('Step 1 is done when').fill('the tool stalls');
  await page.getByRole('button', { name: 'Add a step' }).click();
  await page.getByLabel('Name of step 2').fill('All of it');
  await page.getByLabel('Order of step 2').selectOption('circular');
  await page.getByLabel('Step 2 is done when').fill('no nut turns');
  await page.getByRole('button', { name: 'Save plan' }).click();
  await expect(page.getByRole('alert')).toContainText('comes with the program');
  await page.getByLabel('Name', { exact: true }).fill('Site halves');
  await page.getByRole('button', { name: 'Save plan' }).click();
  const plan = page.getByRole('region', { name: 'Site halves' });
  await expect(plan).toContainText('not approved');

  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await chooseTool(page, 'Drive unit', 'W-1');
  await chooseTool(page, 'Cassette', 'K-46');
  await chooseTool(page, 'Reducer', 'R-1');
  await chooseTool(page, 'Pump', 'P-1');
  await chooseTool(page, 'Gauge', 'G-1');
  await chooseTool(page, 'Hose', 'H-1');
  await page.getByLabel('Pass plan', { exact: true }).selectOption({ label: 'Site halves, not approved' });
  await expect(finding(page, 'Refusal', 'Pass plan not approved')).toContainText('Site halves');
  await expect(page.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();

  await page.getByRole('link', { name: 'Pass plans and their approval' }).click();
  await plan.getByRole('button', { name: 'Approve Site halves, version 1' }).click();
  await expect(plan).toContainText('Nobody is chosen');
  await plan.getByLabel('Approved by').selectOption({ label: 'Greta Example, engineer' });
  await plan.getByRole('button', { name: 'Approve Site halves, version 1' }).click();
  await expect(plan).toContainText('approved by Greta Example');

  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await page.getByLabel('Pass plan', { exact: true }).selectOption({ label: 'Site halves' });
  await expect(finding(page, 'Refusal', 'Pass plan not approved')).toBeHidden();
  await page.getByLabel('Issued by', { exact: true }).selectOption({ label: 'Greta Example, engineer' });
  await page.getByRole('button', { name: 'Issue this setting' }).click();
  await expect(page.getByText('S-0001').first()).toBeVisible();
  const passes = page.getByRole('region', { name: 'Passes, Site halves' });
  await expect(passes.getByRole('rowheader')).toHaveText(['Snug', 'Half', 'All of it']);
  await expect(passes.getByRole('row').filter({ hasText: 'All of it' })).toContainText('no nut turns');

  await goTo(page, '/plans');
  await plan.getByRole('link', { name: 'Edit Site halves' }).click();
  await page.getByLabel('Step 2 is done when').fill('every nut was tried twice');
  await page.getByRole('button', { name: 'Save plan' }).click();
  await expect(plan).toContainText('Version 2, not approved');
});

test('a site adds a grade with its source, finds it offered, and retires it', async ({ app, page }) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await goTo(page, '/site-tables');
  await page.getByRole('link', { name: 'Add a stud grade' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Site alloy 1');
  await page.getByLabel('Up to and including', { exact: true }).fill('50');
  await page.getByLabel('Least yield strength', { exact: true }).fill('640');
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(page.getByRole('alert')).toContainText('Source: needed');
  await page.getByLabel('Source').fill('Data sheet 12');
  await page.getByRole('button', { name: 'Save row' }).click();
  const row = page.getByRole('row').filter({ hasText: 'Site alloy 1' });
  await expect(row).toContainText('yield 640 MPa');
  await expect(row).toContainText('Data sheet 12');

  await goTo(page, '/joints/new');
  const offers = page.locator('datalist option[value="Site alloy 1"]');
  await expect(offers).toHaveCount(1);

  await goTo(page, '/site-tables');
  await row.getByRole('link', { name: 'Edit Site alloy 1' }).click();
  await page.getByLabel('Retired: not offered any more').check();
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(row).toContainText('retired');
  await goTo(page, '/joints/new');
  await expect(page.getByLabel('Stud grade').first()).toBeVisible();
  await expect(offers).toHaveCount(0);
});

test('a joint takes a lubricant’s values, and names a flange, from the site’s tables', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await goTo(page, '/site-tables');
  await page.getByRole('link', { name: 'Add a lubricant' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Site paste');
  await page.getByLabel('Source').fill('Test 12');
  await page.getByLabel('Nut factor K', { exact: true }).fill('0.15');
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'Site paste' })).toContainText('Nut factor K 0.15');
  await page.getByRole('link', { name: 'Add a flange' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Girth flange E-310');
  await page.getByLabel('Source').fill('Drawing 310-4');
  await page.getByLabel('Number of studs').fill('36');
  await page.getByRole('button', { name: 'Save row' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'Girth flange' })).toContainText('36 × not known');

  await goTo(page, '/units');
  await page.getByLabel('Name', { exact: true }).fill('U 300');
  await page.getByRole('button', { name: 'Save plant unit' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'U 300' })).toBeVisible();
  await goTo(page, '/joints/new');
  await page.getByLabel('Take the lubricant from the site’s table').selectOption({ label: 'Site paste' });
  await expect(page.getByLabel('Nut factor K', { exact: true })).toHaveValue('0.15');
  await expect(page.getByLabel('Source of friction')).toHaveValue('Site paste, site table: Test 12');
  await page.getByLabel('Tag').fill('E-310');
  await page.getByRole('main').getByLabel('Plant unit').selectOption({ label: 'U 300' });
  await page.getByLabel('Kind of flange').selectOption({ label: 'bolt circle of its own' });
  await page.getByLabel('Description').fill('girth flange');
  await page.getByLabel('Row of the site’s flange table').selectOption({ label: 'Girth flange E-310' });
  await page.getByRole('button', { name: 'Save joint' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'E-310' })).toBeVisible();
  await page.getByRole('button', { name: /^36\b.*show its source/ }).click();
  await expect(page.getByText('Girth flange E-310, site table: Drawing 310-4').first()).toBeVisible();
});
