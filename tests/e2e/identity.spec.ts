import { expect, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { tabTo } from './keyboard.ts';
import { goTo, importFile, makeEmptyRegister, openJoint } from './steps.ts';

test.use({ viewport: { width: 800, height: 1280 }, hasTouch: true });

const TARGET = 56;

const verdict = (page: Page, role: 'status' | 'alert') => page.getByRole(role).filter({ hasText: 'tag' });
const onward = (page: Page, tag: string) => page.getByRole('button', { name: `Work at ${tag}` });

/** A scanner types what it reads and presses Enter. */
async function scan(page: Page, code: string): Promise<void> {
  const field = page.getByLabel('Tag', { exact: true });
  await expect(field).toBeFocused();
  await page.keyboard.type(code);
  await page.keyboard.press('Enter');
  await expect(field).toHaveValue('');
}

async function look(page: Page, view: string): Promise<void> {
  await expectNoFaults(page, view);
  const small = await page.locator('button:visible, input:visible').evaluateAll(
    (elements, least) =>
      elements
        .map((element) => ({ text: element.textContent, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width < least || box.height < least)
        .map(({ text }) => text),
    TARGET,
  );
  expect(small, view).toEqual([]);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow, view).toBeLessThanOrEqual(0);
}

async function openJob(page: Page): Promise<void> {
  await makeEmptyRegister(page);
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Is this my joint?' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Is this my joint?' })).toBeVisible();
  await expect(page.getByText('job opened: HX-310 N3')).toBeVisible();
}

test('the tag of the job, of a look-alike and of no joint, by a scanner and without a mouse', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await openJob(page);
  await expect(page.getByText('Nothing is scanned yet.')).toBeVisible();
  await expect(onward(page, 'HX-310 N3')).toHaveCount(0);
  await look(page, 'nothing scanned');

  await scan(page, 'SB:J:HX-310 N3');
  await expect(verdict(page, 'status')).toContainText('The tag is that of the job you opened, HX-310 N3.');
  await expect(verdict(page, 'status')).toContainText('isolation and zero energy are proven at the joint');
  await expect(page.getByRole('region', { name: 'It could be taken for' })).toContainText('HX-310 N4');
  await look(page, 'the right joint');

  // The one beside it: said at once, and no way on to the work from there.
  await scan(page, 'sb:j:hx-310 n4');
  await expect(verdict(page, 'alert')).toContainText(
    'The tag you scanned is HX-310 N4, the job you opened is HX-310 N3: not the same.',
  );
  await expect(onward(page, 'HX-310 N3')).toHaveCount(0);
  await expect(onward(page, 'HX-310 N4')).toHaveCount(0);
  await look(page, 'a look-alike');

  await scan(page, 'SB:T:HX-310 N3');
  await expect(verdict(page, 'alert')).toContainText('No joint has the tag “SB:T:HX-310 N3”');
  await look(page, 'no joint');

  await scan(page, 'SB:J:HX-310 N3');
  await tabTo(page, onward(page, 'HX-310 N3'));
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#\/at\//);
});

test('the same by touch, with codes pasted into the field', async ({ app, page }) => {
  await page.goto(app.address);
  await openJob(page);
  const field = page.getByLabel('Tag', { exact: true });
  await field.fill(' SB:J:HX-310 N4\n');
  await page.getByRole('button', { name: 'Look', exact: true }).tap();
  await expect(verdict(page, 'alert')).toContainText('not the same');
  await field.fill('HX-999');
  await page.getByRole('button', { name: 'Look', exact: true }).tap();
  await expect(verdict(page, 'alert')).toContainText('No joint has the tag “HX-999”');
  await field.fill('SB:J:HX-310 N3');
  await page.getByRole('button', { name: 'Look', exact: true }).tap();
  await onward(page, 'HX-310 N3').tap();
  await expect(page).toHaveURL(/#\/at\//);
});

test('without a job open, a tag leads to its joint and says that nothing was held against it', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await goTo(page, '/at');
  await page.getByRole('button', { name: 'Is this my joint?' }).tap();
  await scan(page, 'HX-310 N4');
  await expect(verdict(page, 'status')).toContainText('No job is open to hold it against.');
  await expect(onward(page, 'HX-310 N4')).toBeVisible();
});

test('a tag is printed with its code, its joint and nothing that is out of date by evening', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Print its tag' }).click();
  await expect(page.getByRole('img', { name: 'Code of HX-310 N3' })).toBeVisible();
  await page.getByRole('combobox', { name: 'Add a joint' }).fill('HX-310 N4');
  await page.getByRole('option', { name: /HX-310 N4/ }).click();
  await page.getByLabel('Each tag on a page of its own').check();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.joint-tag')).toHaveCount(2);
  await expect(page.locator('.joint-tag').first()).toContainText('HX-310 N3');
  await expect(page.getByRole('button', { name: /^Print/ })).toBeHidden();
  await expect(page.getByRole('img', { name: 'Code of HX-310 N4' })).toBeVisible();
});
