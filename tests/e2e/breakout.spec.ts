import { expect } from '@playwright/test';
import { SEIZING } from '../../seed/faults.ts';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { goTo, openJoint } from './steps.ts';

test('by keyboard: each opening of a joint is read out as the table has it, and the next one is forecast', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
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

test('openings of the whole plant narrow by what they have in common, and lead to their joint', async ({
  demo,
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.goto(demo.address);
  await goTo(page, '/breakout');
  const history = page.getByRole('region', { name: 'Breakout over installed torque' });
  await expect(history.locator('.chart svg').first()).toBeVisible();
  const reader = history.getByRole('slider', { name: 'Opening read out below' });
  const all = Number(await reader.getAttribute('max'));
  await typeInto(page, 'Service', 'reactor effluent');
  await expect.poll(async () => Number(await reader.getAttribute('max'))).toBeLessThan(all);
  await typeInto(page, 'Uses of the studs', 'some');
  await expect(page.getByText('A whole number from 0 to 999; until then all are shown')).toBeVisible();
  await expectNoFaults(page, 'breakout of the plant');
  await pressOn(page, 'button', 'Show as table');
  const joints = await history.getByRole('row').locator('td:first-child').allTextContents();
  expect(new Set(joints).size).toBeGreaterThan(1);
  await history.getByRole('link', { name: SEIZING, exact: true }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: SEIZING })).toBeVisible();
  await goTo(page, '/breakout');
  await typeInto(page, 'Service', 'no such service');
  await expect(history).toContainText('No breakout has been recorded.');
});
