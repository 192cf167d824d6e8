import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import type { JointInput } from '../../core/contract/joint.ts';
import type { SettingInput } from '../../core/contract/setting.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import {
  certify,
  enterPlant,
  jointA,
  saveJoint,
  settingFor,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let started: TestService;
afterEach(() => started.service.close());

async function begin(folder = temporaryFolder()) {
  started = startService(folder);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  return plant;
}

const q = <U extends string>(text: string, unit: U) => ({ text, unit });

/** The worked joint with a second set of four smaller bolts. */
function withSecondSet(unitId: string): JointInput {
  const data = jointA(unitId, 'J-0002');
  const bolting = { ...data.bolting, count: 4, thread: '3/4-10 UNC', nutSeries: null };
  const second = {
    name: 'cover bolts',
    bolting,
    lubricant: null,
    target: data.target,
    limits: data.limits,
    space: data.space,
  };
  return { ...data, boltSets: [second] };
}

const handWrench: SettingInput['torqueTool'] = {
  number: 'HW-1',
  scale: { by: 'torque', least: q('40', 'N.m'), most: q('500', 'N.m'), graduation: q('5', 'N.m') },
  certificate: 'invented 7',
  validUntil: '2026-12-31',
};

describe('an issued setting computed again', () => {
  async function issue(plant: TestPlant, changes: Partial<SettingInput> = {}) {
    const data = settingFor(plant, changes);
    return ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
  }

  test('by the same core is equal, with its simulation', async () => {
    const plant = await begin();
    const { id } = await issue(plant, { withUncertainty: true });
    const again = await ask(started, 'setting.recompute', { id });
    expect(again).toMatchObject({ equal: true, count: 0, differences: [] });
    expect(again.coreThen).toBe(again.coreNow);
    expect(again.finding).toContain('every number is the same');
    expect((await ask(started, 'setting.get', { id })).card.uncertainty?.simulation).not.toBeNull();
  });

  test('stays equal after joint, tool and certificate have been edited', async () => {
    const plant = await begin();
    const { id } = await issue(plant);
    const joint = await ask(started, 'joint.get', { id: plant.jointId });
    await ask(started, 'joint.save', {
      key: key(),
      id: joint.id,
      version: joint.version,
      data: { ...joint.data, target: null },
    });
    await certify(started, plant, { number: 'C-2', calibratedOn: '2026-03-01' });
    expect((await ask(started, 'setting.recompute', { id })).equal).toBe(true);
  });

  test('is not found under an id that is none', async () => {
    await begin();
    const error = await askBadly(started, 'setting.recompute', {
      id: '018f0000-0000-7000-8000-0000000000ff',
    });
    expect(error.code).toBe('not_found');
  });
});

describe('a job sheet', () => {
  const sheet = { boltCount: 12, thread: '7/8-9 UNC', grade: 'A193 B7', gasket: null, torque: null };
  const torqueTolerance = q('5', 'percent');

  test('that agrees has no difference; what it does not say is not agreement', async () => {
    const plant = await begin();
    const answer = await ask(started, 'joint.compareSheet', {
      jointId: plant.jointId,
      ...sheet,
      torqueTolerance,
    });
    expect(answer.differences).toEqual([]);
    expect(answer.agreed).toBe(5);
    expect(answer.references).toEqual([
      { against: 'register', name: 'J-0001' },
      { against: 'standard', name: 'ASME B16.5, 8, 300' },
    ]);
    expect(answer.notCompared.map(({ field }) => field)).toEqual(['gasket', 'torque']);
  });

  test('is held against register, standard and sisters, each difference named', async () => {
    const plant = await begin();
    await saveJoint(started, {
      ...jointA(plant.unitId, 'J-0003'),
      gasket: { type: 'flat ring', thickness: null },
    });
    // Another flange is no sister.
    const other = jointA(plant.unitId, 'J-0004');
    if (other.flange.kind !== 'standard') expect.fail('the fixture is a standard flange');
    await saveJoint(started, { ...other, flange: { ...other.flange, size: '6' } });
    const answer = await ask(started, 'joint.compareSheet', {
      jointId: plant.jointId,
      ...sheet,
      boltCount: 16,
      gasket: 'spiral wound, inner ring',
      torque: q('500', 'N.m'),
      torqueTolerance,
    });
    expect(answer.references.map(({ name }) => name)).toEqual(['J-0001', 'ASME B16.5, 8, 300', 'J-0003']);
    expect(answer.differences.map(({ field, against }) => [field, against])).toEqual([
      ['boltCount', 'register'],
      ['torque', 'register'],
      ['boltCount', 'standard'],
      ['boltCount', 'sister joint'],
      ['gasket', 'sister joint'],
      ['torque', 'sister joint'],
    ]);
    expect(answer.differences[0]?.text).toBe('number of bolts: the sheet says 16, register J-0001 says 12');
  });

  test('is held against the torque of the setting issued last', async () => {
    const plant = await begin();
    const data = settingFor(plant);
    await ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
    // 384.2 N·m at the mark, 383.4 wanted: 0.1 % tells the two apart.
    const answer = await ask(started, 'joint.compareSheet', {
      jointId: plant.jointId,
      ...sheet,
      torque: q('384.2', 'N.m'),
      torqueTolerance: q('0.1', 'percent'),
    });
    expect(answer.differences).toEqual([]);
  });
});

