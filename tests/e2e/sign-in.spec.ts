import { expect, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { type App, test } from './app.ts';
import { pressOn, tabTo, typeInto } from './keyboard.ts';
import { chooseTool, goTo, importFile, openJoint } from './steps.ts';

const TAG = 'HX-310 N3';
const ADA = { name: 'Ada Example', secret: 'rain on the tank farm' };
const EVA = { name: 'Eva Engineer', first: 'given over the counter', secret: 'blue valve by the river' };
const TOM = { name: 'Tom Technician', first: 'given beside the crane', secret: 'nine nuts in a bucket' };

const banner = (page: Page) => page.getByRole('banner');

async function setTime(app: App, page: Page, moment: string): Promise<void> {
  app.setClock(moment);
  await page.clock.setSystemTime(moment);
}

/** Over whatever stands in a field already. */
async function typeOver(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, page.getByLabel(label, { exact: true }));
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}

async function makeWithAdministrator(page: Page): Promise<void> {
  await expect(page.getByRole('radio', { name: /^Everybody signs in/ })).toBeChecked();
  await typeInto(page, 'Site name', 'Site of the test');
  await typeInto(page, 'Time zone of the site', 'Europe/Berlin');
  await typeInto(page, 'Name of the administrator', ADA.name);
  await typeInto(page, 'Secret', 'too short');
  await pressOn(page, 'button', 'Make the register');
  await expect(page.getByRole('alert')).toContainText('Secret: at least 12 characters');
  await expectNoFaults(page, 'first start with a secret that is too short');
  await typeOver(page, 'Secret', ADA.secret);
  await pressOn(page, 'button', 'Make the register');
  await expect(page.getByRole('heading', { name: 'Joints', level: 1 })).toBeVisible();
  await expect(banner(page)).toContainText(`${ADA.name}, administrator`);
}

/** The list names a person as the frame names whoever is signed in. */
async function openPerson(page: Page, who: string): Promise<void> {
  await goTo(page, '/people');
  await tabTo(page, page.getByRole('table').getByRole('link', { name: who, exact: true }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: who })).toBeVisible();
}

/** A person with roles, and a first secret that has to be changed. */
async function name(page: Page, who: typeof EVA, position: string, roles: readonly string[]): Promise<void> {
  await goTo(page, '/people');
  await typeInto(page, 'Name', who.name);
  await typeInto(page, 'Position', position);
  await pressOn(page, 'button', 'Save person');
  await openPerson(page, who.name);
  for (const role of roles) await pressOn(page, 'checkbox', new RegExp(`^${role} `), 'Space');
  await pressOn(page, 'button', 'Save roles');
  await expect(page.getByRole('status').filter({ hasText: 'The roles are saved' })).toBeVisible();
  await typeInto(page, 'Secret to give', who.first);
  await pressOn(page, 'button', 'Give the secret');
  await expect(page.getByRole('status').filter({ hasText: 'The secret is given' })).toBeVisible();
  await expect(page.getByLabel('Secret to give')).toHaveValue('');
}

async function signOut(page: Page): Promise<void> {
  await pressOn(page, 'button', 'Sign out');
  await expect(page.getByRole('heading', { level: 1, name: 'Sign in' })).toBeVisible();
}

async function trySecret(page: Page, who: string, secret: string): Promise<void> {
  await typeOver(page, 'Name', who);
  await typeOver(page, 'Secret', secret);
  await page.keyboard.press('Enter');
}

async function signInFirst(page: Page, who: typeof EVA): Promise<void> {
  await trySecret(page, who.name, who.first);
  const cover = page.getByRole('dialog', { name: 'A secret of your own' });
  await expect(cover).toBeVisible();
  await expectNoFaults(page, 'own secret asked for');
  await typeInto(page, 'Secret you were given', who.first);
  await typeInto(page, 'New secret', who.secret);
  await pressOn(page, 'button', 'Change the secret');
  await expect(cover).toBeHidden();
  await expect(banner(page)).toContainText(who.name);
}

async function openSetting(page: Page): Promise<void> {
  await openJoint(page, TAG);
  await page.getByRole('link', { name: 'Work out a setting' }).click();
}

