import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { SEIZING } from '../../seed/faults.ts';
import { test } from './app.ts';
import { tabTo } from './keyboard.ts';
import { INPUTS as RING } from './scatter-inputs.ts';
import { goTo, openJoint } from './steps.ts';

/** What the service answered to a request, as it went over the wire. */
function answered<T>(page: Page, name: string): Promise<T> {
  return page
    .waitForResponse((response) => response.url().endsWith(`/request/${name}`))
    .then(async (response) => ((await response.json()) as { value: T }).value);
}

/** Walks every point of a chart by the arrow keys and takes down what is read out. */
async function readOut(page: Page, label: string): Promise<string[]> {
  const reader = page.getByRole('slider', { name: label });
  await tabTo(page, reader);
  await page.keyboard.press('Home');
  const most = Number(await reader.getAttribute('max'));
  const words: string[] = [];
  for (let place = 0; place <= most; place += 1) {
    if (place > 0) await page.keyboard.press('ArrowRight');
    await expect(reader).toHaveValue(String(place));
    words.push((await reader.getAttribute('aria-valuetext')) ?? '');
  }
  return words;
}

/** A number as a cell or a sentence shows it, thin spaces taken out. */
const numberIn = (text: string) =>
  Number(/[\d\u202f\u2009.]+/.exec(text)?.[0].replace(/[\u202f\u2009]/g, ''));

const near = (shown: number, value: number) =>
  expect(Math.abs(shown - value)).toBeLessThanOrEqual(Math.abs(value) * 0.006 + 1e-9);

interface Chart {
  readonly points: readonly { readonly torque: number; readonly highest: number; readonly kind: string }[];
}

test('torques of a joint: what the chart reads out is the table’s, and both are the service’s', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  const chart = answered<Chart>(page, 'joint.chart');
  await openJoint(page, SEIZING);
  const { points } = await chart;
  expect(points.length).toBeGreaterThan(3);
  const section = page.getByRole('region', { name: 'Installed and breakout torque' });
  await expect(section.locator('.chart svg').first()).toBeVisible();
  const told = await readOut(page, 'Record read out below');
  expect(told).toHaveLength(points.length);
  await section.getByRole('button', { name: 'Show as table' }).click();
  const rows = section.locator('tbody tr');
  await expect(rows).toHaveCount(points.length);
  for (const [index, point] of points.entries()) {
    const [when, torque] = await rows.nth(index).getByRole('cell').allTextContents();
    expect(told[index]).toContain(
      `${when}: ${point.kind === 'tightening' ? 'installed' : 'breakout, median'}`,
    );
    near(numberIn(torque ?? ''), point.torque);
    near(
      numberIn((told[index] ?? '').split(point.kind === 'tightening' ? 'installed ' : 'median ')[1] ?? ''),
      point.torque,
    );
  }
});

interface History {
  readonly openings: readonly { readonly median: number | null }[];
}

test('openings of a joint: chart, table and service give one middle', async ({ demo, page }) => {
  await page.goto(demo.address);
  await openJoint(page, SEIZING);
  const history = answered<History>(page, 'breakout.history');
  await page.getByRole('link', { name: 'Breakout so far and next' }).click();
  const { openings } = await history;
  const section = page.getByRole('region', { name: 'Breakout over installed torque' });
  await expect(section.locator('.chart svg').first()).toBeVisible();
  const told = await readOut(page, 'Opening read out below');
  expect(told).toHaveLength(openings.length);
  await section.getByRole('button', { name: 'Show as table' }).click();
  for (const [index, { median }] of openings.entries()) {
    const [middle] = await section.locator('tbody tr').nth(index).getByRole('cell').allTextContents();
    expect(told[index]).toContain(`middle ${middle}`);
    near(Number(middle), median ?? Number.NaN);
  }
});

interface Simulated {
  readonly limit: number | null;
  readonly plans: readonly {
    readonly result: { readonly steps: readonly { readonly loads: readonly number[] }[] };
  }[];
  readonly sensitivity: readonly {
    readonly factor: number;
    readonly plans: readonly { readonly evenness: { readonly variation: number } | null }[];
  }[];
  readonly sensitivityWords: string;
}

