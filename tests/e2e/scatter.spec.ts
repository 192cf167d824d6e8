import { expect } from '@playwright/test';
import { SEIZING } from '../../seed/faults.ts';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { openJoint } from './steps.ts';

const INPUTS = [
  ['Stiffness of the gasket', '20000'],
  ['Radius of the gasket’s reaction', '130'],
  ['Width of the gasket', '15'],
  ['Radial width of the ring', '100'],
  ['Thickness of the ring', '60'],
  ['Radius of the ring’s centroid', '180'],
  ['Load to set', '290'],
] as const;

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
