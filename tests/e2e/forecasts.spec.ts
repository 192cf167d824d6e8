import { expect } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { goTo } from './steps.ts';

test('forecasts of all joints are worked out against a drive unit, and each is that of its joint', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  await goTo(page, '/breakout/forecasts');
  const wrench = page.getByRole('combobox', { name: 'Drive unit to hold against them' });
  await wrench.fill('W-02');
  await page.getByRole('option', { name: /W-02/ }).click();
  await page.getByRole('button', { name: 'Work out the forecasts' }).click();
  const list = page.getByRole('region', { name: 'Forecasts' });
  await expect(list).toContainText('W-02 is too small with a chance above 5 %');
  await expectNoFaults(page, 'forecasts of all joints');
  await page.getByLabel('Find a joint in the forecasts').fill('J-300');
  await expect(list.getByRole('row').nth(1)).toContainText('J-300');
  const row = list.getByRole('row').nth(1);
  const [, , , worst, torque] = await row.getByRole('cell').allTextContents();
  await row.getByRole('link').click();
  const forecast = page.getByRole('region', { name: 'The next opening' });
  const cells = forecast.getByRole('row', { name: /the worst bolt that turns/ }).getByRole('cell');
  await expect(cells.nth(2)).toHaveText(worst ?? '');
  await expect(cells.nth(5)).toHaveText(torque ?? '');
});

test('the wrench chosen on a joint’s forecast is held against its worst bolt', async ({ demo, page }) => {
  await page.goto(demo.address);
  await goTo(page, '/breakout/forecasts');
  await page.getByRole('button', { name: 'Work out the forecasts' }).click();
  const list = page.getByRole('region', { name: 'Forecasts' });
  await list.getByRole('row').nth(1).getByRole('link').click();
  const forecast = page.getByRole('region', { name: 'The next opening' });
  await expect(forecast).toContainText('choose one with a certificate in force');
  await forecast.getByText('Tools it is to be opened with').click();
  await forecast.getByRole('combobox', { name: 'Drive unit', exact: true }).fill('W-02');
  await page.getByRole('option', { name: /W-02/ }).click();
  await expect(forecast).toContainText('chance that it is too small');
  await expectNoFaults(page, 'forecast with a chosen wrench');
});
