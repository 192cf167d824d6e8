import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ForecastRun } from '../../core/contract/forecast-list.ts';
import type { RequestInput } from '../../core/contract/requests.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let started: TestService;
let plant: TestPlant;

beforeAll(async () => {
  started = startService(temporaryFolder(), '2026-03-16T12:00:00Z');
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  for (let number = 1; number <= 8; number += 1) {
    const { id } = await saveJoint(started, jointA(plant.unitId, `F-${number}`));
    await ask(started, 'event.recordTightening', {
      key: key(),
      data: tighteningOf(plant, { jointId: id, happenedAt: '2024-03-01T09:00:00+01:00' }),
    });
    await ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant, { jointId: id }) });
  }
  const blank = jointA(plant.unitId, 'F-9');
  await saveJoint(started, {
    ...blank,
    flange: { kind: 'custom', description: 'made on site' },
    bolting: { ...blank.bolting, count: null },
  });
  const zero = await saveJoint(started, jointA(plant.unitId, 'F-10'));
  await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, {
      jointId: zero.id,
      happenedAt: '2024-03-01T09:00:00+01:00',
      dialled: null,
      torque: { text: '0', unit: 'N.m' },
    }),
  });
});
afterAll(() => started.service.close());

async function finished(input: RequestInput<'forecasts.start'>): Promise<ForecastRun> {
  const { id } = await ask(started, 'forecasts.start', input);
  for (let tries = 0; tries < 500; tries += 1) {
    const run = await ask(started, 'forecasts.run', { id });
    if (run !== null && run.state !== 'running') return run;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  throw new Error('the run did not end');
}

const all = { sort: 'tag', direction: 'asc', page: 1, pageSize: 50 } as const;

/** Every number an answer holds. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

test('a run tells how far it is, and its rows say what the forecast of each joint says', async () => {
  const run = await finished({ driveId: plant.tools.driveId });
  expect(run).toMatchObject({ state: 'done', done: 11, total: 11, problem: null });
  expect(run.drive).toMatchObject({ number: 'W-1', capacity: expect.any(Number) });
  expect(run.finding).toContain('W-1 is too small with a chance above 5 %');
  const { rows, total } = await ask(started, 'forecasts.rows', { id: run.id, ...all });
  expect(total).toBe(11);
  expect(rows.map(({ tag }) => tag).slice(0, 3)).toEqual(['F-1', 'F-2', 'F-3']);
  expect(numbersIn(rows).filter((value) => !Number.isFinite(value))).toEqual([]);
  for (const row of rows) {
    const alone = await ask(started, 'breakout.forecast', { jointId: row.jointId });
    expect(row.bolts, row.tag).toBe(alone.boltCount);
    expect(row.installed, row.tag).toBe(alone.installed?.torque ?? null);
    expect(row.sufficiency, row.tag).toBe(alone.evidence.sufficiency);
    if (alone.ratio === null) {
      expect([row.median, row.worst, row.worstTorque], row.tag).toEqual([null, null, null]);
      continue;
    }
    expect(row.median, row.tag).toBeCloseTo(alone.ratio.oneBolt.median, 6);
    expect(row.worst, row.tag).toBeCloseTo(alone.ratio.worstBolt.high, 6);
    expect(row.seized, row.tag).toBeCloseTo(alone.seized?.expected ?? Number.NaN, 6);
    const torque = alone.torque?.worstBolt.high ?? null;
    if (torque === null) expect(row.worstTorque).toBeNull();
    else expect(row.worstTorque).toBeCloseTo(torque, 3);
  }
});

test('what is not known is said, an installed torque of zero among it', async () => {
  const { id } = await finished({ text: 'F-' });
  const { rows } = await ask(started, 'forecasts.rows', { id, ...all });
  const row = (tag: string) => rows.find((one) => one.tag === tag);
  expect(row('F-9')).toMatchObject({ bolts: null, median: null, worst: null, tooSmall: null });
  expect(row('F-9')?.missing).toContain('number of bolts');
  expect(row('F-10')).toMatchObject({ installed: null, worstTorque: null, missing: ['installed torque'] });
  expect(row('F-10')?.worst).toBeGreaterThan(1);
});

test('rows are sorted with what is not known last, found by words, and paged', async () => {
  const { id } = await finished({});
  const sorted = await ask(started, 'forecasts.rows', { id, ...all, sort: 'worstTorque', direction: 'desc' });
  const torques = sorted.rows.map(({ worstTorque }) => worstTorque);
  const known = torques.filter((torque) => torque !== null);
  expect(torques.slice(known.length).every((torque) => torque === null)).toBe(true);
  expect(known).toEqual(known.toSorted((a, b) => b - a));
  const found = await ask(started, 'forecasts.rows', { id, ...all, text: 'f-10' });
  expect(found.rows.map(({ tag }) => tag)).toEqual(['F-10']);
  const second = await ask(started, 'forecasts.rows', { id, ...all, page: 2, pageSize: 6 });
  expect([second.rows.length, second.total]).toEqual([5, 11]);
});

test('a run can be cancelled, another waits for it, and a wrong one is named', async () => {
  const { id } = await ask(started, 'forecasts.start', {});
  const second = await started.service.handle('forecasts.start', {});
  const run = await ask(started, 'forecasts.cancel', { id });
  expect(['cancelled', 'done']).toContain(run.state);
  if (!second.ok) expect(second.error.code).toBe('busy');
  const stranger = '00000000-0000-7000-8000-000000000001';
  expect(await askBadly(started, 'forecasts.rows', { id: stranger, ...all })).toMatchObject({
    code: 'not_found',
    details: [{ field: 'id', value: stranger }],
  });
  expect(await askBadly(started, 'forecasts.start', { driveId: plant.tools.pumpId })).toMatchObject({
    details: [{ field: 'driveId', value: 'P-1', allowed: 'a drive unit' }],
  });
  expect(await askBadly(started, 'forecasts.start', { unitId: stranger })).toMatchObject({
    code: 'not_found',
  });
});