describe('without a pressure', () => {
  test('a hand wrench is set to its nearest mark and issued by its own certificate', async () => {
    const plant = await begin();
    const tools = {
      ...plant.tools,
      driveId: null,
      cassetteId: null,
      pumpId: null,
      gaugeId: null,
      hoseIds: [],
    };
    const data = settingFor(plant, { tools, method: 'hand torque wrench', torqueTool: handWrench });
    const card = await ask(started, 'setting.compute', data);
    expect(card.dial).toBeNull();
    expect(card.toolSetting).toMatchObject({ tool: 'HW-1', text: '385 N·m', torque: 385 });
    expect(card.passes.map(({ set }) => set)).toEqual([null, '130 N·m', '255 N·m', '385 N·m', '385 N·m']);
    expect(card.findings.filter(({ severity }) => severity === 'refusal')).toEqual([]);
    const { id } = await ask(started, 'setting.issue', { key: key(), data, personId: plant.personId });
    const done = await ask(started, 'event.recordTightening', {
      key: key(),
      data: tighteningOf(plant, {
        settingId: id,
        tools,
        method: 'hand torque wrench',
        torqueTool: handWrench,
        dialled: null,
        torque: q('385', 'N.m'),
      }),
    });
    const event = await ask(started, 'event.get', { id: done.id });
    expect(event).toMatchObject({
      method: 'hand torque wrench',
      torqueTool: { number: handWrench.number, certificate: handWrench.certificate },
      flags: [],
      load: null,
    });
    expect(event.torques[0]).toMatchObject({ dialled: null, torque: 385 });
  });

  test('a lapsed certificate of the hand wrench is refused', async () => {
    const plant = await begin();
    const torqueTool = { ...handWrench, validUntil: '2026-03-15' };
    const data = settingFor(plant, { method: 'hand torque wrench', torqueTool });
    const error = await askBadly(started, 'setting.issue', { key: key(), data, personId: plant.personId });
    expect(error.details.map(({ field }) => field)).toContain('certificate_lapsed');
  });

  test('a tensioned joint has a load and no torque, and is recorded with its load', async () => {
    const plant = await begin();
    const card = await ask(started, 'setting.compute', settingFor(plant, { method: 'tensioner' }));
    expect(card).toMatchObject({ dial: null, torque: null, targetTorque: null, split: null });
    expect(card.load).toBeCloseTo(card.targetLoad ?? Number.NaN, 6);
    expect(card.findings.map(({ code }) => code)).toContain('tension_has_no_torque');

    const record = tighteningOf(plant, { method: 'tensioner', dialled: null, torque: null });
    const refused = await askBadly(started, 'event.recordTightening', { key: key(), data: record });
    expect(refused.details[0]?.field).toBe('data.load');
    const data = { ...record, load: q('108', 'kN') };
    const { id } = await ask(started, 'event.recordTightening', { key: key(), data });
    const event = await ask(started, 'event.get', { id });
    expect(event).toMatchObject({ method: 'tensioner', load: 108_000 });
    expect(event.torques[0]?.torque).toBeNull();
    const history = await ask(started, 'joint.history', { id: plant.jointId, page: 1, pageSize: 10 });
    expect(history.rows.map(({ summary }) => summary)).toContain('tensioned to 108 kN, 12 studs');
  });
});

