import { globSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { test } from './app.ts';
import { tabTo } from './keyboard.ts';
import { goTo, importFile, makeEmptyRegister, namePerson } from './steps.ts';

const NOW = '2026-03-16T08:00:00+01:00';

/** SHA-256 of the text "as found", by sha256sum. */
const SHA_OF_AS_FOUND = 'e1d2423e1202a57a58119a5a15e98075e8489ee1065890a28b82b528b70da852';

async function scan(page: Page, text: string): Promise<void> {
  await tabTo(page, page.getByRole('textbox', { name: 'Scan or type a tool' }));
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Text of the page as it would be printed; what is hidden on paper is not in it. */
async function onPaper(page: Page): Promise<string> {
  await page.emulateMedia({ media: 'print' });
  // biome-ignore lint/performance/useDomNodeTextContent: only what is laid out counts, and textContent has the hidden too
  const text = await page.getByRole('main').innerText();
  // Not 'screen', which would hold for a printed page too.
  await page.emulateMedia({ media: null });
  return text;
}

const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

async function prepare(page: Page, app: { address: string; setClock(moment: string): void }): Promise<void> {
  app.setClock(NOW);
  await page.clock.setFixedTime(NOW);
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'tool-room keeper');
  await namePerson(page, 'Tomas Example', 'technician');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
}

test('by keyboard alone: quarantine a tool by its label, print its label and its page', async ({
  app,
  page,
}) => {
  await prepare(page, app);
  await goTo(page, '/custody');
  await expect(page.getByRole('heading', { level: 1, name: 'Custody desk' })).toBeVisible();

  // One scan that finds nothing is said, and leaves the desk as it was.
  await scan(page, 'SB:T:W-99');
  await expect(page.getByRole('status').filter({ hasText: 'No tool has the number “W-99”' })).toBeVisible();
  await expect(page.getByText('No tool is on the desk.')).toBeVisible();

  await tabTo(page, page.getByRole('radio', { name: 'Issue', exact: true }));
  for (let press = 0; press < 4; press++) await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('radio', { name: 'Quarantine' })).toBeChecked();
  await scan(page, 'sb:t:w-1');
  await expect(page.getByRole('row').filter({ hasText: 'W-1' })).toContainText('available');

  await tabTo(page, page.getByLabel('Recorded by'));
  await page.keyboard.type('Greta');
  const act = page.getByRole('button', { name: 'Quarantine W-1', exact: true });
  await tabTo(page, act);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText('reason');
  await expect(page.getByRole('row').filter({ hasText: 'W-1' })).toContainText('available');
  await tabTo(page, page.getByLabel('Reason'));
  await page.keyboard.type('Fell from the platform');
  await tabTo(page, act);
  await page.keyboard.press('Enter');
  const done = page.getByRole('status').filter({ hasText: 'Recorded: W-1 is quarantined.' });
  await expect(done).toBeVisible();

  await tabTo(page, done.getByRole('link', { name: 'W-1' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: /^W-1/ })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Margin' })).toContainText('It is quarantined');
  await expect(page.getByRole('region', { name: 'Custody' })).toContainText('Fell from the platform');

  // The page as it is printed: identity, status, due, certificate, custody and the head of the register.
  await expect(page.getByRole('region', { name: 'Certificates' }).getByRole('row')).toHaveCount(2);
  const paper = await onPaper(page);
  for (const said of [
    'W-1',
    'quarantined',
    'Serial number',
    'C-118',
    'Fell from the platform',
    'Greta Example',
    'Head of the register',
  ]) {
    expect(paper).toContain(said);
  }
  expect(paper).not.toContain('Edit tool');
  expect(pagesOf(await page.pdf({ format: 'A4', preferCSSPageSize: true }))).toBeLessThanOrEqual(2);

  await tabTo(page, page.getByRole('link', { name: 'Its label' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('img', { name: 'Code of W-1' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Print 1 label' })).toBeEnabled();
  const label = (await onPaper(page)).split('\n').filter((line) => line.trim() !== '');
  expect(label.slice(0, 2)).toEqual(['W-1', 'drive unit']);
  expect(label.at(-1)).toBe('Site of the test');
  await tabTo(page, page.getByRole('checkbox', { name: 'Each label on a page of its own' }));
  await page.keyboard.press('Space');
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pagesOf(pdf)).toBe(1);
  // 50 × 30 mm in points of 1/72 in: 141.7 × 85.0.
  const [, width = '', height = ''] =
    /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(pdf.toString('latin1')) ?? [];
  expect(Math.abs(Number(width) - 141.7)).toBeLessThan(1.5);
  expect(Math.abs(Number(height) - 85)).toBeLessThan(1.5);
});

test('a scan on the start page opens the tool; several can be laid on the desk and go out together', async ({
  app,
  page,
}) => {
  await prepare(page, app);
  await goTo(page, '/tool-room');
  await scan(page, 'P-1');
  await expect(page.getByRole('heading', { level: 1, name: /^P-1/ })).toBeVisible();

  await goTo(page, '/tool-room');
  await page.getByLabel('Lay it on the custody desk').check();
  await scan(page, 'P-1');
  await scan(page, 'SB:T:H-1');
  await page.getByRole('link', { name: '2 tools on the desk' }).click();
  await page.getByLabel('Handed over by').selectOption({ label: 'Greta Example, tool-room keeper' });
  await page.getByLabel('Handed to').selectOption({ label: 'Tomas Example, technician' });
  await page.getByLabel('Job or order').fill('WO 4711');
  await expect(page.getByRole('region', { name: 'Margin' })).toContainText('carries no pressure at all');
  await page.getByRole('button', { name: 'Issue P-1 and H-1' }).click();
  await expect(page.getByText('Recorded: P-1 and H-1 are issued.')).toBeVisible();

  // An issued tool can't go out again: named before anything is sent.
  await scan(page, 'P-1');
  await expect(page.getByRole('row').filter({ hasText: 'P-1' })).toContainText('Not possible.');
  await expect(page.getByRole('button', { name: 'Issue P-1' })).toBeDisabled();

  await goTo(page, '/tool-room');
  const away = page.getByRole('region', { name: 'Who has what' });
  await expect(away.getByRole('listitem').filter({ hasText: 'Tomas Example' })).toContainText('P-1');

  // Coming back damaged, the hose is barred at once.
  await goTo(page, '/custody');
  await page.getByRole('button', { name: 'Clear the desk' }).click();
  await page.getByRole('radio', { name: 'Return' }).check();
  await scan(page, 'H-1');
  await page.getByLabel('Recorded by').selectOption({ label: 'Greta Example, tool-room keeper' });
  await page.getByLabel('Condition').selectOption('damaged');
  await page.getByRole('button', { name: 'Take back H-1' }).click();
  await expect(page.getByText('quarantined until somebody releases it')).toBeVisible();
});

test('a tool is scrapped only after a question that names it', async ({ app, page }) => {
  await prepare(page, app);
  await goTo(page, '/custody');
  await page.getByRole('radio', { name: 'Scrap' }).check();
  await scan(page, 'H-1');
  await page.getByLabel('Recorded by').selectOption({ label: 'Greta Example, tool-room keeper' });
  await page.getByLabel('Reason').fill('Cover cut to the wire');
  await page.getByRole('button', { name: 'Scrap H-1' }).click();
  const question = page.getByRole('alertdialog', { name: 'Confirm scrapping' });
  await expect(question).toContainText('H-1');
  await expect(question.getByRole('button', { name: 'Leave as it is' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(question).toBeHidden();
  await expect(page.getByRole('row').filter({ hasText: 'H-1' })).toContainText('available');
  await page.getByRole('button', { name: 'Scrap H-1' }).click();
  await question.getByRole('button', { name: 'Scrap H-1' }).click();
  await expect(page.getByText('Recorded: H-1 is scrapped.')).toBeVisible();
});

test('a kit reserves its tools, prints its list, and fills the desk', async ({ app, page }) => {
  await prepare(page, app);
  await goTo(page, '/kits/new');
  await page.getByLabel('Name of the kit').fill('Exchanger 310');
  await page.getByLabel('Job or order').fill('WO 4711');
  await page.getByLabel('Needed from').fill('2026-03-16');
  await page.getByLabel('Needed to').fill('2026-03-18');
  await scan(page, 'W-1');
  await scan(page, 'G-1');
  await expect(page.getByRole('listitem').filter({ hasText: 'G-1' })).toBeVisible();
  await page.getByRole('button', { name: 'Save kit' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Exchanger 310/ })).toBeVisible();
  const paper = await onPaper(page);
  expect(paper).toContain('Taken');
  expect(paper).toContain('W-1');

  // Without its kit the tool stays where it is.
  await goTo(page, '/custody');
  await scan(page, 'W-1');
  await expect(page.getByRole('row').filter({ hasText: 'W-1' })).toContainText('Issue it with that kit.');

  await goTo(page, '/kits');
  await page.getByRole('link', { name: 'Exchanger 310' }).click();
  await page.getByRole('button', { name: 'Issue the kit' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'G-1' })).toBeVisible();
  await page.getByLabel('Handed over by').selectOption({ label: 'Greta Example, tool-room keeper' });
  await page.getByLabel('Handed to').selectOption({ label: 'Tomas Example, technician' });
  await page.getByRole('button', { name: 'Issue W-1 and G-1' }).click();
  await expect(page.getByText('Recorded: W-1 and G-1 are issued.')).toBeVisible();
});

test('a file is kept with a tool, and said to be changed once its content is another', async ({
  app,
  page,
}) => {
  await prepare(page, app);
  await goTo(page, '/tools');
  await page.getByRole('table').getByRole('link', { name: 'W-1', exact: true }).click();
  const files = page.getByRole('region', { name: 'Files' });
  await files.getByText('Add a file').click();
  await files
    .getByLabel('File')
    .setInputFiles({ name: 'note.exe', mimeType: 'text/plain', buffer: Buffer.from('x') });
  await expect(files.getByText('is of another kind')).toBeVisible();
  await files
    .getByLabel('File')
    .setInputFiles({ name: 'report.txt', mimeType: 'text/plain', buffer: Buffer.from('as found') });
  await files.getByLabel('Added by').selectOption({ label: 'Greta Example, tool-room keeper' });
  await files.getByRole('button', { name: 'Keep this file' }).click();
  const row = files.getByRole('row').filter({ hasText: 'report.txt' });
  await expect(row.locator('abbr')).toHaveAttribute('title', SHA_OF_AS_FOUND);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    row.getByRole('button', { name: 'report.txt' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('report.txt');
  await expect(row).toContainText('as recorded');

  const [stored = ''] = globSync(`**/${SHA_OF_AS_FOUND}`, { cwd: app.folder });
  writeFileSync(join(app.folder, stored), 'as left');
  await files.getByRole('button', { name: 'Check every file against its hash' }).click();
  await expect(row).toContainText('changed since it was recorded');
  await expect(files.getByRole('alert')).toContainText('report.txt');
  // Whoever opens the page next is told without asking.
  rmSync(join(app.folder, stored));
  await goTo(page, '/tools');
  await page.getByRole('table').getByRole('link', { name: 'W-1', exact: true }).click();
  await expect(row).toContainText('missing');
  await expect(files.getByRole('alert')).toContainText('report.txt (missing)');
});
