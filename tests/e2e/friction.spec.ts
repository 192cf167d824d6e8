import { expect } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { tabTo } from './keyboard.ts';
import { goTo } from './steps.ts';

test('measured friction: every point is read out as the table has it, and both are the groups’ numbers', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  await goTo(page, '/friction');
  const groups = page.getByRole('region', { name: 'Number and spread' });
  await expect(groups.getByRole('row')).not.toHaveCount(1);
  const bolts = await groups.locator('tbody tr td:nth-of-type(2)').allTextContents();
  const all = bolts.reduce((sum, text) => sum + Number(text), 0);
  const readings = page.getByRole('region', { name: 'Bolt by bolt' });
  await expect(readings.locator('.chart svg').first()).toBeVisible();
  const reader = readings.getByRole('slider', { name: 'Bolt read out below' });
  expect(Number(await reader.getAttribute('max')) + 1).toBe(all);
  await tabTo(page, reader);
  await page.keyboard.press('Home');
  const told: string[] = [];
  for (let place = 0; place < 12; place += 1) {
    if (place > 0) await page.keyboard.press('ArrowRight');
    await expect(reader).toHaveValue(String(place));
    told.push((await reader.getAttribute('aria-valuetext')) ?? '');
  }
  await expectNoFaults(page, 'friction');
  await readings.getByRole('button', { name: 'Show as table' }).click();
  const rows = readings.locator('tbody tr');
  await expect(rows).toHaveCount(all);
  for (const [index, words] of told.entries()) {
    const row = rows.nth(index);
    const [when, bolt, , , measured] = await row.getByRole('cell').allTextContents();
    const tag = await row.getByRole('rowheader').textContent();
    expect(words).toBe(`${tag}, ${when}, bolt ${bolt}, K ${measured}`);
  }
  await page.getByLabel('Put together by').selectOption('batch');
  await expect(groups).toContainText(', ');
  await page.getByLabel('Lubricant', { exact: true }).fill('no such paste');
  await expect(page.getByText('No bolt load has been measured beside a torque yet.')).toBeVisible();
  await expectNoFaults(page, 'friction of nothing');
});
