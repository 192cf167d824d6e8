import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
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

let folder: string;
let started: TestService;
let plant: TestPlant;

beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterEach(() => started.service.close());

const events = async () => (await ask(started, 'register.state', {})).events;

describe('a repeated key', () => {
  test('with the same input answers what was recorded the first time', async () => {
    const input = { key: key(), data: tighteningOf(plant) };
    const first = await ask(started, 'event.recordTightening', input);
    const before = await events();
    expect(first.alreadyRecorded).toBe(false);
    expect(await ask(started, 'event.recordTightening', input)).toEqual({ ...first, alreadyRecorded: true });
    expect(await events()).toBe(before);
  });

  test('is known after a restart', async () => {
    const input = { key: key(), data: tighteningOf(plant) };
    const first = await ask(started, 'event.recordTightening', input);
    await started.service.close();
    started = startService(folder);
    expect(await ask(started, 'event.recordTightening', input)).toEqual({ ...first, alreadyRecorded: true });
  });

  test('with another input is refused', async () => {
    const input = { key: key(), data: tighteningOf(plant) };
    await ask(started, 'event.recordTightening', input);
    const before = await events();
    const other = { ...input, data: tighteningOf(plant, { boltsTightened: 11 }) };
    expect(await askBadly(started, 'event.recordTightening', other)).toMatchObject({
      code: 'conflict',
      details: [{ field: 'key', value: input.key }],
    });
    const { key: used } = input;
    const elsewhere = { key: used, id: null, version: null, data: { name: 'Unit 300' } };
    expect((await askBadly(started, 'unit.save', elsewhere)).code).toBe('conflict');
    expect(await events()).toBe(before);
  });

  test('of a failed try is free: nothing was recorded under it', async () => {
    const input = { key: key(), data: settingFor(plant), personId: plant.personId };
    expect((await askBadly(started, 'setting.issue', input)).code).toBe('refused');
    await certify(started, plant);
    expect((await ask(started, 'setting.issue', input)).alreadyRecorded).toBe(false);
  });

  test('sent twice at once is written once', async () => {
    const input = { key: key(), data: tighteningOf(plant) };
    const before = await events();
    const answers = await Promise.all([1, 2, 3].map(() => ask(started, 'event.recordTightening', input)));
    expect(new Set(answers.map(({ id }) => id)).size).toBe(1);
    expect(answers.filter(({ alreadyRecorded }) => !alreadyRecorded)).toHaveLength(1);
    expect(await events()).toBe(before + 1);
  });

  test('of the creation answers the register; another key finds it taken', async () => {
    const other = temporaryFolder();
    const fresh = startService(other);
    const input = { key: key(), data: { content: 'empty' as const, siteName: 'S', timeZone: 'UTC' } };
    const first = await ask(fresh, 'register.create', input);
    expect(await ask(fresh, 'register.create', input)).toEqual(first);
    expect((await askBadly(fresh, 'register.create', { ...input, key: key() })).code).toBe('conflict');
    await fresh.service.close();
  });
});

describe('an edit', () => {
  test('starts from the version that was seen', async () => {
    const joint = await ask(started, 'joint.get', { id: plant.jointId });
    const edit = (location: string) => ({
      key: key(),
      id: joint.id,
      version: 1,
      data: { ...joint.data, location },
    });
    expect(await ask(started, 'joint.save', edit('north side'))).toMatchObject({ version: 2 });
    expect(await askBadly(started, 'joint.save', edit('south side'))).toMatchObject({
      code: 'conflict',
      details: [{ field: 'version', value: '1', allowed: expect.stringContaining('2') }],
    });
    expect((await ask(started, 'joint.get', { id: joint.id })).data.location).toBe('north side');
  });

  test('that changes nothing makes no event', async () => {
    const { id, version, data } = await ask(started, 'joint.get', { id: plant.jointId });
    const before = await events();
    expect(await ask(started, 'joint.save', { key: key(), id, version, data })).toMatchObject({ version: 1 });
    expect(await events()).toBe(before);
  });

  test('may not take a name that is in use, whatever its case', async () => {
    const again = { key: key(), id: null, version: null, data: jointA(plant.unitId, 'j-0001 ') };
    expect(await askBadly(started, 'joint.save', again)).toMatchObject({
      code: 'duplicate',
      details: [{ field: 'data.tag', value: 'j-0001' }],
    });
  });

  test('of something that is not there is answered so', async () => {
    const missing = key();
    expect((await askBadly(started, 'joint.get', { id: missing })).code).toBe('not_found');
    const data = { name: 'x' };
    expect((await askBadly(started, 'unit.save', { key: key(), id: missing, version: 1, data })).code).toBe(
      'not_found',
    );
    const joint = { key: key(), id: null, version: null, data: jointA(missing, 'J-9') };
    expect(await askBadly(started, 'joint.save', joint)).toMatchObject({
      code: 'not_found',
      details: [{ field: 'data.unitId', value: missing }],
    });
  });
});

