import { expect } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { goTo } from './steps.ts';

test('past work with another nut factor lists the joints that leave their limits', async ({ demo, page }) => {
  await page.goto(demo.address);
  await goTo(page, '/replay');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await page.getByLabel('Nut factor K that was really there').fill('0.30');
  await page.getByLabel('Lubricant', { exact: true }).fill('nickel-based anti-seize');
  await page.getByRole('button', { name: 'Work it out' }).click();
  const outcome = page.getByRole('region', { name: 'Joints that leave their limits' });
  await expect(outcome.getByRole('status')).toContainText('would have broken a limit');
  await expect(outcome.locator('tbody tr').first()).toContainText('leaves:');
  await expectNoFaults(page, 'what if');
  await page.getByLabel('Taken to be otherwise').selectOption('gasket limit');
  await expectNoFaults(page, 'what if with a gasket limit');
});
