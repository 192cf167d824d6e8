import { expect } from '@playwright/test';
import { test } from './app.ts';
import { chooseTool, finding, goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

test('a joint from a list is set, tightened, broken out, and found again after a restart', async ({
  app,
  page,
}) => {
  app.setClock('2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'technician');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');

  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await chooseTool(page, 'Drive unit', 'W-1');
  await chooseTool(page, 'Cassette', 'K-46');
  await chooseTool(page, 'Pump', 'P-1');
  await chooseTool(page, 'Gauge', 'G-1');
  await chooseTool(page, 'Hose', 'H-1');

  // 46 mm does not take a 1-7/16 in nut; the reducer on the register does, and the refusal names it.
  const tooLarge = finding(page, 'Refusal', 'Opening too large for the nut');
  await expect(tooLarge).toContainText('R-1');
  await expect(page.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();
  await chooseTool(page, 'Reducer', 'R-1');
  await expect(tooLarge).toBeHidden();

  const setting = page.getByRole('region', { name: 'Setting', exact: true });
  await expect(setting).toContainText('260');
  await expect(setting).toContainText('bar');
  await expect(setting).toContainText('384');
  const passes = page.getByRole('region', { name: /^Passes/ });
  for (const dial of ['90', '170', '260']) {
    await expect(passes.getByRole('cell', { name: dial, exact: true }).first()).toBeVisible();
  }

  await page.getByLabel('Issued by').selectOption({ label: 'Greta Example, technician' });
  await page.getByRole('button', { name: 'Issue this setting' }).click();
  await expect(page.getByText('S-0001').first()).toBeVisible();

  await page.getByRole('link', { name: 'Record tightening' }).click();
  await page.getByLabel('Dialled for the final pass', { exact: true }).fill('260');
  await page.getByLabel('When it was done').fill('2026-03-16T07:40');
  await page.getByLabel('Studs tightened').fill('12');
  await page.getByLabel('No nut turned in the final round').check();
  await page.getByLabel('Greta Example').check();
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page).toHaveURL(/#\/events\//);

  app.setClock('2026-09-20T10:00:00+02:00');
  await page.reload();
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Record breakout' }).click();
  await page.getByLabel('When it was done').fill('2026-09-20T09:30');
  await page.getByLabel('Greta Example').check();
  await chooseTool(page, 'Drive unit', 'W-1');
  await chooseTool(page, 'Cassette', 'K-46');
  await chooseTool(page, 'Reducer', 'R-1');
  await chooseTool(page, 'Pump', 'P-1');
  await chooseTool(page, 'Gauge', 'G-1');
  await chooseTool(page, 'Hose', 'H-1');
  for (let stud = 1; stud <= 11; stud++) {
    await page.getByLabel(`Stud ${stud} reading`).fill(String(290 + stud * 10));
  }
  await page.getByLabel('Stud 12 outcome').selectOption('cut');
  await page.getByRole('button', { name: 'Record breakout' }).click();
  await expect(page).toHaveURL(/#\/events\//);

  await app.restart();
  await page.goto(app.address);
  await openJoint(page, 'HX-310 N3');
  const history = page.getByRole('region', { name: 'History' });
  await expect(history.getByRole('link', { name: 'tightening', exact: true })).toBeVisible();
  await expect(history.getByRole('link', { name: 'breakout', exact: true })).toBeVisible();
  await expect(history.getByRole('link', { name: 'setting issued' })).toBeVisible();

  const chart = page.getByRole('region', { name: 'Installed and breakout torque' });
  await expect(chart.getByRole('img', { name: /installed torque in the median/ })).toBeVisible();
  // Eleven readings of 300 to 400 bar: the median, 350 bar, is −5.73214 + 1.49956 × 350 = 519.1 N·m on worked
  // joint A's certificate line; the largest, 400 bar, is 594.1 N·m.
  await chart.getByRole('button', { name: 'Show as table' }).click();
  const broken = chart.getByRole('row').filter({ hasText: 'breakout, median' });
  await expect(broken.getByRole('cell').nth(1)).toHaveText(/^519\.1/);
  await expect(broken.getByRole('cell').nth(2)).toHaveText(/^594\.1/);
  await expect(broken.getByRole('cell').nth(3)).toHaveText('11');
  await expect(broken.getByRole('cell').nth(4)).toHaveText('1');
});

test('a lapsed certificate is refused, one that lapses during the job is warned of, and both can be recorded', async ({
  app,
  page,
}) => {
  app.setClock('2027-01-09T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'technician');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  await chooseTool(page, 'Drive unit', 'W-1');
  const lapses = finding(page, 'Warning', 'Certificate lapses before the job ends');
  const lapsed = finding(page, 'Refusal', 'Certificate lapsed');
  await expect(lapses).toBeHidden();
  await page.getByLabel('Job ends on').fill('2027-01-12');
  await expect(lapses.filter({ hasText: 'C-118' })).toBeVisible();
  await expect(lapsed).toBeHidden();
  await page.getByLabel('Job starts on').fill('2027-01-10');
  await expect(lapsed.filter({ hasText: 'C-118' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();

  app.setClock('2027-01-10T15:00:00+01:00');
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Record tightening' }).click();
  await page.getByLabel('Dialled for the final pass', { exact: true }).fill('260');
  await page.getByLabel('Studs tightened').fill('12');
  await page.getByLabel('When it was done').fill('2027-01-10T14:30');
  await page.getByLabel('Greta Example').check();
  await chooseTool(page, 'Drive unit', 'W-1');
  await page.getByRole('button', { name: 'Record tightening' }).click();
  await expect(page.getByText('recorded without an issued setting')).toBeVisible();
  await expect(page.getByText(/Certificate lapsed/).first()).toBeVisible();
});

test('an inch nut is refused on a 36 mm opening and taken by its nominal one', async ({ app, page }) => {
  app.setClock('2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  for (const [number, size, unit] of [
    ['K-36', '36', 'mm'],
    ['K-36.5', '1-7/16', 'in'],
  ] as const) {
    await goTo(page, '/tools/new');
    await page.getByLabel('Tool number').fill(number);
    await page.getByRole('main').getByLabel('Class of tool').selectOption('cassette');
    await page.getByLabel('Opening, across flats', { exact: true }).fill(size);
    await page.getByLabel('Unit of opening, across flats').selectOption(unit);
    await page.getByLabel('Opening above nominal', { exact: true }).fill('0.3');
    await page.getByLabel('Family').fill('F2');
    await page.getByRole('button', { name: 'Save tool' }).click();
    await expect(page.getByRole('heading', { level: 1, name: number })).toBeVisible();
  }
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  const tooSmall = finding(page, 'Refusal', 'Opening too small for the nut');
  await chooseTool(page, 'Cassette', 'K-36');
  await expect(tooSmall).toBeVisible();
  await chooseTool(page, 'Cassette', 'K-36.5');
  await expect(tooSmall).toBeHidden();
  await expect(finding(page, 'Refusal', 'Opening too large for the nut')).toBeHidden();
  await expect(page.getByRole('combobox', { name: 'Cassette' })).toHaveValue('K-36.5');
});
