import { expect } from '@playwright/test';
import { test } from './app.ts';
import { goTo, makeEmptyRegister, previewImport } from './steps.ts';

test('a faulty list is reported row by row and nothing is written', async ({ app, page }) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await previewImport(page, 'joints', 'joints-faulty.csv', { delimiter: ';', decimalSign: ',' });
  const faults = page.getByRole('table').filter({ hasText: 'What stands there' });
  await expect(faults.getByRole('row').filter({ hasText: 'stud count' })).toContainText('1 to 400');
  await expect(faults.getByRole('row').filter({ hasText: '330.2' })).toBeVisible();
  const write = page.getByRole('button', { name: /^Write / });
  await expect(write).toBeDisabled();
  await goTo(page, '/joints');
  await expect(page.getByText('J-1', { exact: true })).toBeHidden();
  await expect(page.getByRole('button', { name: /^All plant units/ })).toContainText('0 joints');
});

test('a file in another layout, encoding or program is named as such', async ({ app, page }) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await previewImport(page, 'joints', 'tools.csv');
  await expect(page.getByText(/This file can not be imported as it is/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Write / })).toHaveCount(0);
});

test('a form says which field holds what and what is allowed, and keeps what was typed', async ({
  app,
  page,
}) => {
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await goTo(page, '/tools/new');
  await page.getByLabel('Tool number').fill('P-9');
  await page.getByRole('main').getByLabel('Class of tool').selectOption('pump');
  await page.getByLabel('Rated pressure', { exact: true }).fill('1,200');
  await page.getByRole('button', { name: 'Save tool' }).click();
  await expect(page.getByText(/"1,200" is not a number/).first()).toBeVisible();
  await expect(page.getByLabel('Rated pressure', { exact: true })).toHaveValue('1,200');
  await page.getByLabel('Rated pressure', { exact: true }).fill('90000');
  await page.getByRole('button', { name: 'Save tool' }).click();
  await expect(page.getByText(/allowed 1 bar to 4000 bar/).first()).toBeVisible();
  await goTo(page, '/tools');
  await expect(page.getByRole('link', { name: 'P-9' })).toHaveCount(0);
});

test('a file that is not a register is named and left alone', async ({ page }) => {
  const { startApp } = await import('./app.ts');
  const { readFileSync, writeFileSync } = await import('node:fs');
  const { join } = await import('node:path');
  const app = await startApp();
  try {
    const register = join(app.folder, 'register.sqlite');
    writeFileSync(register, 'tag;unit\nJ-1;Unit 100\n');
    await app.restart();
    await page.goto(app.address);
    await expect(page.getByRole('alert')).toContainText(/not a SQLite|no SQLite|not.*register/i);
    expect(readFileSync(register, 'utf8')).toBe('tag;unit\nJ-1;Unit 100\n');
  } finally {
    await app.close();
  }
});
