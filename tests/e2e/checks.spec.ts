import { expect } from '@playwright/test';
import { test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { finding, goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

const NOW = '2026-03-16T08:00:00+01:00';

// A trace takes a picture of the page with every key, which costs more than the test itself.
test.use({ trace: 'off' });

test('by keyboard alone: a list is entered, a failed check by it bars the wrench, and settings refuse it', async ({
  app,
  page,
}) => {
  app.setClock(NOW);
  await page.clock.setFixedTime(NOW);
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'tool-room keeper');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  // The site's own list, from the tool's instructions.
  await goTo(page, '/checklists/new');
  await expect(page.getByRole('heading', { level: 1, name: 'New checklist' })).toBeVisible();
  await typeInto(page, 'Name', 'Leak test of wrenches');
  await typeInto(page, 'Kind', 'leak');
  await pressOn(page, 'checkbox', 'drive unit', 'Space');
  await typeInto(page, 'Question 1', 'No oil at the piston rod');
  await pressOn(page, 'button', 'Add a question');
  await expect(page.getByLabel('Question 2', { exact: true })).toBeFocused();
  await page.keyboard.type('Relief valve opens at');
  await typeInto(page, 'Answer to question 2', 'pressure');
  await typeInto(page, 'Least, question 2', '690');
  await typeInto(page, 'Most, question 2', '7O0');
  await pressOn(page, 'button', 'Save checklist');
  // Without its source and with a letter for a digit it is not saved, and nothing typed is lost.
  const refused = page.getByRole('alert');
  await expect(refused).toContainText('Source: needed');
  await expect(refused).toContainText('Most, question 2: “7O0”');
  await expect(page.getByLabel('Question 2', { exact: true })).toHaveValue('Relief valve opens at');
  await typeInto(page, 'Source', 'Instructions of the wrench, page 4');
  await page.getByLabel('Most, question 2').fill('700');
  await pressOn(page, 'button', 'Save checklist');
  await expect(page.getByRole('heading', { level: 1, name: /^Leak test of wrenches/ })).toBeVisible();
  await expect(page.getByRole('row').filter({ hasText: 'Relief valve opens at' })).toContainText(
    'at least 690 bar and at most 700 bar',
  );

  // The wrench is found by its label and checked by the list.
  await goTo(page, '/tool-room');
  await typeInto(page, 'Scan or type a tool', 'W-1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: /^W-1/ })).toBeVisible();
  await pressOn(page, 'link', 'Record a check');
  await typeInto(page, 'Checklist', 'Leak');
  const cautions = page.getByRole('region', { name: 'Cautions' });
  await expect(cautions).toContainText('Follow the tool’s own instructions');
  await expect(cautions).toContainText('Never feel for a leak');
  // One answer is "no", the other is not given: it can't pass, and says why before and after it is tried.
  await tabTo(
    page,
    page.getByRole('group', { name: '1. No oil at the piston rod' }).getByRole('radio', { checked: true }),
  );
  await page.keyboard.press('ArrowLeft');
  await expect(page.getByRole('radio', { name: 'no', exact: true })).toBeChecked();
  await typeInto(page, 'Pressure held', '690');
  await typeInto(page, 'Held for, minutes', '5');
  await typeInto(page, 'Fell by, advance side', '45');
  await pressOn(page, 'radio', 'passed', 'Space');
  await expect(page.getByRole('status').filter({ hasText: 'can not be recorded as passed' })).toContainText(
    'an answer to "Relief valve opens at"',
  );
  await typeInto(page, 'Checked by', 'Greta');
  await pressOn(page, 'button', 'Record the check');
  await expect(page.getByRole('alert')).toContainText('yes to "No oil at the piston rod"');
  await expect(page.getByLabel('Fell by, advance side', { exact: true })).toHaveValue('45');
  await tabTo(page, page.getByRole('radio', { name: 'passed' }));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText('W-1 is quarantined with this record')).toBeVisible();
  await pressOn(page, 'button', 'Record the failed check');
  const done = page.getByRole('status').filter({ hasText: 'Recorded: Leak test of wrenches, failed.' });
  await expect(done).toContainText('W-1 is quarantined.');
  await expect(done).toBeFocused();

  // The failed check is the evidence of a case on it.
  await pressOn(page, 'link', 'Open a case on W-1');
  await expect(page.getByRole('heading', { level: 1, name: 'Open a case' })).toBeVisible();
  await expect(page.getByLabel('What says so')).toHaveValue(/^check:/);

  // In the choice of tools it stands behind those that suit, says why, and can be chosen to look at.
  await openJoint(page, 'HX-310 N3');
  await pressOn(page, 'link', 'Work out a setting');
  await expect(page.getByRole('heading', { name: 'Findings' })).toBeVisible();
  await tabTo(page, page.getByRole('combobox', { name: 'Drive unit', exact: true }));
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('option', { name: /^W-1/ })).toContainText('does not suit: Barred from use');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('combobox', { name: 'Drive unit', exact: true })).toHaveValue('W-1');
  await expect(finding(page, 'Refusal', 'Barred from use')).toContainText('W-1');
  await expect(page.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();
  await tabTo(page, page.getByRole('combobox', { name: 'Cassette', exact: true }));
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('option')).toContainText([
    'none',
    'suits, with reducer R-1',
    'does not suit: Opening too large for the nut',
  ]);
});