async function chooseTools(page: Page): Promise<void> {
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
}

test('by keyboard: an administrator first, people with roles, wrong secrets and their wait, and a refusal set aside by an engineer alone', async ({
  app,
  page,
}) => {
  test.setTimeout(240_000);
  const inStorage = () => page.evaluate(() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }]));
  await page.clock.install({ time: '2026-03-16T08:00:00+01:00' });
  await setTime(app, page, '2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeWithAdministrator(page);

  await name(page, EVA, 'joint integrity engineer', ['engineer', 'keeper']);
  await name(page, TOM, 'contractor', ['technician']);
  // By EN 1591-4 five years at most, whatever the paper says.
  await pressOn(page, 'link', 'Record a competence');
  await typeInto(page, 'Scheme', 'EN 1591-4');
  await typeInto(page, 'Number of the certificate', 'BC-77');
  await tabTo(page, page.getByLabel('Issued on', { exact: true }));
  await page.keyboard.type('01102021');
  await pressOn(page, 'checkbox', 'hydraulic wrench', 'Space');
  await pressOn(page, 'button', 'Save competence');
  const papers = page.getByRole('region', { name: 'Competences' });
  await expect(papers.getByRole('row').filter({ hasText: 'BC-77' })).toContainText('expired');
  await expectNoFaults(page, 'person with roles and a competence that has expired');
  await goTo(page, '/people');
  await expect(page.getByRole('row').filter({ hasText: TOM.name })).toContainText(
    'first secret, not changed',
  );
  await expectNoFaults(page, 'people with roles');

  await signOut(page);
  await expectNoFaults(page, 'sign in');
  for (let wrong = 1; wrong <= 5; wrong++) {
    await trySecret(page, TOM.name, `not the secret ${wrong}`);
    await expect(page.getByRole('alert')).toContainText('Nobody is signed in');
    await expect(page.getByLabel('Secret', { exact: true })).toHaveValue('');
    await expect(page.getByRole('button', { name: 'Sign in' })).toBeEnabled();
  }
  await trySecret(page, TOM.name, TOM.first);
  await expect(page.getByRole('alert')).toContainText('Too many wrong secrets');
  await expectNoFaults(page, 'wait after wrong secrets');
  await setTime(app, page, '2026-03-16T08:01:00+01:00');
  await signInFirst(page, TOM);
  await expect(banner(page)).toContainText('technician');
  await signOut(page);

  await signInFirst(page, EVA);
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');
  await signOut(page);

  // The certificates end on 9 and 11 January 2027.
  await setTime(app, page, '2027-01-10T08:00:00+01:00');
  await trySecret(page, TOM.name, TOM.secret);
  await openSetting(page);
  const issue = page.getByRole('region', { name: 'Issue', exact: true });
  await expect(issue.getByRole('button', { name: 'Issue this setting' })).toBeDisabled();
  await expect(issue).toContainText('Settings are issued by planner or engineer');
  await expect(issue.getByRole('button', { name: 'Override a refusal' })).toBeHidden();
  await openPerson(page, EVA.name);
  await expect(page.getByText('Roles and secrets are given by an administrator.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save roles' })).toBeHidden();
  await typeOver(page, 'Position', 'somebody else');
  await pressOn(page, 'button', 'Save person');
  await expect(page.getByRole('alert')).toContainText('This is for planner or administrator');
  await signOut(page);

  await trySecret(page, EVA.name, EVA.secret);
  await openSetting(page);
  await chooseTools(page);
  await expect(issue).toContainText('they may be overridden with a reason');
  await expect(issue.getByLabel('Issued by')).toHaveValue(EVA.name);
  await pressOn(page, 'button', 'Override a refusal');
  const dialog = page.getByRole('dialog', { name: `Override refusals, ${TAG}` });
  await expect(dialog).toContainText(
    'engineer may; they answer for it that the tool is still within its limits',
  );
  await expectNoFaults(page, 'override');
  const send = dialog.getByRole('button', { name: `Override and issue as ${EVA.name}` });
  await expect(send).toBeDisabled();
  // Left with Escape, nothing is issued and the reason is kept.
  await typeInto(page, 'Reason to override: Certificate lapsed', 'Checked against the master ');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await pressOn(page, 'button', 'Override a refusal');
  await tabTo(page, page.getByLabel('Reason to override: Certificate lapsed'));
  await page.keyboard.press('Control+End');
  await page.keyboard.type('gauge today');
  await pressOn(page, 'button', `Override and issue as ${EVA.name}`);
  await expect(page).toHaveURL(/#\/settings\//);
  const aside = page.getByRole('region', { name: 'Issued against a refusal' });
  await expect(aside).toContainText(`Overridden by ${EVA.name}`);
  await expect(aside).toContainText('Reason: Checked against the master gauge today');
  await expectNoFaults(page, 'issued against a refusal');
  await page.emulateMedia({ media: 'print' });
  await expect(aside).toBeVisible();
  await expect(aside).toContainText('Reason: Checked against the master gauge today');
  await page.emulateMedia({ media: 'screen' });

  // A signature is the signed-in person's own, and asks for the secret once more.
  await pressOn(page, 'button', 'Sign this record');
  const signing = page.getByRole('dialog', { name: 'Sign this record' });
  await expect(signing).toContainText(`Signed by ${EVA.name}`);
  await tabTo(page, signing.getByRole('radio', { name: /^I did this work/ }));
  await page.keyboard.press('Space');
  for (const [secret, signed] of [
    ['not the secret', false],
    [EVA.secret, true],
  ] as const) {
    await typeInto(page, 'Your secret, once more', secret);
    await page.keyboard.press('Enter');
    if (!signed) await expect(signing.getByRole('alert')).toContainText('It was not signed');
  }
  await expect(page.getByRole('region', { name: 'Signatures' })).toContainText(`${EVA.name} did it`);
  await expect(page.getByRole('region', { name: 'Signatures' })).toContainText('signed with their secret');
  await goTo(page, '/audit');
  for (const told of ['Certificate lapsed', 'This is for planner or administrator', 'wrong secret']) {
    await expect(page.getByRole('table')).toContainText(told);
  }

  expect(await inStorage()).not.toMatch(
    new RegExp([EVA.secret, TOM.secret, ADA.secret, EVA.first].join('|')),
  );
});

