import { expect, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { type App, test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { chooseTool, goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

const TAG = 'HX-310 N3';

async function setTime(app: App, page: Page, moment: string): Promise<void> {
  app.setClock(moment);
  await page.clock.setFixedTime(moment);
}

/** From the page of the joint to the form of a step, by Tab and Enter. */
async function begin(page: Page, step: string): Promise<void> {
  const steps = page.getByRole('region', { name: 'Steps from here' });
  await tabTo(page, steps.getByRole('link', { name: step, exact: true }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: step })).toBeVisible();
}

/** Says who takes it and sends it; the joint then stands in the state that is named. */
async function record(page: Page, step: string, by: string, state: string): Promise<void> {
  await typeInto(page, 'Taken by', by);
  await pressOn(page, 'button', `Record: ${step}`);
  await stands(page, state);
}

const stands = (page: Page, state: string) =>
  expect(page.getByRole('region', { name: 'State', exact: true }).getByRole('definition').first()).toHaveText(
    new RegExp(`^${state} since `),
  );

async function tighten(page: Page, when: string): Promise<void> {
  await page.getByRole('link', { name: 'Record tightening' }).click();
  for (const [part, number] of [
    ['Drive unit', 'W-1'],
    ['Cassette', 'K-46'],
    ['Reducer', 'R-1'],
    ['Pump', 'P-1'],
    ['Gauge', 'G-1'],
    ['Hose', 'H-1'],
  ] as const) {
    await chooseTool(page, part, number);
  }
  await page.getByLabel('Dialled for the final pass', { exact: true }).fill('260');
  await page.getByLabel('When it was done').fill(when);
  await page.getByLabel('Studs tightened').fill('12');
  await page.getByLabel('No nut turned in the final round').check();
  await page.getByLabel('Greta Example').check();
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page).toHaveURL(/#\/events\//);
}

test('by keyboard: a joint from its class to service, one step refused, one piece of work out of order', async ({
  app,
  page,
}) => {
  test.setTimeout(480_000);
  await setTime(app, page, '2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'technician');
  await namePerson(page, 'Otto Example', 'technician');
  await namePerson(page, 'Eva Engineer', 'engineer');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');

  await goTo(page, '/class-rules/new');
  await typeInto(page, 'Name', 'Class C');
  await typeInto(page, 'Rests on', 'mild');
  await pressOn(page, 'button', 'Save class');
  await expect(page.getByRole('alert')).toContainText('Source: needed');
  // What was typed outlives a reload.
  await page.reload();
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Class C');
  await typeInto(page, 'Source', 'Site procedure 7');
  await pressOn(page, 'button', 'Save class');
  await expect(page.getByRole('region', { name: 'Class Class C' })).toContainText('Version 1, 0 joints');

  await openJoint(page, TAG);
  await begin(page, 'Assess');
  await typeInto(page, 'Class', 'Class C');
  await typeInto(page, 'Basis of the class', 'Site procedure 7');
  await record(page, 'assess', 'Eva', 'assessed');
  await expect(page.getByRole('region', { name: 'State', exact: true })).toContainText('Class C mild');

  await begin(page, 'Schedule');
  await typeInto(page, 'Work order', 'WO-12');
  await record(page, 'schedule', 'Eva', 'scheduled');

  await begin(page, 'Isolate');
  await typeInto(page, 'Reference of the isolation', 'I-14');
  await typeInto(page, 'Proven', 'yes');
  await record(page, 'isolate', 'Otto', 'isolated');
  await expect(page.getByRole('list', { name: 'Open or due' })).toContainText('Isolation I-14 stands');

  // One person has checked which joint it is: refused with the reason, and nothing is lost of the form.
  await begin(page, 'Release');
  await expect(page.getByRole('region', { name: 'Cautions' })).toContainText('Two persons go to the joint');
  await expect(page.getByRole('region', { name: 'Could be taken for' })).toContainText('HX-310 N4');
  await typeInto(page, 'Checked by, check 1', 'Greta');
  await typeInto(page, 'How, check 1', 'tag read');
  await typeInto(page, 'Tag as seen, check 1', 'hx-310 n3');
  await typeInto(page, 'Zero energy proven at this joint', 'yes');
  await typeInto(page, 'Proven by', 'Otto');
  await typeInto(page, 'Reference of the permit', 'P-88');
  await typeInto(page, 'Taken by', 'Eva');
  await pressOn(page, 'button', 'Record: release');
  await expect(page.getByRole('alert')).toContainText(
    'one person checked which joint this is; a second one is needed',
  );
  await expectNoFaults(page, 'refused step');
  await typeInto(page, 'Checked by, check 2', 'Otto');
  await typeInto(page, 'How, check 2', 'drawing and landmark');
  await pressOn(page, 'button', 'Record: release');
  await stands(page, 'released to break');

  await begin(page, 'Break');
  await expect(page.getByRole('region', { name: 'Cautions' })).toContainText(
    'Treat the first opening as live',
  );
  await typeInto(page, 'Seized bolts', 'none');
  await record(page, 'break', 'Greta', 'broken');
  await expect(page.getByRole('region', { name: 'State', exact: true })).toContainText(
    'it must not see pressure',
  );

  // The gasket went in before anybody looked at the faces: kept, flagged, and decided by somebody else.
  await pressOn(page, 'link', 'Joints');
  await openJoint(page, TAG);
  await tabTo(page, page.getByText('Record work that was done out of order'));
  await page.keyboard.press('Enter');
  await pressOn(page, 'link', 'Make up');
  await expect(page.getByText('The joint is broken: make up does not lead on from there.')).toBeVisible();
  await typeInto(page, 'Gasket', 'new');
  await typeInto(page, 'Held against the joint’s data', 'yes');
  await typeInto(page, 'Taken by', 'Greta');
  await pressOn(page, 'checkbox', /^Make up was really done/, 'Space');
  await typeInto(page, 'How it came about', 'Faces were looked at and not written down');
  await pressOn(page, 'button', 'Record: make up');
  await stands(page, 'broken');
  const deviation = page.getByRole('region', { name: 'Deviation to decide' });
  await expect(deviation).toContainText('the joint is broken: make up does not lead on from there');
  await expect(deviation).toContainText('it would be made up');
  await expectNoFaults(page, 'joint with a deviation');
  await goTo(page, '/deviations');
  await expect(page.getByRole('row').filter({ hasText: TAG })).toContainText('make up');
  await openJoint(page, TAG);
  await typeInto(page, 'Decision', 'to be done again');
  await typeInto(page, 'Decided by', 'Greta');
  await typeInto(page, 'Why', 'Nobody can say how the faces were');
  await pressOn(page, 'button', `Decide on ${TAG}`);
  await expect(page.getByRole('alert')).toContainText('nobody decides on work they did themselves');
  await typeInto(page, 'Decided by', 'Eva');
  await pressOn(page, 'button', `Decide on ${TAG}`);
  await expect(deviation).toBeHidden();
  await stands(page, 'broken');

  await begin(page, 'Inspect');
  await typeInto(page, 'Result', 'fit for assembly');
  await record(page, 'inspect', 'Otto', 'inspected');

  await begin(page, 'Make up');
  await typeInto(page, 'Gasket', 'new');
  await typeInto(page, 'Held against the joint’s data', 'yes');
  await record(page, 'make up', 'Greta', 'made up');

  await tighten(page, '2026-03-16T08:00');
  await openJoint(page, TAG);
  await stands(page, 'tightened');

  await begin(page, 'Witness');
  await typeInto(page, 'Witness', 'Otto');
  await typeInto(page, 'Result', 'as it should be');
  await record(page, 'witness', 'Otto', 'witnessed');

  await begin(page, 'Test');
  await typeInto(page, 'Result', 'passed');
  await typeInto(page, 'Medium', 'water');
  await typeInto(page, 'Pressure', '10');
  await record(page, 'test', 'Otto', 'tested');

  await begin(page, 'Reinstate');
  for (const label of [
    'Tags removed',
    'Blinds removed',
    'Supports unlocked',
    'Guards back',
    'Insulation back',
    'Isolation lifted',
  ]) {
    await typeInto(page, label, 'yes');
  }
  await pressOn(page, 'checkbox', 'Punch items: gone through, none', 'Space');
  await record(page, 'reinstate', 'Eva', 'reinstated');

  await begin(page, 'Enter service');
  await record(page, 'enter service', 'Eva', 'in service');

  const history = page.getByRole('region', { name: 'History' });
  await expect(history).toContainText(
    'out of order: the joint is broken: make up does not lead on from there',
  );
  await expect(history.getByRole('link', { name: 'deviation decided' })).toBeVisible();
  await goTo(page, '/joints');
  await page.getByLabel('State', { exact: true }).selectOption('in service');
  await expect(page.getByRole('link', { name: TAG, exact: true })).toBeVisible();
  await expect(page.getByRole('link', { name: 'HX-310 N4', exact: true })).toBeHidden();
});
