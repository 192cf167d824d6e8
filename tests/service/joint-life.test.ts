import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TighteningInput } from '../../core/contract/event.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { nextAt, type Stepping, standing, stepOf, TO_MADE_UP, take, takeAll, takeBadly } from './life.ts';
import { passOf } from './passes.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  type TestPlant,
  tighteningOf,
} from './records.ts';

const folder = temporaryFolder();
let started: TestService;
let plant: TestPlant;
let second: string;
let engineer: string;

const person = async (name: string) =>
  (await ask(started, 'person.save', { key: key(), id: null, version: null, data: { name, role: '' } })).id;

beforeAll(async () => {
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  second = await person('B. Person');
  engineer = await person('E. Engineer');
});
afterAll(() => started.service.close());

let joints = 1;
async function freshJoint(): Promise<Stepping> {
  joints += 1;
  const tag = `J-${String(joints).padStart(4, '0')}`;
  const { id } = await saveJoint(started, jointA(plant.unitId, tag));
  return { jointId: id, tag, crew: { first: plant.personId, second } };
}

const tighten = ({ jointId }: Stepping, changes: Partial<TighteningInput> = {}) =>
  ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf({ ...plant, jointId }, { happenedAt: nextAt(), ...changes }),
  });

const breakOut = ({ jointId }: Stepping, happenedAt = nextAt()) =>
  ask(started, 'event.recordBreakout', {
    key: key(),
    data: breakoutOf({ ...plant, jointId }, { happenedAt }),
  });

const stateOf = async ({ jointId }: Stepping) => (await standing(started, jointId)).state;
const historyOf = async ({ jointId }: Stepping) =>
  (await ask(started, 'joint.history', { id: jointId, page: 1, pageSize: 50 })).rows;
const events = async () => (await ask(started, 'register.state', {})).events;

async function decide(joint: Stepping, decision: 'accept as done' | 'to be done again' | 'hold') {
  const { seen, deviation } = await standing(started, joint.jointId);
  return ask(started, 'deviation.decide', {
    key: key(),
    seen,
    data: {
      jointId: joint.jointId,
      deviationId: deviation?.id ?? '',
      decision,
      reason: 'looked at the joint',
      personId: engineer,
      happenedAt: nextAt(),
    },
  });
}

describe('the whole life of a joint', () => {
  test('from a joint nobody has assessed to service and into a leak watch, each state on the way', async () => {
    const joint = await freshJoint();
    expect(await standing(started, joint.jointId)).toMatchObject({
      state: 'unassessed',
      since: null,
      containment: 'not followed',
      class: null,
    });
    const states: string[] = [];
    for (const step of TO_MADE_UP) states.push((await take(started, joint, step)).state);
    expect(states).toEqual([
      'assessed',
      'scheduled',
      'isolated',
      'released to break',
      'broken',
      'inspected',
      'made up',
    ]);
    expect(await standing(started, joint.jointId)).toMatchObject({
      containment: 'open',
      isolationRef: 'I-1',
      permitRef: 'P-1',
      class: { name: 'mild', level: 'mild', ruleId: null },
      rule: { name: 'mild', leakTest: { needed: false } },
    });

    const run = {
      plant: { ...plant, jointId: joint.jointId },
      runId: crypto.randomUUID(),
      settingId: null,
      confirmedBy: second,
    };
    const { seen } = await standing(started, joint.jointId);
    const endedAt = nextAt();
    const changes = { startedAt: endedAt, endedAt, boltsDone: [1, 7, 4] };
    const stoppedBecause = { reason: 'shift change' as const };
    const data = { ...passOf(run, 2, changes), stoppedBecause };
    const { id: passId } = await ask(started, 'pass.record', { key: key(), seen, data });
    expect(await standing(started, joint.jointId)).toMatchObject({
      state: 'tightening',
      pass: { boltSet: 0, number: 2, of: 5, lastBolt: 4, stopped: 'shift change' },
    });

    await tighten(joint, { passIds: [passId] });
    expect(await standing(started, joint.jointId)).toMatchObject({
      state: 'tightened',
      containment: 'closed',
      pass: null,
    });
    for (const step of ['witness', 'test', 'reinstate', 'enter service'] as const) {
      states.push((await take(started, joint, step)).state);
    }
    expect((await take(started, joint, 'report leak')).state).toBe('leak watch');
    expect((await take(started, joint, 'close leak watch')).state).toBe('in service');
    expect(states.slice(-4)).toEqual(['witnessed', 'tested', 'reinstated', 'in service']);
    expect(await standing(started, joint.jointId)).toMatchObject({ isolationRef: null, permitRef: null });

    const rows = await historyOf(joint);
    expect(rows.filter(({ kind }) => kind === 'step')).toHaveLength(13);
    expect(rows.flatMap(({ flags }) => flags.filter((flag) => flag.startsWith('out of order')))).toEqual([]);
    const release = rows.find(({ summary }) => summary.startsWith('release'));
    expect(release).toMatchObject({ summary: 'release: P-1, 2 identity checks', by: 'A. Person, B. Person' });
    const record = await ask(started, 'record.completeness', { jointId: joint.jointId, eventId: null });
    expect(record.class).toBe('mild');
    for (const field of ['gasket new', 'leak test', 'witness', 'reinstated by', 'identity checks']) {
      expect(record.fields.find((one) => one.field === field)?.state, field).toBe('known');
    }
  });

  test('a breakout opens a joint that is released, and one that is not is kept and flagged', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'schedule', 'isolate']);
    await breakOut(joint);
    const out = await standing(started, joint.jointId);
    expect(out).toMatchObject({ state: 'isolated', containment: 'closed' });
    expect(out.deviation).toMatchObject({ state: 'isolated', ifAccepted: 'broken' });
    const [row] = (await historyOf(joint)).filter(({ kind }) => kind === 'breakout');
    expect(row?.flags).toContain('out of order: breakout recorded while isolated');

    const inOrder = await freshJoint();
    await takeAll(started, inOrder, ['assess', 'schedule', 'isolate', 'release']);
    await breakOut(inOrder);
    expect(await standing(started, inOrder.jointId)).toMatchObject({ state: 'broken', deviation: null });
  });

  test('records on a joint nobody has assessed are kept, and no order is followed', async () => {
    const joint = await freshJoint();
    await tighten(joint);
    await breakOut(joint);
    expect(await standing(started, joint.jointId)).toMatchObject({ state: 'unassessed', deviation: null });
    expect((await historyOf(joint)).flatMap(({ flags }) => flags).join()).not.toContain('out of order');
  });
});

