import { expect, type Locator, type Page } from '@playwright/test';
import { expectNoFaults } from './accessibility.ts';
import { type App, test } from './app.ts';
import { chooseTool, goTo, importFile, makeEmptyRegister, namePerson, openJoint } from './steps.ts';

test.use({ viewport: { width: 800, height: 1280 }, hasTouch: true });

/** Star order of 12 bolts, and what worked joint A dials for each pass of "staged thirds". */
const STAR = [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12];
const TARGET = 56;

const key = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const tap = (page: Page, name: string | RegExp) => key(page, name).tap();
const asked = (page: Page, name: string | RegExp) =>
  expect(page.getByRole('heading', { level: 2, name })).toBeVisible();

/** Every view passes the accessibility check, fits the tablet, and has nothing to press that a glove would miss. */
async function look(page: Page, view: string): Promise<void> {
  await expectNoFaults(page, view);
  const small = await page.locator('button:visible, input:visible, textarea:visible').evaluateAll(
    (elements, least) =>
      elements
        .map((element) => ({ text: element.textContent, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width < least || box.height < least)
        .map(({ text, box }) => `${text}: ${box.width} × ${box.height}`),
    TARGET,
  );
  expect(small, view).toEqual([]);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow, view).toBeLessThanOrEqual(0);
}

/** Contrast of the number against what it stands on, by the relation of WCAG 2.2, 1.4.3. */
async function contrastOf(number: Locator): Promise<number> {
  return number.evaluate((element) => {
    const canvas = document.createElement('canvas').getContext('2d');
    const luminance = (colour: string) => {
      if (canvas === null) return Number.NaN;
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [red = 0, green = 0, blue = 0] = canvas.getImageData(0, 0, 1, 1).data;
      const linear = (part: number) =>
        part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4;
      return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
    };
    const ground = element.closest('.at');
    const ink = luminance(getComputedStyle(element).color);
    const page = luminance(getComputedStyle(ground ?? element).backgroundColor);
    return (Math.max(ink, page) + 0.05) / (Math.min(ink, page) + 0.05);
  });
}

/** The next keeping of the work in progress in the register. */
const kept = (page: Page) =>
  page.waitForResponse((response) => response.url().endsWith('/request/draft.save') && response.ok());

async function setTime(app: App, page: Page, moment: string): Promise<void> {
  app.setClock(moment);
  await page.clock.setFixedTime(moment);
}

async function issue(page: Page, kind: 'tightening' | 'breakout', by: string): Promise<void> {
  await openJoint(page, 'HX-310 N3');
  await page.getByRole('link', { name: 'Work out a setting' }).click();
  if (kind === 'breakout') await page.getByLabel('Kind of work').selectOption('breakout');
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
  await page.getByLabel('Issued by').selectOption({ label: by });
  await page.getByRole('button', { name: 'Issue this setting' }).click();
  await expect(page.getByText(/S-000\d/).first()).toBeVisible();
}

/** A crew says who it is, reads the tag and looks over the tools. */
async function begin(page: Page, person: string): Promise<void> {
  await tap(page, person);
  await tap(page, 'This is the crew');
  await asked(page, 'Is this the joint');
  await tap(page, 'The tag on the joint reads HX-310 N3');
  await asked(page, 'Before the tool is used');
  await tap(page, 'Looked over and agreed');
}

async function setAndRead(page: Page, setBy: string, readBy: string): Promise<void> {
  await tap(page, setBy);
  await tap(page, readBy);
}

async function turn(page: Page, bolts: readonly number[], words = 'done'): Promise<void> {
  for (const bolt of bolts) await tap(page, `Bolt ${bolt} ${words}`);
}

test('on a tablet: twelve bolts in four steps with a shift change and a reload, and the breakout two years later', async ({
  app,
  page,
}) => {
  test.setTimeout(480_000);
  await setTime(app, page, '2026-03-16T06:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'technician');
  await namePerson(page, 'Otto Example', 'technician');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');
  await issue(page, 'tightening', 'Greta Example, technician');

  await setTime(app, page, '2026-03-16T07:00:00+01:00');
  await goTo(page, '/at');
  await asked(page, 'Scan or type the tag on the joint');
  await page.getByLabel('Tag', { exact: true }).fill('HX-310 N9');
  await page.getByLabel('Tag', { exact: true }).press('Enter');
  await expect(page.getByRole('status')).toContainText('No joint has the tag “HX-310 N9”');
  await look(page, 'tag not found');
  await page.getByLabel('Tag', { exact: true }).fill('hx-310 n3');
  await page.getByLabel('Tag', { exact: true }).press('Enter');
  await asked(page, 'Which setting is worked by');
  await look(page, 'setting choice');
  await tap(page, /^S-0001/);
  await asked(page, 'Who is at the joint');
  await look(page, 'crew');
  await tap(page, 'Greta Example');
  await tap(page, 'This is the crew');
  await expect(page.getByRole('region', { name: 'It could be taken for' })).toContainText('HX-310 N4');
  await look(page, 'joint');
  await tap(page, 'The tag on the joint reads HX-310 N3');
  await look(page, 'tools');
  await tap(page, 'Looked over and agreed');
  await asked(page, /^Snug/);
  await look(page, 'by hand');
  await tap(page, 'All 12 bolts done');
  await asked(page, 'Snug: all bolts gone through');
  await look(page, 'pass done');
  await tap(page, 'Record this pass');

  // First step: 90 bar, in the unit on the gauge's face, the largest thing on the view.
  await setTime(app, page, '2026-03-16T07:20:00+01:00');
  await asked(page, 'First third: set by');
  const number = page.locator('.at-number');
  await expect(number).toHaveText('90 bar');
  expect(await contrastOf(number)).toBeGreaterThanOrEqual(7);
  const sizes = await page
    .locator('.at :is(h1, h2, p, li, button, b, span)')
    .evaluateAll((all) => all.map((each) => Number.parseFloat(getComputedStyle(each).fontSize)));
  const largest = await number.evaluate((each) => Number.parseFloat(getComputedStyle(each).fontSize));
  expect(Math.max(...sizes)).toBe(largest);
  await look(page, 'set');
  await tap(page, 'Greta Example');
  await asked(page, 'First third: read by a second person');
  await expect(key(page, 'Greta Example')).toHaveCount(0);
  await look(page, 'confirm');
  await tap(page, 'Otto Example');
  await expect(page.getByText('set by Greta Example, read by Otto Example')).toBeVisible();
  await look(page, 'bolt');
  await turn(page, STAR.slice(0, 3));
  await tap(page, 'Undo last');
  await expect(page.getByText('bolt 3 of 12')).toBeVisible();

  // A reading by keypad, and the window closed while it is half typed.
  await tap(page, 'Reading…');
  await look(page, 'reading');
  await tap(page, '8');
  const half = kept(page);
  await tap(page, '9');
  await half;
  await page.reload();
  await asked(page, 'Work in progress is kept here');
  await expect(page.getByText('First third: 2 of 12 bolts, last bolt 7; next 4')).toBeVisible();
  await look(page, 'resume');
  await tap(page, 'Go on as Greta Example');
  await asked(page, 'Bolt 4: what was read');
  await expect(page.getByLabel('Reading on bolt 4')).toHaveValue('89');
  await tap(page, 'Keep this reading');
  await expect(page.getByText('read 89 bar')).toBeVisible();
  await turn(page, STAR.slice(2));
  await tap(page, 'Record this pass');

  // Second step, stopped after five bolts.
  await setTime(app, page, '2026-03-16T13:40:00+01:00');
  await asked(page, 'Second third: set by');
  await expect(page.locator('.at-number')).toHaveText('170 bar');
  await setAndRead(page, 'Greta Example', 'Otto Example');
  await turn(page, STAR.slice(0, 5));
  await tap(page, 'Stop work');
  await asked(page, 'Why does the work stop');
  await tap(page, 'shift change');
  await page.getByLabel('What the next crew has to know').fill('pump left at the joint');
  await look(page, 'stop');
  await tap(page, 'Record the stop');
  await asked(page, 'The stop is recorded');
  await look(page, 'stopped');

  // The next crew finds who was here, when, where they left off, and goes on from there.
  await setTime(app, page, '2026-03-16T14:10:00+01:00');
  await goTo(page, '/at');
  await page.getByLabel('Tag', { exact: true }).fill('HX-310 N3');
  await tap(page, 'Open the joint');
  await asked(page, 'Who goes on with this joint');
  const handover = page.getByLabel('What the crew before left');
  await expect(handover).toContainText('Greta Example, 16 Mar 2026 13:40');
  await expect(handover).toContainText('shift change: pump left at the joint');
  await expect(handover).toContainText('Snug, First third; 2 of 5');
  await expect(handover).toContainText('5 of 12 bolts, last bolt 2; next 8');
  await look(page, 'handover');
  await begin(page, 'Otto Example');
  await setAndRead(page, 'Otto Example', 'Greta Example');
  await expect(page.getByText('bolt 6 of 12')).toBeVisible();
  await turn(page, STAR.slice(5, 7));
  // A nut that does not move in a later pass, at the set pressure, holds; below it the work stops.
  await tap(page, 'Nut won’t move');
  await look(page, 'nut that does not move');
  await tap(page, 'The tool stalled below it');
  await asked(page, 'Stop and ask');
  await expect(page.getByText('Bolt 11: tool stalls below the set pressure')).toBeVisible();
  await look(page, 'stop and ask');
  await tap(page, 'Back');
  await tap(page, 'Nut won’t move');
  await tap(page, 'It was reached, and the nut stood still');
  await asked(page, 'Bolt 11 is done in this pass');
  await tap(page, 'Bolt 11 done');
  await turn(page, STAR.slice(8));
  await tap(page, 'Record this pass');

  // Third step, then the last round: one nut turns, so it is gone round again.
  await asked(page, 'Full: set by');
  await expect(page.locator('.at-number')).toHaveText('260 bar');
  await setAndRead(page, 'Otto Example', 'Greta Example');
  // By keyboard alone: the key that was pressed stays where it is for the next bolt.
  await key(page, 'Bolt 1 done').focus();
  for (const bolt of STAR) {
    await expect(key(page, `Bolt ${bolt} done`)).toBeFocused();
    await page.keyboard.press('Enter');
  }
  await tap(page, 'Record this pass');
  await asked(page, 'Round: set by');
  await setAndRead(page, 'Otto Example', 'Greta Example');
  await tap(page, 'Bolt 1 stood');
  await tap(page, 'It turned');
  for (let bolt = 3; bolt <= 12; bolt++) await tap(page, `Bolt ${bolt} stood`);
  await expect(page.getByText('Bolt 2 still turned.')).toBeVisible();
  await look(page, 'a nut turned');
  await tap(page, 'Record it and go round again');
  await setAndRead(page, 'Otto Example', 'Greta Example');
  await expect(page.getByText('time round 2')).toBeVisible();
  for (let bolt = 1; bolt <= 12; bolt++) await tap(page, `Bolt ${bolt} stood`);
  await tap(page, 'Record this pass');
  await asked(page, 'All passes are done');
  await expect(page.getByText('No nut turned in the last round.')).toBeVisible();
  await look(page, 'all passes done');
  await tap(page, 'Record the tightening');
  await expect(page).toHaveURL(/#\/events\//);
  const passes = page.getByRole('region', { name: 'Passes' });
  await expect(passes.getByRole('row')).toHaveCount(8);
  await expect(passes.getByRole('row').filter({ hasText: 'shift change' })).toContainText('Greta Example');
  await expect(page.getByText('refusal')).toHaveCount(0);

  // Two years later, nut by nut.
  await setTime(app, page, '2028-03-20T08:00:00+01:00');
  await page.reload();
  await importFile(page, 'certificate', 'wrench-certificate-2028.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate-2028.csv', 'Write 1 certificate');
  await issue(page, 'breakout', 'Otto Example, technician');
  await goTo(page, '/at');
  await page.getByLabel('Tag', { exact: true }).fill('HX-310 N3');
  await tap(page, 'Open the joint');
  await tap(page, /^S-0002/);
  await begin(page, 'Otto Example');
  await look(page, 'breakout set');
  await setAndRead(page, 'Otto Example', 'Greta Example');
  await asked(page, /^First movement/);
  await look(page, 'first movement');
  for (const bolt of STAR.slice(0, 10)) {
    for (const digit of String(290 + bolt * 10)) await tap(page, digit);
    await tap(page, `Nut ${bolt} turned at ${290 + bolt * 10} bar`);
  }
  const halfway = kept(page);
  await page.getByLabel('Nut 6 moved at').fill('35');
  await halfway;
  await page.reload();
  await tap(page, 'Go on as Otto Example');
  await expect(page.getByLabel('Nut 6 moved at')).toHaveValue('35');
  await page.getByLabel('Nut 6 moved at').press('0');
  await page.getByLabel('Nut 6 moved at').press('Enter');
  await tap(page, 'Nut won’t move');
  await look(page, 'nut of a breakout that does not move');
  await tap(page, 'The stud was cut');
  await asked(page, 'All nuts gone through');
  await look(page, 'all nuts gone through');
  await tap(page, 'Record the breakout');
  await expect(page).toHaveURL(/#\/events\//);
  // 350 bar by worked joint A's certificate line: −5.73214 + 1.49956 × 350 = 519.1 N·m.
  const six = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: '6', exact: true }) });
  await expect(six).toContainText('350 bar');
  await expect(six).toContainText('519.1');
  await expect(page.getByRole('row').filter({ hasText: 'cut' })).toHaveCount(1);
});