describe('bad input is named by field, value and what is allowed, and changes nothing', () => {
  const refused = async (name: string, input: unknown) => {
    const before = await ask(started, 'register.state', {});
    const error = await askBadly(started, name, input);
    expect(await ask(started, 'register.state', {})).toEqual(before);
    return error;
  };

  test.each(['nothing.here', 'constructor', '__proto__', ''])('a request called "%s"', async (name) => {
    expect((await refused(name, {})).code).toBe('unknown_request');
  });

  test('an unknown key, also deep inside', async () => {
    const data = { ...jointA(plant.unitId, 'J-2'), colour: 'red' };
    const deep = jointA(plant.unitId, 'J-2');
    const input = { key: key(), id: null, version: null };
    expect(await refused('joint.save', { ...input, data })).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'data.colour', value: 'red', allowed: 'there is no such field' }],
    });
    const bolting = { ...deep.bolting, length: 1 };
    expect(await refused('joint.save', { ...input, data: { ...deep, bolting } })).toMatchObject({
      details: [{ field: 'data.bolting.length', value: '1' }],
    });
  });

  test('several fields at once', async () => {
    const data = jointA(plant.unitId, '');
    data.bolting.count = 0;
    data.bolting.studLength = { text: '12,5', unit: 'mm' };
    const error = await refused('joint.save', { key: key(), id: null, version: null, data });
    expect(error.code).toBe('invalid_input');
    expect(error.details).toEqual([
      { field: 'data.tag', value: '', allowed: 'needed' },
      { field: 'data.bolting.count', value: '0', allowed: 'allowed 1 to 400' },
      {
        field: 'data.bolting.studLength',
        value: '12,5 mm',
        allowed: expect.stringContaining('point as the decimal sign'),
      },
    ]);
  });

  test('a missing key, nothing at all, a string', async () => {
    expect((await refused('unit.save', { id: null, version: null, data: { name: 'x' } })).details).toEqual([
      { field: 'key', value: '', allowed: 'needed' },
    ]);
    expect((await refused('unit.save', undefined)).code).toBe('invalid_input');
    expect((await refused('unit.save', 'text')).code).toBe('invalid_input');
  });

  test('half a surrogate pair', async () => {
    const save = { key: key(), id: null, version: null, data: { name: 'Unit \ud800' } };
    expect(await refused('unit.save', save)).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'data.name' }],
    });
  });

  test('a pump in the place of the wrench', async () => {
    const tools = { ...plant.tools, driveId: plant.tools.pumpId };
    expect(await refused('setting.compute', settingFor(plant, { tools }))).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'tools.driveId', value: 'P-1, a pump', allowed: 'a drive unit' }],
    });
  });

  test('a plan that does not exist', async () => {
    expect(await refused('setting.compute', settingFor(plant, { planId: 'by feel' }))).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'planId', value: 'by feel' }],
    });
  });

  test('work in the future, without pressure and torque, or by the same person twice', async () => {
    const record = (changes: object) =>
      refused('event.recordTightening', { key: key(), data: { ...tighteningOf(plant), ...changes } });
    expect((await record({ happenedAt: '2026-03-17T09:00:00+01:00' })).details[0]?.field).toBe(
      'data.happenedAt',
    );
    expect((await record({ dialled: null })).details[0]?.field).toBe('data.torque');
    expect((await record({ personIds: [plant.personId, plant.personId] })).details[0]?.field).toBe(
      'data.personIds',
    );
    expect((await record({ personIds: [key()] })).code).toBe('not_found');
    expect((await record({ settingId: key() })).code).toBe('not_found');
  });

  test('a stud read twice', async () => {
    const reading = { bolt: 1, outcome: 'turned' as const, torque: null, dialled: null };
    const data = breakoutOf(plant, { readings: [reading, reading] });
    expect((await refused('event.recordBreakout', { key: key(), data })).details[0]?.field).toBe(
      'data.readings',
    );
  });

  test('a certificate that ends before it begins, is taken, or hangs on a hose', async () => {
    await certify(started, plant);
    const add = (changes: object) =>
      refused('certificate.add', { key: key(), data: { ...base, ...changes } });
    const tool = await ask(started, 'tool.get', { id: plant.tools.driveId ?? '' });
    const base = { ...tool.certificates[0]?.data, number: 'C-2' };
    expect((await add({ validUntil: '2025-01-01' })).details[0]?.field).toBe('data.validUntil');
    expect((await add({ number: 'c-1' })).code).toBe('duplicate');
    expect((await add({ toolId: plant.tools.hoseIds[0] })).details[0]?.field).toBe('data.measured.kind');
  });

  test('a setting of another joint or kind of work', async () => {
    await certify(started, plant);
    const other = await saveJoint(started, jointA(plant.unitId, 'J-0002'));
    const issue = { key: key(), data: settingFor(plant), personId: plant.personId };
    const { id: settingId } = await ask(started, 'setting.issue', issue);
    const tightening = tighteningOf(plant, { settingId, jointId: other.id });
    expect(
      (await refused('event.recordTightening', { key: key(), data: tightening })).details[0],
    ).toMatchObject({
      field: 'data.settingId',
      allowed: expect.stringContaining('J-0001'),
    });
    const breakout = breakoutOf(plant, { settingId });
    expect((await refused('event.recordBreakout', { key: key(), data: breakout })).details[0]?.field).toBe(
      'data.settingId',
    );
  });

  test('a time zone that does not exist', async () => {
    const fresh = startService(temporaryFolder());
    const create = { key: key(), data: { content: 'empty', siteName: 'S', timeZone: 'Mars/Base' } };
    expect(await askBadly(fresh, 'register.create', create)).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'data.timeZone', value: 'Mars/Base' }],
    });
    expect((await ask(fresh, 'register.state', {})).state).toBe('none');
    expect((await askBadly(fresh, 'unit.list', {})).code).toBe('not_open');
    await fresh.service.close();
  });
});

