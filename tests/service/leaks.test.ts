import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RequestInput, RequestOutput } from '../../core/contract/requests.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { nextAt, type Stepping, standing, stepOf, take } from './life.ts';
import { rebuilt, rowsOf } from './rebuild.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  type TestPlant,
  tighteningOf,
} from './records.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;
let crew: Stepping['crew'];

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder, '2026-03-16T12:00:00Z');
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  const second = await ask(started, 'person.save', {
    key: key(),
    id: null,
    version: null,
    data: { name: 'B. Person', role: 'engineer' },
  });
  crew = { first: plant.personId, second: second.id };
});
afterAll(() => started.service.close());

const newJoint = async (tag: string): Promise<Stepping> => ({
  jointId: (await saveJoint(started, jointA(plant.unitId, tag))).id,
  tag,
  crew,
});

const WORST = { cause: 'load lost', level: 'inferred', why: 'breakout far below installed torque' };

/** A leak in service, where the joint's class is followed. */
async function report(joint: Stepping, evidence: Record<string, unknown> = {}, happenedAt = nextAt()) {
  const { id } = await take(started, joint, 'report leak', {
    happenedAt,
    evidence: { clock: 4, seenFrom: 'pump side', nearBolts: [3, 4], phase: 'in service', ...evidence },
  });
  return id;
}

const FILTER: RequestInput<'leak.list'> = {
  state: null,
  unitId: null,
  phase: null,
  cause: null,
  repeatedOnly: false,
  longerThan: null,
  page: 1,
  pageSize: 50,
};
const list = (changes: Partial<typeof FILTER> = {}) => ask(started, 'leak.list', { ...FILTER, ...changes });
const ofJoint = (id: string) => ask(started, 'joint.leaks', { id });
const row = async (joint: Stepping, id: string) =>
  (await ofJoint(joint.jointId)).rows.find(
    (each) => each.id === id,
  ) as RequestOutput<'leak.list'>['rows'][number];

describe('leak log', () => {
  test('a leak is listed with where it was, what it is put down to and how that is known', async () => {
    const joint = await newJoint('L-1');
    const id = await report(joint, {
      rate: { text: '3', unit: 'mL/min' },
      medium: 'condensate',
      causes: [WORST],
      action: 'drip tray',
    });
    expect(await row(joint, id)).toMatchObject({
      origin: 'report',
      tag: 'L-1',
      clock: 4,
      seenFrom: 'pump side',
      nearBolts: [3, 4],
      boltCount: 12,
      rate: '3 mL/min',
      firstCauses: [WORST],
      foundCauses: null,
      closed: null,
      by: 'A. Person',
      repeated: false,
    });
  });

  test('what is found later stands beside what was said first, and closing stops the clock', async () => {
    const joint = await newJoint('L-2');
    await take(started, joint, 'assess');
    const id = await report(joint, { causes: [WORST] }, '2026-03-16T08:00:00Z');
    expect((await standing(started, joint.jointId)).state).toBe('leak watch');
    const found = { cause: 'wrong gasket', level: 'seen', why: 'marking on the ring' };
    await take(started, joint, 'close leak watch', {
      happenedAt: '2026-03-16T11:00:00Z',
      evidence: { leakEventId: id, done: 'gasket renewed', checkedHow: 'soap solution', causes: [found] },
    });
    expect(await row(joint, id)).toMatchObject({
      firstCauses: [WORST],
      foundCauses: [found],
      closed: { done: 'gasket renewed', how: 'soap solution' },
      openFor: 3 * 3600,
    });
    expect((await list({ cause: 'wrong gasket' })).rows.map(({ tag }) => tag)).toEqual(['L-2']);
    expect((await list({ cause: 'load lost' })).rows.map(({ tag }) => tag)).not.toContain('L-2');
  });

  test('closing one leak leaves another open, and one reported later is not closed by it', async () => {
    const joint = await newJoint('L-3');
    await take(started, joint, 'assess');
    const first = await report(joint, {}, '2026-03-16T07:00:00Z');
    const second = await report(joint, {}, '2026-03-16T07:30:00Z');
    await take(started, joint, 'close leak watch', {
      happenedAt: '2026-03-16T08:00:00Z',
      evidence: { leakEventId: first, done: 'clamped', checkedHow: 'sight' },
    });
    expect((await row(joint, first)).closed).not.toBeNull();
    expect((await row(joint, second)).closed).toBeNull();
  });

  test('the second leak within two make-ups makes a repeated leaker, and the filter finds it', async () => {
    const joint = await newJoint('L-4');
    await report(joint);
    expect((await list({ repeatedOnly: true })).rows.map(({ tag }) => tag)).not.toContain('L-4');
    await report(joint);
    const { rows } = await list({ repeatedOnly: true });
    expect(rows.filter(({ tag }) => tag === 'L-4')).toHaveLength(2);
    // Opened twice since: the leaks lie more than a make-up back.
    for (const hour of ['09', '10']) {
      await ask(started, 'event.recordBreakout', {
        key: key(),
        data: breakoutOf(plant, { jointId: joint.jointId, happenedAt: `2026-03-16T${hour}:30:00+01:00` }),
      });
    }
    expect((await list({ repeatedOnly: true })).rows.map(({ tag }) => tag)).not.toContain('L-4');
  });

  test('filters by state, phase, unit and time open, and says what the rows come to', async () => {
    const joint = await newJoint('L-5');
    await report(joint, { phase: 'start-up' }, '2026-01-05T06:00:00Z');
    const old = await list({ longerThan: 30 });
    expect(old.rows.map(({ tag }) => tag)).toEqual(['L-5']);
    expect(old.finding).toBe(
      '1 leak on 1 joint; 1 open, the longest for 70 days; no joint leaked twice within two make-ups.',
    );
    expect((await list({ phase: 'start-up' })).total).toBe(1);
    expect((await list({ state: 'closed' })).rows.every(({ closed }) => closed !== null)).toBe(true);
    const other = await ask(started, 'unit.save', {
      key: key(),
      id: null,
      version: null,
      data: { name: 'Unit 900' },
    });
    const empty = await list({ unitId: other.id });
    expect(empty).toMatchObject({ rows: [], total: 0 });
    expect(empty.finding).toContain('nobody recorded');
  });

  test('pages part the list without losing or doubling a row', async () => {
    const whole = await list();
    const parts = [];
    for (let page = 1; parts.length < whole.total; page++) {
      const { rows } = await list({ page, pageSize: 2 });
      expect(rows.length).toBeGreaterThan(0);
      parts.push(...rows);
    }
    expect(parts.map(({ id }) => id)).toEqual(whole.rows.map(({ id }) => id));
  });
});

