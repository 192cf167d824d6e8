import { afterAll, beforeAll, expect, test } from 'vitest';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, jointA, saveJoint, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
let plant: TestPlant;

const loads = (...kilonewtons: string[]) => ({
  method: 'ultrasonic' as const,
  instrument: 'US-1',
  readings: kilonewtons.map((text, index) => ({ bolt: index + 1, load: { text, unit: 'kN' as const } })),
});

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
});
afterAll(() => started.service.close());

const tighten = async (tag: string, month: number, changes: object) => {
  const { id } = await saveJoint(started, jointA(plant.unitId, tag));
  return ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, {
      jointId: id,
      happenedAt: `2026-0${month}-10T09:00:00+01:00`,
      dialled: null,
      torque: { text: '383.4', unit: 'N.m' },
      ...changes,
    }),
  });
};

test('without a measured load the page says so', async () => {
  const evidence = await ask(started, 'friction.evidence', {});
  expect(evidence).toMatchObject({
    finding: 'No bolt load has been measured beside a torque yet.',
    groups: [],
    readings: [],
    leftOut: [],
  });
});

test('each measured bolt gives K = T/(F·D) beside what was assumed, grouped and filtered', async () => {
  await tighten('K-1', 1, { loads: loads('107.8', '100.0') });
  await tighten('K-2', 2, { loads: loads('95.0', '99.0') });
  await tighten('K-3', 3, { loads: loads('90.0') });
  const { readings, groups, total } = await ask(started, 'friction.evidence', {});
  expect([total, groups.length]).toEqual([5, 1]);
  for (const { torque, load, nutFactor } of readings) {
    // 7/8 inch is 22.225 mm.
    expect(nutFactor).toBeCloseTo(torque / (load * 0.022225), 10);
  }
  expect(readings[0]).toMatchObject({
    tag: 'K-1',
    bolt: 1,
    assumed: 0.16,
    lubricant: 'nickel-based anti-seize',
    batch: 'L-1',
    size: '7/8-9 UNC',
    material: 'ASTM A193 B7',
    studUses: 1,
  });
  expect(groups[0]).toMatchObject({ events: 3, joints: 3, bolts: 5, assumed: expect.closeTo(0.16, 12) });
  expect(groups[0]?.meanInterval).not.toBeNull();
  const none = await ask(started, 'friction.evidence', { lubricant: 'machine oil' });
  expect(none).toMatchObject({ groups: [], total: 0 });
  const bySize = await ask(started, 'friction.evidence', { groupBy: 'size', size: '7/8-9 unc' });
  expect(bySize.groups.map(({ name }) => name)).toEqual(['7/8-9 UNC']);
});

test('a torque of zero and a load of zero are left out by name', async () => {
  await tighten('K-4', 3, { torque: { text: '0', unit: 'N.m' }, loads: loads('90.0') });
  await tighten('K-5', 3, { loads: loads('0') });
  const { leftOut, total, finding } = await ask(started, 'friction.evidence', {});
  expect(leftOut.map(({ tag, why }) => [tag, why])).toEqual([
    ['K-4', 'a torque of zero is recorded'],
    ['K-5', 'the load of bolt 1 was measured as zero'],
  ]);
  expect(total).toBe(5);
  expect(finding).toContain('2 tightenings with measured loads could not be used');
});
