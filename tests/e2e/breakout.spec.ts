import { expect } from '@playwright/test';
import { SEIZING } from '../../seed/faults.ts';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, tabTo } from './keyboard.ts';
import { openDemoPlant, openJoint } from './steps.ts';

test('by keyboard: each opening of a joint is read out as the table has it, and the next one is forecast', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await openDemoPlant(page);
  await openJoint(page, SEIZING);
  await pressOn(page, 'link', 'Breakout so far and next');
  const forecast = page.getByRole('region', { name: 'The next opening' });
  await expect(forecast).toContainText('× the installed torque');
  await expect(forecast.getByRole('region', { name: 'Cautions' })).toContainText('Expect sudden release');
  await expect(forecast.getByRole('table')).toContainText('the worst bolt that turns');

  const history = page.getByRole('region', { name: 'Breakout over installed torque' });
  await expect(history.locator('.chart svg').first()).toBeVisible();
  const reader = history.getByRole('slider', { name: 'Opening read out below' });
  await tabTo(page, reader);
  await page.keyboard.press('Home');
  const most = Number(await reader.getAttribute('max'));
  expect(most).toBeGreaterThan(2);
  const readOut: string[] = [];
  for (let place = 0; place <= most; place += 1) {
    if (place > 0) await page.keyboard.press('ArrowRight');
    await expect(reader).toHaveValue(String(place));
    readOut.push((await history.getByRole('heading', { level: 3 }).textContent()) ?? '');
  }
  expect(new Set(readOut).size).toBe(most + 1);
  await expectNoFaults(page, 'breakout');

  await pressOn(page, 'button', 'Show as table');
  const rows = history.getByRole('row');
  await expect(rows).toHaveCount(most + 2);
  for (const [index, words] of readOut.entries()) {
    const row = rows.nth(index + 1);
    const [middle, lowest, highest] = await row.getByRole('cell').allTextContents();
    const when = await row.getByRole('rowheader').textContent();
    expect(words).toBe(`${when}: middle ${middle}, lowest ${lowest}, highest ${highest}`);
  }
  await expectNoFaults(page, 'breakout as a table');
});
