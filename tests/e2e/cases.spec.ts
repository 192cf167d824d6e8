import { expect } from '@playwright/test';
import { test } from './app.ts';
import { goTo } from './steps.ts';

test('from a wrench found weak to a closed case: what it reached, a decision on each, approved by another', async ({
  demo,
  page,
}) => {
  // The invented plant is made anew first, and two dozen rows are decided on.
  test.setTimeout(120_000);
  await page.goto(demo.address);
  await goTo(page, '/tool-room');
  await page.getByLabel('Scan or type a tool').fill('W-02');
  await page.getByLabel('Scan or type a tool').press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: /^W-02/ })).toBeVisible();
  await page.getByRole('link', { name: 'Open a case on it' }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: 'Open a case' })).toBeVisible();

  // Nobody is named yet: said at the field, and nothing is recorded.
  await page.getByRole('button', { name: 'See what it reaches' }).click();
  await expect(page.getByRole('alert')).toContainText('Opened by: one that is on the register');
  await page.getByLabel('Opened by').selectOption({ index: 1 });
  await page.getByRole('button', { name: 'See what it reaches' }).click();
  const preview = page.getByRole('region', { name: 'Affected joints' });
  await expect(preview.getByRole('rowheader')).toHaveCount(24);
  await expect(preview.getByRole('row').nth(1)).toContainText('%');
  await expect(page.getByRole('region', { name: 'Suspect window' })).toContainText('certificate');

  await page.getByRole('button', { name: /^Open the case on / }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^OT-0/ })).toBeVisible();
  const affected = page.getByRole('region', { name: 'Affected joints' });
  await expect(affected.getByRole('rowheader')).toHaveCount(24);

  // Closing is refused while joints wait for a decision.
  const closing = page.getByRole('form', { name: 'Closure' });
  await closing.getByLabel('Approved by').selectOption({ index: 2 });
  await closing.getByLabel('Conclusion').fill('Seals were worn; put right.');
  await closing.getByRole('button', { name: /^Close OT-/ }).click();
  await expect(closing.getByRole('alert')).toContainText('was not closed');

  for (const box of await affected.getByRole('checkbox').all()) await box.check();
  const deciding = page.getByRole('form', { name: 'Decision' });
  await deciding.getByLabel('Decision').selectOption('monitor');
  await deciding.getByLabel('Decided by').selectOption({ index: 1 });
  await deciding.getByLabel('Why').fill('Looked at on each round until the next shutdown');
  await deciding.getByRole('button', { name: 'Decide on 24 records' }).click();
  await expect(page.getByText('24 of 24 decided.')).toBeVisible();

  await closing.getByRole('button', { name: /^Close OT-/ }).click();
  await expect(page.getByRole('region', { name: 'Closure' })).toContainText('Seals were worn; put right.');
  await expect(affected.getByRole('checkbox')).toHaveCount(0);

  // The record itself leads back to the case.
  await affected
    .getByRole('row')
    .nth(1)
    .getByRole('link', { name: /record of/ })
    .click();
  await expect(page.getByRole('region', { name: 'Cases' })).toContainText('closed');
});