test('a write that fails half-way leaves nothing and does not hold up the next', async () => {
  // A planted fault: the last statement of the write, the receipt, is refused by the database.
  const other = new Database(join(folder, 'register.sqlite'));
  other.exec(
    `create trigger planted before insert on request_receipt begin select raise(abort, 'planted fault'); end`,
  );
  other.close();
  const before = await ask(started, 'register.state', {});
  const error = await askBadly(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant) });
  expect(error.code).toBe('internal');
  const [line] = started.log;
  expect(line?.message).toContain(error.details[0]?.value);
  expect(String(line?.error)).toContain('planted fault');
  expect(error.message).not.toContain('planted fault');
  expect(await ask(started, 'register.state', {})).toEqual(before);
  expect((await ask(started, 'joint.chart', { id: plant.jointId })).total).toBe(0);

  const repair = new Database(join(folder, 'register.sqlite'));
  repair.exec('drop trigger planted');
  repair.close();
  await ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant) });
  expect(await events()).toBe(before.events + 1);
});

test('while another program holds the write lock, a write is answered as busy and nothing is lost', {
  timeout: 20_000,
}, async () => {
  const other = new Database(join(folder, 'register.sqlite'));
  other.exec('begin immediate');
  const input = { key: key(), data: tighteningOf(plant) };
  expect((await askBadly(started, 'event.recordTightening', input)).code).toBe('busy');
  expect((await ask(started, 'joint.get', { id: plant.jointId })).version).toBe(1);
  other.exec('rollback');
  other.close();
  expect((await ask(started, 'event.recordTightening', input)).alreadyRecorded).toBe(false);
});

test.each([
  ['NaN', Number.NaN],
  ['infinity', Number.POSITIVE_INFINITY],
  ['true', true],
  ['a Date', new Date(0)],
  ['undefined', undefined],
  ['an object', { a: 1 }],
  ['half a surrogate pair', '\ud800'],
])('%s does not bind', async (_, value) => {
  const database = new Database(':memory:');
  database.exec('create table person (id text, version any)');
  const db = queryBuilder(database);
  const row = { id: 'x', version: value as number, name: '', name_key: '', role: '' };
  const insert = db
    .insertInto('person')
    .values({ ...row, id: 'x' })
    .compile();
  const run = db.executeQuery({
    ...insert,
    sql: 'insert into person (id, version) values (?, ?)',
    parameters: ['x', value],
  });
  await expect(run).rejects.toThrow(/does not bind as itself/);
  expect(database.prepare('select count(*) as n from person').get()).toEqual({ n: 0 });
});

test('after closing, every request is answered', async () => {
  await started.service.close();
  expect((await askBadly(started, 'unit.list', {})).code).toBe('not_open');
  expect((await askBadly(started, 'register.state', {})).code).toBe('not_open');
});
