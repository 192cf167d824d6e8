import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';

const file = (name: string) => join(import.meta.dirname, 'files', name);

export async function makeEmptyRegister(page: Page): Promise<void> {
  await page.getByLabel('Empty register for a site').check();
  await page.getByLabel('Site name').fill('Site of the test');
  await page.getByLabel('Time zone of the site').selectOption('Europe/Berlin');
  await page.getByLabel(/^Work without sign-in for now/).check();
  await page.getByRole('button', { name: 'Make the register' }).click();
  await expect(page.getByRole('heading', { name: 'Joints', level: 1 })).toBeVisible();
}

export async function openDemoPlant(page: Page): Promise<void> {
  await page.getByLabel(/^Demo plant/).check();
  await page.getByRole('button', { name: 'Open the demo plant' }).click();
  await expect(page.getByRole('heading', { name: 'Joints', level: 1 })).toBeVisible({ timeout: 45_000 });
}

export async function goTo(page: Page, route: string): Promise<void> {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, route);
}

interface Written {
  readonly delimiter?: string;
  readonly decimalSign?: string;
}

/** Chooses a file and answers every question about it; the preview is asked for, nothing is written yet. */
export async function previewImport(
  page: Page,
  kind: string,
  name: string,
  { delimiter = ',', decimalSign = '.' }: Written = {},
): Promise<void> {
  await goTo(page, '/joints');
  await goTo(page, `/import/${kind}`);
  await page.getByLabel('File', { exact: true }).setInputFiles(file(name));
  await expect(page.getByRole('button', { name: 'Preview the file' })).toBeDisabled();
  await page.getByLabel('Encoding').selectOption('utf-8');
  await page.getByLabel('Delimiter').selectOption(delimiter);
  await page.getByLabel('Decimal sign').selectOption(decimalSign);
  await page.getByLabel('Unit of length').selectOption('mm');
  await page.getByLabel('Unit of stress').selectOption('MPa');
  await page.getByLabel('Unit of pressure').selectOption('bar');
  await page.getByLabel('Unit of torque').selectOption('N.m');
  await page.getByLabel('Unit of temperature').selectOption('degC');
  await page.getByRole('button', { name: 'Preview the file' }).click();
}

export async function importFile(page: Page, kind: string, name: string, button: string): Promise<void> {
  await previewImport(page, kind, name);
  await page.getByRole('button', { name: button, exact: true }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Written.' })).toBeVisible();
}

export async function namePerson(page: Page, name: string, role: string): Promise<void> {
  await goTo(page, '/people');
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Position').fill(role);
  await page.getByRole('button', { name: 'Save person' }).click();
  await expect(page.getByRole('row').filter({ hasText: name })).toBeVisible();
}

export async function openJoint(page: Page, tag: string): Promise<void> {
  await goTo(page, '/joints');
  await page.getByRole('searchbox', { name: 'Find a joint' }).fill(tag);
  await page.getByRole('table').getByRole('link', { name: tag, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: tag })).toBeVisible();
}

export async function chooseTool(page: Page, label: string, number: string): Promise<void> {
  const field = page.getByRole('combobox', { name: label, exact: true });
  await field.click();
  await field.fill(number);
  await page.getByRole('option', { name: new RegExp(`^${number}\\s`) }).click();
  await expect(page.getByRole('combobox', { name: label, exact: true }).first()).toHaveValue(number);
}

/** A finding by its severity and title, as it stands in the margin. */
export const finding = (page: Page, severity: string, title: string) =>
  page.getByRole('article').filter({ has: page.getByRole('heading', { name: `${severity} ${title}` }) });