describe('a step that is not legal', () => {
  test('is refused with every reason, and writes nothing', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'schedule', 'isolate']);
    const before = await events();
    const early = await takeBadly(started, joint, 'reinstate');
    expect(early.code).toBe('refused');
    expect(early.message).toMatch(
      /^reinstate: the joint is isolated: reinstate does not lead on from there.*done out of order/,
    );
    const bare = await takeBadly(started, joint, 'release', { evidence: {} });
    expect(bare.details.map(({ allowed }) => allowed)).toEqual([
      'nobody is stated to have checked which joint this is, and how',
      'no permit reference is given',
      'zero energy at this joint is not stated as proven',
    ]);
    const decided = await takeBadly(started, joint, 'clear hold', { reallyDone: { reason: 'no work' } });
    expect(decided.message).not.toContain('out of order');
    expect(await events()).toBe(before);
    expect(await stateOf(joint)).toBe('isolated');
  });

  test('names people, tools, records and pictures of the register, or nothing', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'schedule']);
    const stranger = crypto.randomUUID();
    const isolated = { isolationRef: 'I-1', provenBy: stranger };
    const faults: readonly (readonly [Parameters<typeof takeBadly>[3], string])[] = [
      [{ by: stranger }, 'data.by'],
      [{ personIds: [stranger] }, 'data.personIds'],
      [{ personIds: [second, second] }, 'data.personIds'],
      [{ evidence: isolated }, 'data.evidence.provenBy'],
      [{ evidence: { isolationRef: 'I-1', pictures: ['a'.repeat(64)] } }, 'data.evidence.pictures'],
      [{ happenedAt: '2026-03-16T13:00:00Z' }, 'data.happenedAt'],
    ];
    for (const [changes, field] of faults) {
      const error = await takeBadly(started, joint, 'isolate', changes);
      expect(error.details[0]?.field, JSON.stringify(error)).toBe(field);
    }
    expect(await stateOf(joint)).toBe('scheduled');
  });

  test('of another window’s time is answered with what happened since', async () => {
    const joint = await freshJoint();
    const { seen } = await standing(started, joint.jointId);
    await take(started, joint, 'assess');
    const error = await askBadly(started, 'joint.step', {
      key: key(),
      seen,
      data: stepOf(joint, 'schedule'),
    });
    expect(error.code).toBe('conflict');
    expect(error.message).toContain('joint stepped');
    expect(await stateOf(joint)).toBe('assessed');
  });

  test('sent twice with one key is taken once', async () => {
    const joint = await freshJoint();
    const { seen } = await standing(started, joint.jointId);
    const input = { key: key(), seen, data: stepOf(joint, 'assess') };
    const first = await ask(started, 'joint.step', input);
    const again = await ask(started, 'joint.step', input);
    expect(again).toEqual({ ...first, alreadyRecorded: true });
    expect((await historyOf(joint)).filter(({ kind }) => kind === 'step')).toHaveLength(1);
  });
});

