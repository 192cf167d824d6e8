import { afterAll, beforeAll, expect, test } from 'vitest';
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

const torque = (text: string) => ({ dialled: null, torque: { text, unit: 'N.m' as const } });

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  for (const [tag, day] of [
    ['R-1', '10'],
    ['R-2', '11'],
  ] as const) {
    const { id } = await saveJoint(started, jointA(plant.unitId, tag));
    const happenedAt = `2026-03-${day}T09:00:00+01:00`;
    await ask(started, 'event.recordTightening', {
      key: key(),
      data: tighteningOf(plant, { jointId: id, happenedAt, ...torque('383.44') }),
    });
    if (tag === 'R-2') {
      await ask(started, 'event.recordBreakout', {
        key: key(),
        data: breakoutOf(plant, { jointId: id, happenedAt: '2026-03-12T09:00:00+01:00' }),
      });
    }
  }
  const { id } = await saveJoint(started, { ...jointA(plant.unitId, 'R-3'), lubricant: null });
  await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { jointId: id, happenedAt: '2026-03-12T09:00:00+01:00', ...torque('0') }),
  });
});
afterAll(() => started.service.close());

const factor = (text: string) => ({ kind: 'nut factor', nutFactor: { text, unit: 'one' } }) as const;
const run = (
  assumption: RequestInput<'replay.run'>['assumption'],
  scope: RequestInput<'replay.run'>['scope'] = {},
) => ask(started, 'replay.run', { assumption, scope });

test('another nut factor scales the load of each record, and joints that leave their limits come first', async () => {
  const { rows, counts, finding, total } = await run(factor('0.32'));
  expect(total).toBe(3);
  const [first, second, last] = rows;
  expect(first).toMatchObject({ tag: 'R-1', leaves: true, standing: 'broken', standsNow: true });
  expect(second).toMatchObject({ tag: 'R-2', leaves: true, standsNow: false });
  for (const row of [first, second]) {
    // Half of the load at twice the nut factor; joint A's own load is the one of the worked joints page.
    expect(row?.loadThen).toBeCloseTo(107829, -2);
    expect(row?.loadOtherwise).toBeCloseTo((row?.loadThen ?? 0) / 2, 6);
    expect(row?.change).toBeCloseTo(-0.5, 10);
    expect(row?.words).toContain('at least');
  }
  expect(last).toMatchObject({ tag: 'R-3', standing: 'not known', leaves: false, loadOtherwise: null });
  expect(counts).toMatchObject({ leaves: 2, leavesNow: 1, notKnown: 1 });
  expect(finding).toBe(
    '2 tightenings of 3 would have broken a limit, 1 of them with the load still in the joint. Of 1 it is not known.',
  );
});

test('the nut factor that was there changes nothing', async () => {
  const { rows, counts } = await run(factor('0.16'), { lubricant: 'nickel-based anti-seize' });
  expect(rows.map(({ change }) => change)).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)]);
  expect(counts.leaves).toBe(0);
});

test('another stud changes the load, and a thread nobody knows is named', async () => {
  const { rows } = await run({ kind: 'stud size', thread: '3/4-10 UNC' }, { batch: 'L-1' });
  // F = T/(K·D): a thinner stud carries more at the same torque.
  expect(rows[0]?.change).toBeCloseTo(0.875 / 0.75 - 1, 6);
  const wrong = { assumption: { kind: 'stud size', thread: '9/9-9 UNC' }, scope: {} };
  expect(await askBadly(started, 'replay.run', wrong)).toMatchObject({
    details: [{ field: 'assumption.thread', value: '9/9-9 UNC', allowed: expect.stringMatching(/tables/) }],
  });
});

test('a scope nobody knows, days in the wrong order and no limit at all are named', async () => {
  const bad = (assumption: object, scope: object) => askBadly(started, 'replay.run', { assumption, scope });
  expect((await bad(factor('0.2'), { batch: 'L-77' })).details[0]).toMatchObject({ field: 'scope.batch' });
  expect((await bad(factor('0.2'), { setting: 'S-9999' })).details[0]).toMatchObject({
    field: 'scope.setting',
  });
  const days = { from: '2026-03-12', to: '2026-03-01' };
  expect((await bad(factor('0.2'), days)).details[0]).toMatchObject({ field: 'scope.to' });
  expect((await bad({ kind: 'gasket limit' }, {})).details[0]).toMatchObject({ field: 'assumption.most' });
  expect((await bad(factor('7'), {})).details[0]?.field).toMatch(/^assumption/);
  const none = await run(factor('0.2'), { from: '2020-01-01', to: '2020-01-02' });
  expect(none).toMatchObject({ finding: 'No tightening is in what was asked about.', total: 0, rows: [] });
});
