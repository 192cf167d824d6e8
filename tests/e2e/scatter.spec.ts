import { expect } from '@playwright/test';
import { SEIZING } from '../../seed/faults.ts';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { INPUTS } from './scatter-inputs.ts';
import { openJoint } from './steps.ts';

test('by keyboard: the model names what it lacks, then shows every step of two plans as drawing and table', async ({
  demo,
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.goto(demo.address);
  await openJoint(page, SEIZING);
  await pressOn(page, 'link', 'Model the load between bolts');
  const model = page.getByRole('region', { name: 'Load between the bolts, by a model' });
  await expect(model.getByRole('status')).toContainText('Nothing can be said yet');
  await expect(model).toContainText('not a measurement');
  await tabTo(page, model.getByLabel('Beside it'));
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  for (const [label, text] of INPUTS) await typeInto(page, label, text);
  await pressOn(page, 'button', 'Run the model');
  await expect(model.getByRole('status')).toContainText('ends more even');

  const loads = model.getByRole('table', {
    name: 'Load in every bolt after the step shown, and after the last',
  });
  await expect(loads.getByRole('row')).toHaveCount(13);
  const firstBolt = loads.getByRole('row').nth(1);
  const [step, end] = await firstBolt.getByRole('cell').allTextContents();
  // Beginning at the last step, both columns are one.
  expect(step).toBe(end);
  const shown = model.getByRole('slider', { name: /^Step shown/ });
  await tabTo(page, shown);
  await page.keyboard.press('Home');
  await expect(shown).toHaveAttribute('aria-valuetext', /step 1, bolt 1;/);
  // After the first step of a third, bolt 1 stands at what it was set to and the others carry nothing.
  await expect(firstBolt.getByRole('cell').first()).toHaveText('96.67');
  await expect(loads.getByRole('row').nth(2).getByRole('cell').first()).toHaveText('0');
  await expectNoFaults(page, 'model of the load');

  await typeInto(page, 'Largest load of one bolt', '100');
  await pressOn(page, 'button', 'Run the model');
  await expect(page.getByRole('alert').first()).toContainText('at least the load that is set');
  await expect(page.getByLabel('Load to set', { exact: true })).toHaveValue('290');
});

test('the model finds loads that end even, tries other gaskets, fits measured loads and plays its steps', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  await openJoint(page, SEIZING);
  await page.getByRole('link', { name: 'Model the load between bolts' }).click();
  const model = page.getByRole('region', { name: 'Load between the bolts, by a model' });
  for (const [label, text] of INPUTS) await page.getByLabel(label, { exact: true }).fill(text);
  await page.getByLabel('Largest load of one bolt', { exact: true }).fill('600');
  await page.getByLabel('Loads to set that end even, trips around').fill('2');
  await page.getByLabel('With a gasket a quarter to four times as stiff').check();
  await page.getByLabel('Loads that were measured, kN').fill('2 1 two hundred');
  await page.getByRole('button', { name: 'Run the model' }).click();
  await expect(model.getByText('"2 1 two hundred": a line is pass, bolt and load in kN')).toBeVisible();
  await page.getByLabel('Loads that were measured, kN').fill('2 1 250\n2 2 240\n2 3 255\n2 4 245\n2 7 230');
  await page.getByRole('button', { name: 'Run the model' }).click();

  const even = model.getByRole('region', { name: 'Loads to set that end even' });
  await expect(even).toContainText('each nut to its own load');
  const ends = await even.locator('tbody tr td:last-child').allTextContents();
  expect(ends).toHaveLength(12);
  for (const end of ends) expect(Math.abs(Number(end) - 290)).toBeLessThan(3);
  const other = model.getByRole('region', { name: 'With another stiffness of the gasket' });
  await expect(other).toContainText('0.25 to 4 times as stiff');
  await other.getByRole('button', { name: 'Show as table' }).click();
  await expect(other.locator('tbody tr')).toHaveCount(5);
  await expect(model.getByRole('region', { name: 'What the measured loads say' })).toContainText(
    '5 measured loads fit best',
  );
  await expectNoFaults(page, 'model with everything asked');

  const shown = model.getByRole('slider', { name: /^Step shown/ });
  await shown.focus();
  await page.keyboard.press('Home');
  await page.getByRole('button', { name: 'Step on' }).click();
  await expect(shown).toHaveValue('1');
  await page.getByRole('button', { name: 'Play the steps' }).click();
  await expect.poll(async () => Number(await shown.inputValue())).toBeGreaterThan(2);
  await page.getByRole('button', { name: 'Pause' }).click();
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await expect(page.getByRole('button', { name: 'Play the steps' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Step back' })).toBeVisible();
});
