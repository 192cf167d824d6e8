import { expect, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { goTo } from './steps.ts';

const result = (page: Page) => page.getByRole('region', { name: 'Result' });

test('a history is signed, verified, held against a head from paper and handed on, by keyboard alone', async ({
  demo,
  page,
}) => {
  test.setTimeout(150_000);
  await page.goto(demo.address);
  await goTo(page, '/verify');

  // The head as it would stand on a page printed now.
  const printed = await page.locator('.print-foot').textContent();
  const [, records = '', head = ''] = /over (.+?) records ((?:[0-9a-f]{4} ?){16})/.exec(printed ?? '') ?? [];
  expect(head.replaceAll(' ', '')).toMatch(/^[0-9a-f]{64}$/);

  await pressOn(page, 'button', 'Verify');
  await expect(page.getByRole('heading', { name: 'It holds' })).toBeVisible({ timeout: 60_000 });
  await expect(result(page)).toContainText(`All ${records} records follow one another without a gap`);
  await expect(result(page)).toContainText('No head from outside was compared');
  await expectNoFaults(page, 'verified');

  // A record is signed from its joint's history.
  await goTo(page, '/joints');
  await page.getByRole('table').locator('a[href^="#/joints/"]').first().press('Enter');
  const work = page.getByRole('region', { name: 'History' }).locator('a[href^="#/events/"]').first();
  await tabTo(page, work);
  await page.keyboard.press('Enter');
  const doer = (await page.locator('dt:has-text("Done by") + dd').textContent())?.split(', ')[0] ?? '';
  await expect(page.getByText('Nobody has signed this record.')).toBeVisible();
  await pressOn(page, 'button', 'Sign this record');
  const dialog = page.getByRole('dialog', { name: 'Sign this record' });
  await expect(dialog).toContainText('The signature binds to exactly this content');
  await expectNoFaults(page, 'signing');
  await tabTo(page, dialog.getByRole('button', { name: 'Sign', exact: true }));
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert')).toHaveText('Choose what the signature says.');
  // Coming from below, a group of which none is chosen is entered at its last; from there on round to its first.
  await tabTo(page, dialog.getByRole('radio').last());
  await page.keyboard.press('ArrowDown');
  // Somebody who did not do it can not sign for having done it.
  const signer = dialog.getByLabel('Signed by');
  const names = await signer.locator('option').allTextContents();
  const other = names.find((name) => name !== 'Choose a person' && !name.startsWith(doer)) ?? '';
  await tabTo(page, signer);
  await page.keyboard.type(other);
  await tabTo(page, dialog.getByRole('button', { name: 'Sign', exact: true }));
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert')).toContainText(
    'Only who is named in the record signs for having done it',
  );
  await tabTo(page, signer);
  await page.keyboard.type(doer);
  await tabTo(page, dialog.getByRole('button', { name: 'Sign', exact: true }));
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  const signatures = page.getByRole('region', { name: 'Signatures' });
  await expect(signatures).toContainText(`${doer} did it`);
  await expect(signatures).toContainText('by name only');
  await pressOn(page, 'link', 'The record as it was hashed');
  await expect(page.getByRole('heading', { level: 1, name: /^Record / })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Text of the record' })).toContainText('"recordedBy": null');
  await expectNoFaults(page, 'record');

  // The printed head is still there, two records ago.
  await goTo(page, '/verify');
  await typeInto(page, 'Over how many records', '3');
  await pressOn(page, 'button', 'Verify');
  await expect(page.getByRole('alert')).toContainText('says something only beside a head');
  await page.getByLabel('Over how many records').fill('');
  await typeInto(page, 'Head from a printed page, an export or a backup', head.slice(0, 19));
  await pressOn(page, 'radio', /^The chain/, 'ArrowDown');
  await expect(page.getByRole('radio', { name: /^Everything/ })).toBeChecked();
  await pressOn(page, 'button', 'Verify');
  await expect(page.getByRole('progressbar', { name: 'Reading the history' })).toBeVisible();
  await pressOn(page, 'button', 'Cancel');
  await expect(result(page)).toContainText('was cancelled. Nothing is known from it.');
  await pressOn(page, 'radio', /^Everything/, 'ArrowUp');
  await expect(page.getByRole('radio', { name: /^The chain/ })).toBeChecked();
  await pressOn(page, 'button', 'Verify');
  await expect(result(page)).toContainText('This history had it, and went on from there', {
    timeout: 60_000,
  });
  await expect(result(page)).toContainText(`after ${records} records`);
  await expect(result(page)).not.toContainText('No head from outside was compared');

  // A head of elsewhere.
  await page.getByLabel('Head from a printed page, an export or a backup').fill('0123 4567 89ab cdef');
  await pressOn(page, 'button', 'Verify');
  await expect(page.getByRole('heading', { name: 'It does not hold' })).toBeVisible({ timeout: 60_000 });
  await expect(result(page)).toContainText('head not reached');
  await expectNoFaults(page, 'a head of elsewhere');

  // An export, handed on.
  await pressOn(page, 'button', 'Write an export');
  await expect(page.getByRole('heading', { name: 'The export is written' })).toBeVisible({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await pressOn(page, 'button', 'Save a copy');
  expect((await download).suggestedFilename()).toMatch(/^history-\d{8}T\d{6}Z\.jsonl$/);

  // What was refused and what was signed stands in the audit trail.
  await goTo(page, '/audit');
  await tabTo(page, page.getByLabel('Kind'));
  await page.keyboard.type('refused');
  await expect(page.getByRole('row').nth(1)).toContainText('event.sign');
  await expect(page.getByRole('row').nth(1)).toContainText('by name only');
  await tabTo(page, page.getByLabel('Kind'));
  // The last of the kinds; letters typed within a second of the ones before would be taken as one word.
  await page.keyboard.press('End');
  await expect(page.getByRole('row').nth(1)).toContainText(`${doer} did it, by name only`);
  await tabTo(page, page.getByLabel('Person'));
  await page.keyboard.type(other);
  await expect(page.getByText('Nothing of this kind is on the register.')).toBeVisible();
  await expectNoFaults(page, 'audit trail');
});
