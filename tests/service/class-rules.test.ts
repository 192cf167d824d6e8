import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ClassRuleInput } from '../../core/contract/life.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { addMember, beginWith, type Member } from './crew.ts';
import { temporaryFolder } from './folder.ts';
import { nextAt, type Stepping, standing, stepOf, TO_MADE_UP } from './life.ts';
import { certify, enterPlant, jointA, saveJoint, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
let plant: TestPlant;
let engineer: Member;
let technician: Member;
let planner: Member;
let keeper: Member;

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  const administrator = await beginWith(started);
  engineer = await addMember(started, administrator, 'Eva Engineer', ['engineer']);
  technician = await addMember(started, administrator, 'Tom Technician', ['technician']);
  planner = await addMember(started, administrator, 'Pia Planner', ['planner']);
  keeper = await addMember(started, administrator, 'Kim Keeper', ['keeper']);
});
afterAll(() => started.service.close());

const RULE: ClassRuleInput = {
  name: 'Class B',
  level: 'intermediate',
  fields: null,
  completeRecord: false,
  witnessPercent: 0,
  loadCheckPercent: 0,
  leakTest: { needed: false, methods: [], words: '' },
  retightening: { afterDwell: false, dwell: 4, duringStartUp: false, words: '' },
  technicianLevel: '',
  signs: [],
  source: 'invented procedure 7',
};

const save = (data: ClassRuleInput, id: string | null = null, version: number | null = null) =>
  ask(engineer.window, 'classRule.save', { key: key(), id, version, data });

const list = async () => (await ask(planner.window, 'classRule.list', {})).rows;

let joints = 1;
async function jointOf(classRuleId: string): Promise<Stepping> {
  joints += 1;
  const tag = `J-${String(joints).padStart(4, '0')}`;
  const { id: jointId } = await saveJoint(planner.window as TestService, jointA(plant.unitId, tag));
  const joint = { jointId, tag, crew: { first: technician.personId, second: plant.personId } };
  await by(engineer, joint, 'assess', { classRuleId, evidence: { basis: 'procedure 7' } });
  return joint;
}

type Rest = Parameters<typeof stepOf>;

async function answer(member: Member, joint: Stepping, step: Rest[1], changes: Rest[2] = {}) {
  const { seen } = await standing(member.window, joint.jointId);
  const data = stepOf(joint, step, { ...changes, by: member.personId });
  return member.window.service.handle('joint.step', { key: key(), seen, data });
}

async function by(member: Member, joint: Stepping, step: Rest[1], changes: Rest[2] = {}) {
  const answered = await answer(member, joint, step, changes);
  if (!answered.ok) expect.fail(`${step}: ${JSON.stringify(answered.error)}`);
  return answered.value as { state: string; outOfOrder: string[] };
}

async function reasons(member: Member, joint: Stepping, step: Rest[1], changes: Rest[2] = {}) {
  const answered = await answer(member, joint, step, changes);
  if (answered.ok) expect.fail(`${step} was expected to be refused`);
  expect(answered.error.code).toBe('refused');
  return answered.error.message;
}

const WHO: Partial<Record<Rest[1], () => Member>> = {
  schedule: () => planner,
  release: () => planner,
};

async function tightened(joint: Stepping) {
  for (const step of TO_MADE_UP.slice(1)) await by((WHO[step] ?? (() => technician))(), joint, step);
  const data = tighteningOf(
    { ...plant, jointId: joint.jointId, personId: technician.personId },
    { happenedAt: nextAt() },
  );
  await ask(technician.window, 'event.recordTightening', { key: key(), data });
}

describe('the site’s classes', () => {
  test('come after those of the program, with how many joints have each', async () => {
    const { id } = await save(RULE);
    await jointOf(id);
    const rows = await list();
    expect(rows.slice(0, 3).map(({ origin, data }) => [origin, data.name])).toEqual([
      ['shipped', 'mild'],
      ['shipped', 'intermediate'],
      ['shipped', 'critical'],
    ]);
    expect(rows.find((row) => row.origin === 'site' && row.id === id)).toMatchObject({
      version: 1,
      joints: 1,
    });
  });

  test('have names of their own, and stay on their level', async () => {
    const { id } = await save({ ...RULE, name: 'Class C' });
    const send = (data: ClassRuleInput, at: string | null = null, version: number | null = null) =>
      askBadly(engineer.window, 'classRule.save', { key: key(), id: at, version, data });
    expect((await send({ ...RULE, name: 'class c' })).code).toBe('duplicate');
    expect((await send({ ...RULE, name: 'Critical' })).code).toBe('duplicate');
    const moved = await send({ ...RULE, name: 'Class C', level: 'mild' }, id, 1);
    expect(moved.details[0]).toMatchObject({ field: 'data.level', value: 'mild' });
    const twice = { step: 'hold' as const, roles: ['engineer' as const] };
    const signed = await send({ ...RULE, name: 'Class D', signs: [twice, twice] });
    expect(signed).toMatchObject({ code: 'invalid_input', details: [{ field: 'data.signs.1.step' }] });
    await save({ ...RULE, name: 'Class C', witnessPercent: 20 }, id, 1);
    expect((await send({ ...RULE, name: 'Class C' }, id, 1)).code).toBe('conflict');
  });

  test('one that is retired is given to no further joint, and keeps those it has', async () => {
    const { id } = await save({ ...RULE, name: 'Class R' });
    const joint = await jointOf(id);
    await save({ ...RULE, name: 'Class R', retired: true }, id, 1);
    const { seen } = await standing(engineer.window, joint.jointId);
    const data = stepOf(joint, 'assess', {
      by: engineer.personId,
      classRuleId: id,
      evidence: { basis: 'again' },
    });
    const error = await askBadly(engineer.window, 'joint.step', { key: key(), seen, data });
    expect(error.details[0]).toMatchObject({ field: 'data.classRuleId', value: 'Class R' });
    expect((await standing(engineer.window, joint.jointId)).class?.name).toBe('Class R');
  });

  test('rest on one level: an assessment that says another is refused', async () => {
    const { id } = await save({ ...RULE, name: 'Class L' });
    const joint = await jointOf(id);
    const { seen } = await standing(engineer.window, joint.jointId);
    const evidence = { class: 'mild', basis: 'other' };
    const data = stepOf(joint, 'assess', { by: engineer.personId, classRuleId: id, evidence });
    const error = await askBadly(engineer.window, 'joint.step', { key: key(), seen, data });
    expect(error.details[0]?.field).toBe('data.evidence.class');
  });
});