describe('a joint with two bolt sets', () => {
  test('has a card for each; nothing of the flange standard fills the second', async () => {
    const plant = await begin();
    const { id: jointId } = await saveJoint(started, withSecondSet(plant.unitId));
    const first = await ask(started, 'setting.compute', settingFor(plant, { jointId }));
    const second = await ask(started, 'setting.compute', settingFor(plant, { jointId, boltSet: 1 }));
    expect(first).toMatchObject({ boltCount: 12, boltSet: { index: 0, name: 'bolting of the joint' } });
    expect(second).toMatchObject({ boltCount: 4, boltSet: { index: 1, name: 'cover bolts' } });
    expect(second.targetLoad ?? 0).toBeLessThan(first.targetLoad ?? 0);
    expect(second.findings.map(({ code }) => code)).toContain('nut_unknown');
    expect(first.gaskets).toMatchObject([{ stress: null }]);
    expect(second.gaskets).toEqual(first.gaskets);
    const third = await ask(started, 'setting.compute', settingFor(plant, { jointId, boltSet: 2 }));
    expect(third.findings.map(({ code }) => code)).toContain('bolt_set_unknown');
  });

  test('is recorded set by set: a breakout looks back at its own', async () => {
    const plant = await begin();
    const { id: jointId } = await saveJoint(started, withSecondSet(plant.unitId));
    const data = tighteningOf(plant, { jointId, boltSet: 1, boltsTightened: 4, dialled: q('100', 'bar') });
    const { id } = await ask(started, 'event.recordTightening', { key: key(), data });
    const event = await ask(started, 'event.get', { id });
    expect(event).toMatchObject({ boltSet: 'cover bolts', torqueTool: null });
    expect(event.torques[0]?.dialled).toBe('100 bar');
    expect(event.flags.filter((flag) => flag.startsWith('unfinished'))).toEqual([]);
    const breakout = (boltSet: number) =>
      ask(started, 'setting.compute', settingFor(plant, { jointId, boltSet, kind: 'breakout' }));
    expect((await breakout(1)).breakout?.installedOrigin).toBe('entered');
    expect((await breakout(0)).breakout?.installedOrigin).toBe('assumed');
  });
});

test('the spread of the load is simulated only when asked for', async () => {
  const plant = await begin();
  const plain = await ask(started, 'setting.compute', settingFor(plant));
  expect(plain.uncertainty?.simulation).toBeNull();
  const full = await ask(started, 'setting.compute', settingFor(plant, { withUncertainty: true }));
  const simulation = full.uncertainty?.simulation;
  expect(simulation?.draws).toBe(100_000);
  expect(simulation?.interval[0]).toBeLessThan(full.load ?? Number.NaN);
  expect(simulation?.interval[1]).toBeGreaterThan(full.load ?? Number.NaN);
  expect(simulation?.probabilities.map(({ limit, subject }) => [limit, subject])).toEqual(
    expect.arrayContaining([
      ['largest bolt stress', 'single bolt'],
      ['largest bolt stress by the flange', 'joint mean'],
    ]),
  );
});

test('a gasket’s batch is traced to the joint it went on, like a lubricant’s', async () => {
  const folder = temporaryFolder();
  const plant = await begin(folder);
  const data = jointA(plant.unitId, 'J-0005');
  if (data.gasket === null) expect.fail('the fixture has a gasket');
  const gasket = { ...data.gasket, batch: 'G-9' };
  // Both gaskets of the girth joint are of one batch: it is named once.
  const { id: jointId } = await saveJoint(started, { ...data, gasket, furtherGaskets: [gasket] });
  await ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant, { jointId }) });
  const register = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const batches = register.prepare('select kind, name, number from batch order by kind').all();
  register.close();
  expect(batches).toEqual([
    { kind: 'gasket', name: 'spiral wound, inner ring', number: 'G-9' },
    { kind: 'lubricant', name: 'nickel-based anti-seize', number: 'L-1' },
  ]);
});

test('a field out of range names itself and what is allowed', async () => {
  const plant = await begin();
  const data = jointA(plant.unitId, 'J-0006');
  if (data.gasket === null) expect.fail('the fixture has a gasket');
  const error = await askBadly(started, 'joint.save', {
    key: key(),
    id: null,
    version: null,
    data: { ...data, gasket: { ...data.gasket, retainedOperating: q('120', 'percent') } },
  });
  expect(error.details).toEqual([
    {
      field: 'data.gasket.retainedOperating',
      value: '120 percent',
      allowed: '120 %: allowed 0 % to 100 %',
    },
  ]);
});