test('what was typed outlives being signed out: after idling, by the own button, and by a reload', async ({
  app,
  page,
}) => {
  test.setTimeout(120_000);
  await page.clock.install({ time: '2026-03-16T08:00:00+01:00' });
  await setTime(app, page, '2026-03-16T08:00:00+01:00');
  await page.goto(app.address);
  await makeWithAdministrator(page);
  await openPerson(page, ADA.name);
  await pressOn(page, 'link', 'Record a competence');
  await typeInto(page, 'Scheme', 'Site scheme');

  app.setClock('2026-03-16T08:31:00+01:00');
  await page.clock.fastForward('31:00');
  const cover = page.getByRole('dialog', { name: 'Signed out' });
  await expect(cover).toContainText('after 30 minutes in which nobody works at it');
  await expectNoFaults(page, 'signed out after idling');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(cover).toBeVisible();
  await expect(cover.getByLabel('Name', { exact: true })).toHaveValue(ADA.name);
  await typeInto(page, 'Secret', ADA.secret);
  await page.keyboard.press('Enter');
  await expect(cover).toBeHidden();
  await expect(page.getByLabel('Scheme', { exact: true })).toHaveValue('Site scheme');
  await typeInto(page, 'Level', 'lead');
  await expect
    .poll(() => page.evaluate(() => Object.values(localStorage).join(' ')))
    .toContain('"level":"lead"');

  await signOut(page);
  await trySecret(page, ADA.name, ADA.secret);
  await expect(page.getByLabel('Level', { exact: true })).toHaveValue('lead');

  // A reload signs out: what a session is known by lies nowhere on the PC.
  await page.reload();
  await expect(page.getByRole('heading', { level: 1, name: 'Sign in' })).toBeVisible();
  await trySecret(page, ADA.name, ADA.secret);
  await expect(page.getByLabel('Scheme', { exact: true })).toHaveValue('Site scheme');
  await expect(page.getByLabel('Level', { exact: true })).toHaveValue('lead');
});
