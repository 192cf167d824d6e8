import { afterEach, beforeEach, expect, test } from 'vitest';
import { ask } from './ask.ts';
import {
  caseOn,
  check,
  comparison,
  FAILED,
  FAILING,
  FOUND,
  type RecallPlant,
  recallPlant,
  tighten,
} from './recall-plant.ts';
import { certify } from './records.ts';

// Everything expected here is worked out from the certificates' raw points by plain arithmetic: normal equations for the
// line, F = T/(K·D), and the root of sums of squares. Nothing of the program's calibration or recall is used.

/** The January certificate of the fixture: bar and N·m. */
const CERTIFIED: readonly (readonly [number, number])[] = [
  [70, 100],
  [140, 203],
  [210, 310],
  [280, 414],
  [350, 518],
  [420, 625],
  [490, 730],
  [560, 832],
  [630, 940],
  [690, 1029],
];

/** y = a + b·x through points by the normal equations, with the variances that follow. */
function normalEquations(points: readonly (readonly [number, number])[]) {
  const n = points.length;
  const sum = (of: (x: number, y: number) => number) => points.reduce((all, [x, y]) => all + of(x, y), 0);
  const x = sum((p) => p);
  const y = sum((_, t) => t);
  const xx = sum((p) => p * p);
  const xy = sum((p, t) => p * t);
  const determinant = n * xx - x * x;
  const a = (xx * y - x * xy) / determinant;
  const b = (n * xy - x * y) / determinant;
  const s2 = sum((p, t) => (t - a - b * p) ** 2) / (n - 2);
  const variance = (at: number) => (s2 * (xx - 2 * at * x + n * at * at)) / determinant;
  return { at: (bar: number) => a + b * bar, slope: b, scatter: Math.sqrt(s2), variance };
}

const K = 0.16;
const D = 0.875 * 0.0254;
const AREA = (Math.PI / 4) * ((0.875 - 0.9743 / 9) * 0.0254) ** 2;
const Z95 = 1.959963985;

/** Load, its interval and error at a pressure on the gauge, which is right at every mark. */
function expected(bar: number) {
  const meant = normalEquations(CERTIFIED);
  const found = normalEquations(FOUND);
  const intended = meant.at(bar);
  const delivered = found.at(bar);
  const error = (delivered - intended) / intended;
  const line = Math.sqrt(found.variance(bar));
  const reference = 0.005 * delivered;
  const gauge = (found.slope * (0.01 * 1000)) / Math.sqrt(3);
  const reading = (found.slope * 10) / Math.sqrt(12);
  const torqueU = Math.hypot(line, found.scatter, reference);
  const whole = Math.hypot(line, reference, gauge, reading, found.scatter) / delivered;
  const relative = Math.hypot(whole, 0.1);
  const load = delivered / (K * D);
  const half = Z95 * Math.sqrt(Math.log(1 + relative ** 2));
  return {
    intended,
    delivered,
    error,
    uncertainty: torqueU / intended,
    intendedLoad: intended / (K * D),
    load,
    low: load * Math.exp(-half),
    high: load * Math.exp(half),
  };
}

const close = (actual: number | null | undefined, value: number, relative = 1e-7) => {
  expect(actual).not.toBeNull();
  expect(Math.abs((actual ?? Number.NaN) / value - 1)).toBeLessThan(relative);
};

let plant: RecallPlant;
beforeEach(async () => {
  plant = await recallPlant();
});
afterEach(() => plant.started.service.close());

/** Before the good certificate, three in the window with limits of their own, and one after the tool was put right. */
async function planted() {
  await tighten(plant, { tag: 'J-BEFORE', day: '2026-01-05' });
  const kept = await tighten(plant, { tag: 'J-KEPT', day: '2026-02-01', bar: 260 });
  const unsure = await tighten(plant, { tag: 'J-UNSURE', day: '2026-03-01', bar: 250, least: 280 });
  const broken = await tighten(plant, { tag: 'J-BROKEN', day: '2026-05-01', bar: 270, least: 360 });
  const failing = await certify(plant.started, plant, FAILING);
  await tighten(plant, { tag: 'J-AFTER', day: '2026-06-20' });
  return { kept, unsure, broken, certificateId: failing.id };
}

const preview = (certificateId: string) =>
  ask(plant.started, 'case.preview', { data: caseOn(plant, { kind: 'certificate', certificateId }) });