test('loads between bolts: drawing, table, file and service are one', async ({ demo, page }) => {
  await page.goto(demo.address);
  await openJoint(page, SEIZING);
  await page.getByRole('link', { name: 'Model the load between bolts' }).click();
  const model = page.getByRole('region', { name: 'Load between the bolts, by a model' });
  await page.getByLabel('Beside it').selectOption({ index: 2 });
  for (const [label, text] of RING) await page.getByLabel(label, { exact: true }).fill(text);
  await page.getByLabel('With a gasket a quarter to four times as stiff').check();
  const simulated = answered<Simulated>(page, 'scatter.simulate');
  await page.getByRole('button', { name: 'Run the model' }).click();
  const { plans, sensitivity, sensitivityWords } = await simulated;
  expect(plans).toHaveLength(2);

  const shown = model.getByRole('slider', { name: /^Step shown/ });
  const loads = model.getByRole('table', {
    name: 'Load in every bolt after the step shown, and after the last',
  });
  for (const place of [0, 7]) {
    await shown.focus();
    await page.keyboard.press('Home');
    for (let step = 0; step < place; step += 1) await page.keyboard.press('ArrowRight');
    await expect(shown).toHaveValue(String(place));
    const wire = plans[0]?.result.steps[place]?.loads ?? [];
    const bars = model.locator('figure').first().locator('svg').last().locator('rect');
    await expect(bars).toHaveCount(wire.length);
    const heights = await bars.evaluateAll((all) => all.map((bar) => Number(bar.getAttribute('height'))));
    const highest = wire.indexOf(Math.max(...wire));
    for (const [bolt, load] of wire.entries()) {
      const cell = loads.locator('tbody tr').nth(bolt).getByRole('cell').first();
      near(numberIn((await cell.textContent()) ?? ''), load / 1000);
      expect(heights[bolt]).toBeCloseTo(((heights[highest] ?? 0) * load) / (wire[highest] ?? 1), 6);
    }
  }

  const other = model.getByRole('region', { name: 'With another stiffness of the gasket' });
  await expect(other).toContainText(sensitivityWords);
  await expect(other.locator('.chart svg').first()).toBeVisible();
  // Drawn are both plans at each stiffness.
  await expect(other.locator('.chart .recharts-scatter-symbol')).toHaveCount(2 * sensitivity.length);
  const told = await readOut(page, 'Stiffness read out below');
  expect(told).toHaveLength(sensitivity.length);
  await other.getByRole('button', { name: 'Show as table' }).click();
  for (const [index, row] of sensitivity.entries()) {
    const cells = await other.locator('tbody tr').nth(index).getByRole('cell').allTextContents();
    for (const [plan, { evenness }] of row.plans.entries()) {
      const cell = cells[plan + 1] ?? '';
      near(Number(cell), (evenness?.variation ?? Number.NaN) * 100);
      expect(told[index]).toContain(`${cell} %`);
    }
  }

  const saved = page.waitForEvent('download');
  await model.getByRole('button', { name: 'Export the loads after every step as CSV' }).click();
  const lines = (await readFile(await (await saved).path(), 'utf8')).trim().split('\r\n');
  expect(lines[0]).toContain('Plan,Step,Pass,Bolts turned,"Set, kN",Bolt,"Load after it, kN"');
  const wired = plans.flatMap(({ result }) => result.steps.flatMap((step) => step.loads));
  expect(lines).toHaveLength(wired.length + 1);
  for (const [index, load] of wired.entries()) {
    near(Number(lines[index + 1]?.split(',').at(-1)), load / 1000);
  }
});

interface Tool {
  readonly certificates: readonly {
    readonly line: { readonly points: readonly { readonly torque: number }[] } | null;
  }[];
}

test('a certificate: every point of the chart is read out and stands in the table', async ({
  demo,
  page,
}) => {
  await page.goto(demo.address);
  await goTo(page, '/tools');
  await page.getByLabel(/^Find a tool/).fill('W-02');
  const tool = answered<Tool>(page, 'tool.record');
  await page.getByRole('table').getByRole('link', { name: /^W-02/ }).first().click();
  const line = (await tool).certificates.find((certificate) => certificate.line !== null)?.line;
  const points = line?.points ?? [];
  expect(points.length).toBeGreaterThan(3);
  const drawn = page.getByRole('region', { name: /^Certificate / }).filter({ has: page.getByRole('slider') });
  const name = (await drawn.first().getAttribute('aria-label')) ?? '';
  const section = page.getByRole('region', { name, exact: true });
  const reader = section.getByRole('slider', { name: 'Point read out below' });
  await reader.focus();
  await page.keyboard.press('Home');
  const told: string[] = [];
  for (let place = 0; place < points.length; place += 1) {
    if (place > 0) await page.keyboard.press('ArrowRight');
    told.push((await reader.getAttribute('aria-valuetext')) ?? '');
  }
  await section.getByRole('button', { name: 'Show as table' }).click();
  for (const [index, words] of told.entries()) {
    const [pressure, torque, residual] = await section
      .locator('tbody')
      .first()
      .getByRole('row')
      .nth(index)
      .getByRole('cell')
      .allTextContents();
    expect(words).toContain(`${pressure} `);
    expect(words).toContain(`, ${torque} `);
    expect(words).toContain(`, ${residual} `);
    near(numberIn(torque ?? ''), points[index]?.torque ?? Number.NaN);
  }
});
