import { writeFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { test } from './app.ts';
import { pressOn, typeInto } from './keyboard.ts';
import { goTo } from './steps.ts';

const LIST = [
  'number,joint,scope,test pack,not before,finished by,after',
  'X-1,J-300-001,break and make,TP-9,,,',
  'X-2,J-300-002,make,TP-9,,,X-1',
  'X-3,J-999-999,make,TP-9,,,',
  'X-4,J-300-003,make,TP-9,2026-12-09,2026-12-07,',
].join('\n');

test('from an imported list to the board: faulty rows are named, the rest is planned and seen', async ({
  demo,
  page,
}, testInfo) => {
  const file = testInfo.outputPath('scope.csv');
  writeFileSync(file, LIST);
  await page.goto(demo.address);
  await goTo(page, '/plan/campaigns');
  await page.getByRole('table').getByRole('link').first().click();
  await page.getByRole('link', { name: 'Import jobs' }).click();
  await expect(page.getByLabel('Campaign the jobs are of')).not.toHaveValue('');
  await page.getByLabel('File', { exact: true }).setInputFiles(file);
  await page.getByLabel('Encoding').selectOption('utf-8');
  await page.getByLabel('Delimiter').selectOption(',');
  await page.getByRole('button', { name: 'Preview the file' }).click();
  const faults = page.getByRole('table').last();
  await expect(faults).toContainText('the tag of a joint on the register');
  await expect(faults).toContainText('later than the earliest start');
  await expectNoFaults(page, 'preview of jobs');
  await page.getByLabel('Leave out the 2 faulty rows').check();
  await page.getByRole('button', { name: 'Write 2 jobs' }).click();
  await page.getByRole('link', { name: 'To the jobs' }).click();
  await page.getByLabel('Find a job').fill('X-');
  await expect(page.getByRole('table').locator('tbody tr')).toHaveCount(2);

  await page.getByRole('link', { name: 'Board', exact: true }).first().click();
  const packs = page.getByRole('region', { name: 'Test packs' });
  const own = packs.getByRole('row', { name: /TP-9/ });
  await expect(own).toContainText('0 of 2');
  await expect(own).toContainText('not closed yet: X-1, X-2');
  await own.getByRole('button', { name: 'TP-9' }).click();
  const jobs = page.getByRole('region', { name: 'Jobs of TP-9' });
  await expect(jobs.locator('tbody tr')).toHaveCount(2);
  await expect(jobs.getByRole('row', { name: /X-2/ })).toContainText('waits for X-1');
  await expectNoFaults(page, 'board of a pack');
});

test('by keyboard: a job is dropped with its reason, and the change is told with date and person', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  await goTo(page, '/plan/campaigns');
  await pressOn(page, 'link', 'Reformer shutdown (invented)');
  await pressOn(page, 'link', 'R-102');
  await pressOn(page, 'link', 'Edit the job');
  await pressOn(page, 'button', 'Save job');
  await expect(page.getByRole('alert')).toBeVisible();
  await pressOn(page, 'checkbox', /^Dropped/, 'Space');
  await typeInto(page, 'Changed by', 'Oskar');
  await typeInto(page, 'Reason', 'flange is not opened this year');
  await pressOn(page, 'button', 'Save job');
  const history = page.getByRole('region', { name: 'What changed' }).or(page.getByRole('table'));
  await expect(history.first()).toContainText('dropped from the scope: no → yes');
  await pressOn(page, 'link', 'What changed');
  await expect(page.getByRole('row', { name: /R-102/ }).first()).toContainText('Oskar Brennfield');
  await expect(page.getByRole('row', { name: /R-102/ }).first()).toContainText(
    'flange is not opened this year',
  );
  await expectNoFaults(page, 'what changed');
});
