import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Completeness } from '../../core/contract/record.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  settingFor,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let started: TestService;
let plant: TestPlant;
const events = { first: '', broken: '', second: '' };

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterAll(() => started.service.close());

const record = (eventId: string | null, jointId = plant.jointId): Promise<Completeness> =>
  ask(started, 'record.completeness', { jointId, eventId });
const shown = ({ fields }: Completeness, name: string) =>
  fields.find(({ field }) => field === name)?.shown ?? null;

test('a joint nothing was done on has a record of what its data say alone', async () => {
  const result = await record(null);
  expect([result.class, result.heldAgainst]).toEqual([null, 'critical']);
  expect(shown(result, 'joint tag')).toBe('J-0001');
  expect(shown(result, 'plant unit')).toBe('Unit 100');
  expect(shown(result, 'thread')).toBe('7/8-9 UNC');
  for (const name of ['tightening method', 'tool set', 'assemblers', 'last break', 'target torque']) {
    expect([name, shown(result, name)]).toEqual([name, null]);
  }
});

test('a setting and a tightening that followed it fill their fields', async () => {
  await certify(started, plant);
  const data = settingFor(plant);
  const setting = await ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
  const before = (await record(null)).answered;
  // K d F: 0.16 × 0.022225 m × 107 829 N of worked joint A.
  expect(shown(await record(null), 'target torque')).toBe('383.4 N·m');
  const input = { key: key(), data: tighteningOf(plant, { settingId: setting.id }) };
  events.first = (await ask(started, 'event.recordTightening', input)).id;
  const result = await record(null);
  expect(shown(result, 'assemblers')).toBe('A. Person');
  expect(shown(result, 'tool set')).toBe('named part by part');
  expect(shown(result, 'all bolts tightened')).toBe('12 of 12');
  expect(shown(result, 'recorded by')).toBeNull();
  expect(result.answered).toBeGreaterThan(before);
});

test('a break begins another record: what was done before it is not counted to it', async () => {
  const broken = { key: key(), data: breakoutOf(plant) };
  events.broken = (await ask(started, 'event.recordBreakout', broken)).id;
  const result = await record(null);
  expect(shown(result, 'last break')).toBe('2026-03-16');
  expect(shown(result, 'assemblers')).toBeNull();
  // Three of twelve bolts were read.
  expect(shown(result, 'breakout per bolt')).toBeNull();
});

test('each record keeps its own assembly, whatever came after it', async () => {
  const again = tighteningOf(plant, { happenedAt: '2026-03-16T11:00:00+01:00', boltsTightened: 11 });
  events.second = (await ask(started, 'event.recordTightening', { key: key(), data: again })).id;
  const [first, broken, second] = [
    await record(events.first),
    await record(events.broken),
    await record(events.second),
  ];
  expect([shown(first, 'last break'), shown(first, 'all bolts tightened')]).toEqual([null, '12 of 12']);
  expect([shown(broken, 'last break'), shown(broken, 'all bolts tightened')]).toEqual([
    '2026-03-16',
    '11 of 12',
  ]);
  expect(second).toEqual(broken);
  expect(await record(null)).toEqual(second);
});

test('an event of another joint has no record here', async () => {
  const other = await saveJoint(started, jointA(plant.unitId, 'J-0002'));
  const input = { jointId: other.id, eventId: events.first };
  expect(await askBadly(started, 'record.completeness', input)).toMatchObject({
    code: 'not_found',
    details: [{ field: 'eventId', value: events.first }],
  });
});