describe('work out of order', () => {
  test('is kept with its reasons, holds the state until it is decided, and then counts', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'schedule', 'isolate']);
    const done = await take(started, joint, 'break', { reallyDone: { reason: 'found open at the round' } });
    expect(done).toMatchObject({ state: 'isolated' });
    expect(done.outOfOrder).toEqual(['the joint is isolated: break does not lead on from there']);

    const waiting = await takeBadly(started, joint, 'release');
    expect(waiting.message).toContain('a deviation waits for its decision');
    const open = await ask(started, 'deviation.list', {
      state: 'open',
      jointId: joint.jointId,
      page: 1,
      pageSize: 10,
    });
    expect(open).toMatchObject({
      total: 1,
      rows: [
        {
          id: done.id,
          tag: joint.tag,
          state: 'isolated',
          ifAccepted: 'broken',
          works: [{ what: 'break', reasons: done.outOfOrder }],
          decided: null,
        },
      ],
    });

    await tighten(joint);
    expect((await standing(started, joint.jointId)).deviation?.works.map(({ what }) => what)).toEqual([
      'break',
      'tightening',
    ]);

    const { seen } = await standing(started, joint.jointId);
    const own = await askBadly(started, 'deviation.decide', {
      key: key(),
      seen,
      data: {
        jointId: joint.jointId,
        deviationId: done.id,
        decision: 'accept as done',
        reason: 'mine',
        personId: plant.personId,
        happenedAt: nextAt(),
      },
    });
    expect(own.message).toContain('nobody decides on work they did themselves');
    await decide(joint, 'to be done again');
    expect(await standing(started, joint.jointId)).toMatchObject({ state: 'isolated', deviation: null });
    const all = await ask(started, 'deviation.list', {
      state: 'decided',
      jointId: joint.jointId,
      page: 1,
      pageSize: 10,
    });
    expect(all.rows[0]?.decided).toMatchObject({
      decision: 'to be done again',
      reason: 'looked at the joint',
      person: 'E. Engineer',
    });
    expect((await historyOf(joint)).some(({ kind }) => kind === 'deviation decided')).toBe(true);
    const late = await askBadly(started, 'deviation.decide', {
      key: key(),
      seen: (await standing(started, joint.jointId)).seen,
      data: {
        jointId: joint.jointId,
        deviationId: done.id,
        decision: 'hold',
        reason: 'again',
        personId: engineer,
        happenedAt: nextAt(),
      },
    });
    expect(late.message).toContain('this deviation is not open');
  });

  test('tightened with tools nobody certified: not tested until an engineer gives a reason', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, TO_MADE_UP);
    await tighten(joint, { tools: { ...plant.tools, gaugeId: null } });
    const out = await standing(started, joint.jointId);
    expect(out).toMatchObject({ state: 'tightening', deviation: { ifAccepted: 'tightened' } });
    expect((await takeBadly(started, joint, 'test')).code).toBe('refused');
    await decide(joint, 'accept as done');
    expect(await stateOf(joint)).toBe('tightened');
    expect((await take(started, joint, 'test')).state).toBe('tested');
    const { dues } = await standing(started, joint.jointId);
    expect(dues.map(({ text }) => text)).toContain('accepted with a reason: looked at the joint');
  });

  test('an unfinished tightening is no tightened joint', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, TO_MADE_UP);
    await tighten(joint, { boltsTightened: 11 });
    expect(await stateOf(joint)).toBe('tightening');
    await tighten(joint, { finalPassNoTurn: false });
    expect(await stateOf(joint)).toBe('tightening');
    await tighten(joint);
    expect(await stateOf(joint)).toBe('tightened');
  });
});

describe('lists', () => {
  test('joints by state, those nobody has assessed too', async () => {
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'hold']);
    const list = async (state: 'held' | 'unassessed' | null) =>
      ask(started, 'joint.list', {
        text: '',
        unitId: null,
        state,
        sort: 'tag',
        direction: 'asc',
        page: 1,
        pageSize: 200,
      });
    const held = await list('held');
    expect(held.rows.map(({ id }) => id)).toContain(joint.jointId);
    expect(held.rows.every(({ state }) => state === 'held')).toBe(true);
    const all = await list(null);
    const bare = await list('unassessed');
    expect(bare.total).toBe(all.rows.filter(({ state }) => state === 'unassessed').length);
    expect(bare.total).toBeGreaterThan(0);
    expect(all.rows.some(({ deviation }) => deviation)).toBe(true);
  });

  test('open joints are counted by plant unit', async () => {
    const before = (await ask(started, 'joint.containment', {})).rows[0];
    const joint = await freshJoint();
    await takeAll(started, joint, ['assess', 'schedule', 'isolate', 'release', 'break']);
    const { rows } = await ask(started, 'joint.containment', {});
    expect(rows).toEqual([{ ...before, open: (before?.open ?? 0) + 1 }]);
    await take(started, joint, 'hold');
    expect((await ask(started, 'joint.containment', {})).rows[0]).toMatchObject({
      open: (before?.open ?? 0) + 1,
      held: (before?.held ?? 0) + 1,
    });
  });
});

test('a register rebuilt from the bodies of its events has the same standings, classes and deviations', async () => {
  const source = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const target = await rebuilt(source);
  for (const table of projectedTables(source)) {
    expect(rowsOf(target, table), table).toEqual(rowsOf(source, table));
  }
  for (const table of ['joint_standing', 'deviation', 'class_tightening']) {
    expect(rowsOf(source, table).length, table).toBeGreaterThan(1);
  }
  source.close();
});