describe('thermal cycles', () => {
  const count = (
    jointIds: string[],
    changes: Partial<RequestInput<'cycles.record'>['data']> = {},
  ): RequestInput<'cycles.record'> => ({
    key: key(),
    supersedes: null,
    data: {
      jointIds,
      from: '2026-03-01',
      until: '2026-03-10',
      cycles: 4,
      basis: 'trend of TI-310',
      personId: plant.personId,
      happenedAt: '2026-03-16T10:00:00+01:00',
      ...changes,
    },
  });

  test('they count from the newest tightening, with the share of the time that is counted', async () => {
    const joint = await newJoint('C-1');
    expect((await ofJoint(joint.jointId)).sinceMakeUp).toBeNull();
    await ask(started, 'event.recordTightening', {
      key: key(),
      data: tighteningOf(plant, { jointId: joint.jointId, happenedAt: '2026-02-24T12:00:00+01:00' }),
    });
    await ask(started, 'cycles.record', count([joint.jointId]));
    const { sinceMakeUp, counts } = await ofJoint(joint.jointId);
    expect(sinceMakeUp).toMatchObject({ cycles: 4, partly: 0 });
    // Ten days of the twenty days and two hours since then.
    expect(sinceMakeUp?.covered).toBeCloseTo(240 / 481, 3);
    expect(counts).toMatchObject([{ from: '2026-03-01', until: '2026-03-10', by: 'A. Person' }]);
    const history = await ask(started, 'joint.history', { id: joint.jointId, page: 1, pageSize: 20 });
    expect(history.rows.map(({ kind }) => kind)).toContain('cycles counted');
  });

  test('a day is counted once; a correction takes the place of the count it names', async () => {
    const joint = await newJoint('C-2');
    const first = await ask(started, 'cycles.record', count([joint.jointId]));
    const again = await askBadly(
      started,
      'cycles.record',
      count([joint.jointId], { from: '2026-03-10', until: '2026-03-12' }),
    );
    expect(again).toMatchObject({ code: 'invalid_input', details: [{ field: 'data.from' }] });
    expect(again.message).toContain('C-2 is counted from 2026-03-01 to 2026-03-10');
    await ask(started, 'cycles.record', { ...count([joint.jointId], { cycles: 6 }), supersedes: first.id });
    expect((await ofJoint(joint.jointId)).counts.map(({ cycles }) => cycles)).toEqual([6]);
    expect(
      await askBadly(started, 'cycles.record', { ...count([joint.jointId]), supersedes: first.id }),
    ).toMatchObject({ details: [{ field: 'supersedes' }] });
  });

  test.each([
    ['an end before the start', { until: '2026-02-01' }, 'data.until'],
    ['a day to come', { until: '2026-03-17' }, 'data.until'],
    ['less than none', { cycles: -1 }, 'data.cycles'],
    ['no basis', { basis: ' ' }, 'data.basis'],
    ['nobody', { personId: '01990000-0000-7000-8000-000000000001' }, 'data.personId'],
    ['no such joint', { jointIds: ['01990000-0000-7000-8000-000000000001'] }, 'data.jointIds'],
  ])('%s is refused by name and changes nothing', async (what, changes, field) => {
    const joint = await newJoint(`C-${what}`);
    const error = await askBadly(started, 'cycles.record', count([joint.jointId], changes));
    expect(error.details?.map((detail) => detail.field)).toContain(field);
    expect((await ofJoint(joint.jointId)).counts).toEqual([]);
  });
});