test('two windows at one joint: the second is told what the first recorded, and goes on from there', async ({
  app,
  page,
  context,
}) => {
  test.setTimeout(240_000);
  await setTime(app, page, '2026-03-16T06:00:00+01:00');
  await page.goto(app.address);
  await makeEmptyRegister(page);
  await namePerson(page, 'Greta Example', 'technician');
  await importFile(page, 'joints', 'joints.csv', 'Write 3 joints');
  await importFile(page, 'tools', 'tools.csv', 'Write 7 tools');
  await importFile(page, 'certificate', 'wrench-certificate.csv', 'Write 1 certificate');
  await importFile(page, 'certificate', 'gauge-certificate.csv', 'Write 1 certificate');
  await issue(page, 'tightening', 'Greta Example, technician');
  const other = await context.newPage();
  await other.clock.setFixedTime('2026-03-16T06:00:00+01:00');
  await other.goto(app.address);
  for (const window of [page, other]) {
    await goTo(window, '/at');
    await window.getByLabel('Tag', { exact: true }).fill('HX-310 N3');
    await window.getByLabel('Tag', { exact: true }).press('Enter');
    await tap(window, /^S-0001/);
  }
  const first = kept(page);
  await begin(page, 'Greta Example');
  await first;
  await tap(other, 'Greta Example');
  await expect(other.getByRole('alert')).toContainText('Another window has gone on with this work');
  await look(other, 'overtaken');
  const done = kept(page);
  await tap(page, 'All 12 bolts done');
  await done;
  await tap(other, 'Take up what it holds');
  await asked(other, 'Work in progress is kept here');
  await expect(other.getByText('Snug: all bolts gone through, not recorded yet')).toBeVisible();

  // The crew is gone without a word: what it kept is recorded as its stop, and the next one goes on from there.
  await tap(other, 'Another crew takes over');
  await asked(other, 'The stop is recorded');
  await tap(other, 'The next crew goes on');
  const handover = other.getByLabel('What the crew before left');
  await expect(handover).toContainText('Greta Example, 16 Mar 2026 06:00');
  await expect(handover).toContainText('Snug handed over without a stop');
  await expect(handover).toContainText('Snug; 1 of 5');
  await tap(page, 'Record this pass');
  await expect(page.getByRole('alert').filter({ hasText: 'It was not recorded.' })).toContainText(
    'Something else was recorded on this joint in the meantime: pass recorded',
  );
  await tap(page, 'Take up what it holds');
  await asked(page, 'Who goes on with this joint');
  await expect(page.getByLabel('What the crew before left')).toContainText('Snug; 1 of 5');
});