describe('what follows from a class', () => {
  test('at half witnessed, the first tightening is due and the second is not', async () => {
    const { id } = await save({ ...RULE, name: 'Class W', witnessPercent: 50 });
    const first = await jointOf(id);
    await tightened(first);
    const other = await jointOf(id);
    await tightened(other);
    expect(await reasons(technician, first, 'test')).toContain('number 1 of class Class W');
    expect((await by(technician, other, 'test')).state).toBe('tested');
    const witnessed = { witnessId: engineer.personId, result: 'as it should be' };
    await by(engineer, first, 'witness', { evidence: witnessed });
    expect((await by(technician, first, 'test')).state).toBe('tested');
  });

  test('a test is by a method that counts, and a joint is reinstated by who signs for it', async () => {
    const { id } = await save({
      ...RULE,
      name: 'Class T',
      leakTest: { needed: true, methods: ['soap solution'], words: '' },
      signs: [{ step: 'reinstate', roles: ['engineer'] }],
    });
    const joint = await jointOf(id);
    await tightened(joint);
    const gauge = { gauge: 'G-9', gaugeDueOn: '2026-12-31' };
    const evidence = {
      medium: 'air',
      pressure: { text: '5', unit: 'bar' },
      hold: { text: '5', unit: 'min' },
      result: 'passed',
      method: 'sight',
      ...gauge,
    };
    expect(await reasons(technician, joint, 'test', { evidence })).toContain(
      'class Class T accepts soap solution; this test was by sight',
    );
    const soap = { ...evidence, method: 'soap solution' };
    const old = { ...soap, gaugeDueOn: '2026-03-15' };
    expect(await reasons(technician, joint, 'test', { evidence: old })).toContain(
      'the gauge was not in date',
    );
    const unknown = { ...soap, gaugeDueOn: null };
    expect(await reasons(technician, joint, 'test', { evidence: unknown })).toContain('is not known');
    const own = { ...soap, gauge: '', gaugeDueOn: null, gaugeToolId: plant.tools.gaugeId };
    expect((await by(technician, joint, 'test', { evidence: own })).state).toBe('tested');
    expect(await reasons(technician, joint, 'reinstate')).toContain('reinstate is for engineer');
    expect((await by(engineer, joint, 'reinstate')).state).toBe('reinstated');
  });

  test('a complete record is needed where the class says so, and what it lacks is named', async () => {
    const { id } = await save({
      ...RULE,
      name: 'Class F',
      completeRecord: true,
      fields: ['gasket new', 'gasket identity'],
    });
    const joint = await jointOf(id);
    await tightened(joint);
    expect(await reasons(technician, joint, 'reinstate')).toContain('the record lacks 1: gasket identity');
    const view = await standing(technician.window, joint.jointId);
    const reinstate = view.steps.find(({ step }) => step === 'reinstate');
    expect(reinstate?.open).toBe(false);
    expect(reinstate?.guards.filter((guard) => guard.standing === 'not met')).toEqual([
      {
        says: 'a complete record, where the class asks for one',
        standing: 'not met',
        reason: 'the record lacks 1: gasket identity',
      },
    ]);
  });
});

describe('who may', () => {
  test('work by a role that is not for it is refused, and kept with that reason once it was really done', async () => {
    const { id } = await save({ ...RULE, name: 'Class K' });
    const joint = await jointOf(id);
    for (const step of ['schedule', 'isolate', 'release'] as const) {
      await by((WHO[step] ?? (() => technician))(), joint, step);
    }
    expect(await reasons(keeper, joint, 'break')).toContain('break is for engineer or technician');
    const done = await by(keeper, joint, 'break', { reallyDone: { reason: 'nobody else was there' } });
    expect(done).toMatchObject({
      state: 'released to break',
      outOfOrder: ['break is for engineer or technician'],
    });
  });

  test('nobody is made a witness by somebody else', async () => {
    const { id } = await save({ ...RULE, name: 'Class S' });
    const joint = await jointOf(id);
    await tightened(joint);
    const evidence = { witnessId: engineer.personId, result: 'as it should be' };
    expect(await reasons(technician, joint, 'witness', { evidence })).toContain('Nobody signs for another');
  });
});
