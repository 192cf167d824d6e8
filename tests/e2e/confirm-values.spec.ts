import { expect } from '@playwright/test';
import { test } from './app.ts';
import { chooseTool, finding, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

test('a strength with one source is refused until a person confirms it', async ({ app, page }) => {
  app.setClock('2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'engineer');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: /^Edit/ }).first().click();
  await page.getByLabel('Stud grade').first().fill('ASTM A320 L7M');
  await page.getByRole('button', { name: 'Save joint' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'HX-310 N3' })).toBeVisible();

  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await chooseTool(page, 'Drive unit', 'W-1');
  await chooseTool(page, 'Cassette', 'K-46');
  await chooseTool(page, 'Reducer', 'R-1');
  await chooseTool(page, 'Pump', 'P-1');
  await chooseTool(page, 'Gauge', 'G-1');
  await chooseTool(page, 'Hose', 'H-1');
  await page.getByLabel('Issued by', { exact: true }).selectOption({ label: 'Greta Example, engineer' });
  const issue = page.getByRole('button', { name: 'Issue this setting' });
  const open = finding(page, 'Refusal', 'Yield strength: one source only, not confirmed');
  await expect(open).toContainText('yield strength 80 ksi');
  await expect(issue).toBeDisabled();

  await open.getByRole('button', { name: 'Confirm yield 80 ksi' }).click();
  await open.getByRole('button', { name: 'Confirm these values' }).click();
  await expect(open).toContainText('Name the document the value was compared with.');
  await expect(open).toContainText('Nobody is chosen');
  await open.getByLabel('Compared with').fill('Own copy of the specification, table 1');
  await open.getByLabel('Confirmed by').selectOption({ label: 'Greta Example, engineer' });
  await open.getByRole('button', { name: 'Confirm these values' }).click();

  await expect(open).toBeHidden();
  const confirmed = finding(page, 'Note', 'Yield strength: one source only, confirmed');
  await expect(confirmed).toContainText('Greta Example, 2026-03-16, Own copy of the specification, table 1');
  await issue.click();
  await expect(page.getByText('S-0001').first()).toBeVisible();
});

test('the demo plant has a flange whose row nobody has confirmed', async ({ demo, page }) => {
  await page.goto(demo.address);
  await openJoint(page, 'J-800-903');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await expect(finding(page, 'Refusal', 'Flange table: one source only, not confirmed')).toContainText(
    'The setting rests on it',
  );
  await expect(page.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();
});