test('a wrench 8 % under its certificate lists exactly the joints touched since the last good one, loads recomputed', async () => {
  const { certificateId } = await planted();
  const { affected, window } = await preview(certificateId);
  expect(affected.map(({ tag, worst }) => [tag, worst])).toEqual([
    ['J-BROKEN', 'broken'],
    ['J-UNSURE', 'not sure'],
    ['J-KEPT', 'kept'],
  ]);
  expect(window.from?.slice(0, 10)).toBe('2026-01-10');
  expect(window.to.slice(0, 10)).toBe('2026-06-10');
  expect(window.fromBasis).toContain('C-1');
  expect(window.toBasis).toContain('C-2');
  const bars: Record<string, number> = { 'J-BROKEN': 270, 'J-UNSURE': 250, 'J-KEPT': 260 };
  for (const event of affected) {
    const bar = bars[event.tag] ?? Number.NaN;
    const wanted = expected(bar);
    expect(wanted.error).toBeGreaterThan(-0.085);
    expect(wanted.error).toBeLessThan(-0.075);
    close(event.pressure, bar * 1e5);
    close(event.intendedTorque, wanted.intended);
    close(event.deliveredTorque, wanted.delivered);
    close(event.error, wanted.error);
    close(event.errorUncertainty, wanted.uncertainty);
    close(event.intendedLoad, wanted.intendedLoad);
    close(event.realLoad, wanted.load);
    close(event.interval?.low, wanted.low);
    close(event.interval?.high, wanted.high);
    expect(event.role).toBe('drive unit');
  }
});

test('the standings are those of the loads against the limits of each joint', async () => {
  const { certificateId } = await planted();
  const { affected } = await preview(certificateId);
  const leastOf = (tag: string) => {
    const row = affected
      .find((event) => event.tag === tag)
      ?.limits.find(({ name }) => name === 'Least bolt stress');
    return { limit: row?.limit ?? Number.NaN, standing: row?.standing };
  };
  // Real load below the limit, above it with a part of the interval below, and above it as a whole.
  const broken = leastOf('J-BROKEN');
  close(broken.limit, 360e6 * AREA, 1e-4);
  expect(expected(270).load).toBeLessThan(360e6 * AREA);
  expect(broken.standing).toBe('broken');
  const unsure = leastOf('J-UNSURE');
  close(unsure.limit, 280e6 * AREA, 1e-4);
  expect(expected(250).load).toBeGreaterThan(280e6 * AREA);
  expect(expected(250).low).toBeLessThan(280e6 * AREA);
  expect(unsure.standing).toBe('not sure');
  const kept = leastOf('J-KEPT');
  expect(expected(260).low).toBeGreaterThan(200e6 * AREA);
  expect(kept.standing).toBe('kept');
});

test('a good check in between narrows the list; one after the failure does not', async () => {
  const { certificateId } = await planted();
  const tags = async () => (await preview(certificateId)).affected.map(({ tag }) => tag);
  const before = await tags();
  await check(plant, comparison(plant, '2026-06-15'));
  expect(await tags()).toEqual(before);
  await check(plant, comparison(plant, '2026-03-15'));
  expect(await tags()).toEqual(['J-BROKEN']);
  const { window } = await preview(certificateId);
  expect(window.fromBasis).toBe('passed check (comparison) of 2026-03-15');
});

test('a check that compares nothing narrows nothing', async () => {
  const { certificateId } = await planted();
  const before = (await preview(certificateId)).affected.map(({ tag }) => tag);
  await check(plant, comparison(plant, '2026-03-15', { kind: 'visual', comparisons: [], limit: null }));
  await check(
    plant,
    comparison(plant, '2026-03-16', { kind: 'seal inspection', comparisons: [], limit: null }),
  );
  expect((await preview(certificateId)).affected.map(({ tag }) => tag)).toEqual(before);
});

test('the error of a failed check has the sign of what was delivered; ISO 6789 states it the other way round', async () => {
  await tighten(plant, { tag: 'J-1', day: '2026-02-01', least: 350 });
  const checkId = await check(plant, comparison(plant, '2026-05-01', FAILED));
  const { affected } = await ask(plant.started, 'case.preview', {
    data: caseOn(plant, { kind: 'check', checkId }),
  });
  const indicated = (400 - 368) / 368;
  expect(indicated).toBeCloseTo(0.08696, 5);
  const error = 1 / (1 + indicated) - 1;
  expect(affected).toHaveLength(1);
  close(affected[0]?.error, error, 1e-12);
  close(affected[0]?.error, -0.08, 1e-12);
  const intended = normalEquations(CERTIFIED).at(260);
  close(affected[0]?.intendedTorque, intended);
  close(affected[0]?.realLoad, (intended * 0.92) / (K * D));
  // A check states no uncertainty: no interval, and nothing is called kept by it.
  expect(affected[0]?.interval).toBeNull();
  expect(affected[0]?.limits.map(({ standing }) => standing)).not.toContain('kept');
});