describe('which joints first', () => {
  const asked: RequestInput<'leak.verifyFirst'> = {
    unitId: null,
    days: 365,
    weights: { mild: 1, intermediate: 3, critical: 10 },
    effect: 0.5,
    cost: 0.01,
    cyclesLimit: 3,
    page: 1,
    pageSize: 50,
  };

  test('on a young register nothing is said of probability; doubt orders, and a joint that leaks is not on it', async () => {
    const { rows, rates, leaking, worthwhile, basis } = await ask(started, 'leak.verifyFirst', asked);
    expect(rates).toEqual([]);
    expect(worthwhile).toBeNull();
    expect(rows.every(({ probability, worth }) => probability === null && worth === null)).toBe(true);
    expect(rows.map(({ tag }) => tag)).not.toContain('L-1');
    expect(leaking).toBeGreaterThan(0);
    const cycled = rows.find(({ tag }) => tag === 'C-1');
    expect(cycled?.reasons).toContain('more thermal cycles since it was made up than the limit given');
    expect(cycled?.reasons).toContain('it was tightened without an issued setting');
    const plain = rows.find(({ tag }) => tag === 'J-0001');
    expect(plain?.reasons).toContain('nothing is recorded of how it was assembled');
    expect(basis.join(' ')).toContain('Assumption of this program');
  });

  test('years later the plant’s own leaks give probabilities, and worth falls down the list', async () => {
    started.setNow('2029-03-16T12:00:00Z');
    const { rows, rates, worthwhile } = await ask(started, 'leak.verifyFirst', { ...asked, cost: 0.2 });
    started.setNow('2026-03-16T12:00:00Z');
    const [rate] = rates;
    expect(rate?.class).toBe('critical');
    expect(rate?.years).toBeGreaterThan(10);
    const worths = rows.map(({ worth }) => worth ?? Number.NaN);
    expect(worths.length).toBeGreaterThan(5);
    expect(worths).toEqual(worths.toSorted((a, b) => b - a));
    expect(worthwhile).toBe(worths.filter((worth) => worth > 0).length);
    for (const { probability } of rows) {
      expect(probability).toBeGreaterThan(0);
      expect(probability).toBeLessThan(1);
    }
  });

  test('an unfinished tightening with nuts that turned outranks one that was finished', async () => {
    const made: string[] = [];
    for (const [tag, changes] of [
      ['V-1', {}],
      ['V-2', { boltsTightened: 6, finalPassNoTurn: false }],
    ] as const) {
      const { jointId } = await newJoint(tag);
      made.push(jointId);
      await ask(started, 'event.recordTightening', {
        key: key(),
        data: tighteningOf(plant, { jointId, happenedAt: '2026-03-10T12:00:00+01:00', ...changes }),
      });
    }
    const { rows } = await ask(started, 'leak.verifyFirst', asked);
    const order = rows.map(({ tag }) => tag).filter((tag) => tag.startsWith('V-'));
    expect(order).toEqual(['V-2', 'V-1']);
    const loose = rows.find(({ tag }) => tag === 'V-2');
    expect(loose?.reasons.slice(0, 2)).toEqual([
      'not every stud was tightened',
      'it is not confirmed that the nuts stood still in the last round',
    ]);
  });

  test('terms outside what is allowed are refused by name', async () => {
    const error = await askBadly(started, 'leak.verifyFirst', { ...asked, effect: 1.5, days: 0 });
    expect(error.details?.map(({ field }) => field).toSorted()).toEqual(['days', 'effect']);
  });
});

test('a test that fails is a leak of its phase, and a test that passes closes it', async () => {
  const joint = await newJoint('T-1');
  const failing = stepOf(joint, 'test', {
    happenedAt: '2026-03-16T09:00:00Z',
    reallyDone: { reason: 'tested before it was entered' },
  });
  const { seen } = await standing(started, joint.jointId);
  await ask(started, 'joint.step', {
    key: key(),
    seen,
    data: { ...failing, evidence: { ...failing.evidence, result: 'failed' } } as never,
  });
  const { rows } = await ofJoint(joint.jointId);
  expect(rows).toMatchObject([{ origin: 'failed test', phase: 'leak test', closed: null }]);
  // The joint has no class, so no order is followed: a test that passed counts as it was done.
  const passing = stepOf(joint, 'test', {
    happenedAt: '2026-03-16T10:00:00Z',
    reallyDone: { reason: 'tested before it was entered' },
  });
  const again = (await standing(started, joint.jointId)).seen;
  await ask(started, 'joint.step', { key: key(), seen: again, data: passing });
  expect((await ofJoint(joint.jointId)).rows).toMatchObject([
    { origin: 'failed test', openFor: 3600, closed: { how: 'leak test passed' } },
  ]);
});

test('leaks and counts are made again from the bodies alone', async () => {
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const again = await rebuilt(database);
  for (const table of ['leak', 'cycle_count']) {
    expect(rowsOf(again, table).length, table).toBeGreaterThan(0);
    expect(rowsOf(again, table), table).toEqual(rowsOf(database, table));
  }
  database.close();
});
