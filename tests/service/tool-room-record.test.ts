import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { toolFacts } from '../../electron/service/repositories/tool-facts.ts';
import { usesQuery } from '../../electron/service/repositories/tool-uses.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import { breakoutOf, certify, enterPlant, type TestPlant, tighteningOf } from './records.ts';
import {
  check,
  checklistOf,
  checkOf,
  comparisonOf,
  kitOf,
  move,
  moveOf,
  q,
  ruleOf,
  saveChecklist,
  saveKit,
  saveRule,
  stepOf,
} from './tool-room.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;
let driveId: string;

beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  driveId = plant.tools.driveId ?? '';
});
afterEach(() => started.service.close());

const tighten = (changes = {}) =>
  ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant, changes) });
const breakOut = (changes = {}) =>
  ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant, changes) });
const record = () => ask(started, 'tool.record', { id: driveId });
const DUE = { on: null, withinDays: 30, text: '', class: null, all: false, page: 1, pageSize: 50 };

async function reading<T>(read: (database: Database.Database) => T | Promise<T>): Promise<T> {
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  try {
    return await read(database);
  } finally {
    database.close();
  }
}

describe('uses', () => {
  test('are the recorded work, newest first, with pressure, torque and flags; settings are none', async () => {
    await certify(started, plant);
    const first = await tighten({ happenedAt: '2026-03-14T09:00:00+01:00' });
    const second = await breakOut();
    const { rows, total } = await ask(started, 'tool.uses', { id: driveId, page: 1, pageSize: 10 });
    expect(total).toBe(2);
    expect(rows.map(({ eventId, kind, role, tag }) => [eventId, kind, role, tag])).toEqual([
      [second.id, 'breakout', 'drive unit', 'J-0001'],
      [first.id, 'tightening', 'drive unit', 'J-0001'],
    ]);
    expect(rows.map(({ pressure }) => pressure)).toEqual([280e5, 260e5]);
    expect(rows[1]?.torque).toBeCloseTo(384, 0);
    const page = await ask(started, 'tool.uses', { id: driveId, page: 2, pageSize: 1 });
    expect(page).toMatchObject({ total: 2, rows: [{ eventId: first.id }] });
    expect((await askBadly(started, 'tool.uses', { id: key(), page: 1, pageSize: 1 })).code).toBe(
      'not_found',
    );
  });

  test('are counted in all, since the certificate, and in studs turned since it', async () => {
    await tighten({ happenedAt: '2026-01-05T09:00:00+01:00' });
    await certify(started, plant);
    await tighten({ boltsTightened: 12 });
    await tighten({ happenedAt: '2026-03-16T11:00:00+01:00', boltsTightened: 8 });
    expect((await record()).counters).toEqual({
      uses: 3,
      sinceCertificate: 2,
      turnsSinceCertificate: 20,
      firstUse: '2026-01-05T09:00:00+01:00',
      lastUse: '2026-03-16T11:00:00+01:00',
    });
  });
});

describe('an overload', () => {
  const overload = async () =>
    reading(
      async (database) => (await toolFacts(queryBuilder(database), [driveId], '2026-03-16'))[0]?.overload,
    );

  test('stands from the use beyond the rating until a passed check', async () => {
    await certify(started, plant);
    expect(await overload()).toBeNull();
    const { id } = await tighten({ dialled: q('720', 'bar') });
    expect(await overload()).toEqual({
      eventId: id,
      on: '2026-03-16',
      text: 'dialled 720 bar, above its rating',
    });
    await check(
      started,
      checkOf(plant, { kind: 'cleaning and lubrication', happenedAt: '2026-03-16T10:00:00+01:00' }),
    );
    expect(await overload()).not.toBeNull();
    await check(started, checkOf(plant, { happenedAt: '2026-03-16T08:00:00+01:00' }));
    expect(await overload()).not.toBeNull();
    await check(started, checkOf(plant, { happenedAt: '2026-03-16T11:00:00+01:00' }));
    expect(await overload()).toBeNull();
  });

  test('ends with a calibration on a later day', async () => {
    await certify(started, plant);
    await tighten({ happenedAt: '2026-03-10T09:00:00+01:00', dialled: q('720', 'bar') });
    expect(await overload()).not.toBeNull();
    await certify(started, plant, { number: 'C-2', calibratedOn: '2026-03-10' });
    expect(await overload()).not.toBeNull();
    await certify(started, plant, { number: 'C-3', calibratedOn: '2026-03-11' });
    expect(await overload()).toBeNull();
  });
});

describe('the due list', () => {
  const drives = async (changes = {}) =>
    (await ask(started, 'tool.due', { ...DUE, class: 'drive unit', ...changes })).rows;

  test('names a wrench without a certificate as overdue, and none once it has one', async () => {
    expect(await drives()).toMatchObject([{ number: 'W-1', what: 'Certificate', state: 'overdue' }]);
    await certify(started, plant);
    expect(await drives()).toEqual([]);
    expect(await drives({ all: true })).toMatchObject([{ state: 'in date', on: '2027-01-09' }]);
    expect(await drives({ withinDays: 400 })).toMatchObject([{ state: 'in date' }]);
  });

  test('names what lapses before a kit needs it, with the kit', async () => {
    await certify(started, plant, { validUntil: '2026-09-30' });
    await saveKit(started, kitOf(plant, { from: '2026-09-20', to: '2026-10-05' }));
    expect(await drives()).toMatchObject([
      {
        state: 'due before it is needed',
        on: '2026-09-30',
        neededFor: { kit: 'Exchanger E-1', to: '2026-10-05' },
      },
    ]);
  });

  test('counts by use where a rule says so', async () => {
    await certify(started, plant);
    await saveRule(started, ruleOf({ certificateUses: 2 }));
    await tighten();
    expect(await drives({ all: true })).toMatchObject([{ usesLeft: 1 }]);
    await breakOut();
    expect(await drives()).toMatchObject([{ state: 'overdue', usesLeft: 0 }]);
  });

  test('has the lists of checks, the most urgent first, a page at a time', async () => {
    await saveChecklist(started, checklistOf());
    const all = await ask(started, 'tool.due', { ...DUE, all: true });
    const order = ['overdue', 'due before it is needed', 'due soon', 'not known', 'in date'];
    const places = all.rows.map(({ state }) => order.indexOf(state));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(all.rows.map(({ what }) => what)).toContain('Seals and ratchet');
    const second = await ask(started, 'tool.due', { ...DUE, all: true, page: 2, pageSize: 1 });
    expect(second).toEqual({ total: all.total, rows: [all.rows[1]] });
  });

  test('leaves out what is scrapped, and finds by words', async () => {
    expect(await drives({ text: 'w-1' })).toHaveLength(1);
    expect(await drives({ text: 'w-2' })).toEqual([]);
    await move(started, stepOf(plant, 'scrap', { reason: 'cracked' }));
    expect(await drives()).toEqual([]);
  });
});

test('the record of a tool has everything on one page, and the head it was read at', async () => {
  await certify(started, plant);
  await saveKit(started, kitOf(plant, { closed: true }));
  await move(started, moveOf(plant));
  await tighten();
  await check(
    started,
    comparisonOf(plant, '353', { result: 'failed', happenedAt: '2026-03-16T10:00:00+01:00' }),
  );
  const found = await record();
  expect(found).toMatchObject({
    holder: 'A. Person',
    data: { status: 'quarantined' },
    moves: [
      { step: 'quarantine', from: 'issued', to: 'quarantined', reason: 'failed check: comparison' },
      { step: 'issue', from: 'available', to: 'issued', holder: 'A. Person' },
    ],
    checks: [{ kind: 'comparison', result: 'failed' }],
    certificates: [{ data: { number: 'C-1' }, analysis: { doubts: [] }, asFoundLine: null }],
    uses: [{ kind: 'tightening' }],
    cases: [],
    attachments: [],
  });
  // 353/384 − 1
  expect(found.checks[0]?.error).toBeCloseTo(-0.0807, 4);
  expect(found.due.map(({ what, state }) => `${what} ${state}`)).toContain('Comparison overdue');
  expect(found.head).toBe((await ask(started, 'register.state', {})).head);
  expect((await askBadly(started, 'tool.record', { id: key() })).code).toBe('not_found');
});

test('all columns of the tool room can be rebuilt from the events alone', async () => {
  await certify(started, plant);
  const kit = await saveKit(started, kitOf(plant));
  await saveRule(started, ruleOf());
  const list = await saveChecklist(started, checklistOf());
  await move(started, moveOf(plant, { kitId: kit.id }));
  await tighten({ dialled: q('720', 'bar') });
  await move(
    started,
    stepOf(plant, 'return', { condition: 'damaged', happenedAt: '2026-03-16T10:00:00+01:00' }),
  );
  const followed = { checklist: { id: list.id, version: 1 }, answers: [true, 12] };
  await check(started, checkOf(plant, { ...followed, happenedAt: '2026-03-16T11:00:00+01:00' }));
  const data = {
    owner: { kind: 'tool' as const, id: driveId },
    name: 'a.txt',
    mediaType: 'text/plain' as const,
    content: Buffer.from('a').toString('base64'),
    personId: plant.personId,
    remarks: '',
  };
  await ask(started, 'attachment.add', { key: key(), data });
  await reading(async (database) => {
    const fresh = await rebuilt(database);
    for (const table of projectedTables(database)) {
      expect(rowsOf(fresh, table), table).toEqual(rowsOf(database, table));
    }
    for (const table of [
      'tool_move',
      'tool_overload',
      'tool_check',
      'kit_tool',
      'attachment_use',
      'tool_rule',
    ]) {
      expect(rowsOf(fresh, table).length, table).toBeGreaterThan(0);
    }
    expect(rowsOf(fresh, 'tool_move')).toHaveLength(3);
  });
});

test('uses and facts are ranges of indexes, never a look through the log', async () => {
  await certify(started, plant);
  await tighten();
  await reading(async (database) => {
    const db = queryBuilder(database);
    const plan = (sql: string, parameters: readonly unknown[]) =>
      database
        .prepare<unknown[], { detail: string }>(`explain query plan ${sql}`)
        .all(...parameters)
        .map(({ detail }) => detail)
        .join('; ');
    const uses = usesQuery(db, driveId)
      .orderBy('event_tool.used_at', 'desc')
      .orderBy('event_tool.event_id', 'desc');
    const { sql, parameters } = uses.limit(50).compile();
    const told = plan(sql, parameters);
    expect(told).toMatch(/SEARCH event_tool USING (COVERING )?INDEX event_tool_use/);
    expect(told).not.toMatch(/SCAN|TEMP B-TREE FOR ORDER BY/);

    const statements: string[] = [];
    const seen = new Database(database.name, {
      readonly: true,
      verbose: (text) => statements.push(String(text)),
    });
    await toolFacts(queryBuilder(seen), [driveId], '2026-03-16');
    seen.close();
    expect(statements.length).toBeGreaterThan(6);
    const plans = statements.map((statement) => plan(statement, []));
    // The list of what is asked, and the site's one row, are looked through; no table that grows is.
    for (const one of plans) expect(one).not.toMatch(/SCAN (?!asked|site|ranked|\(|json_each)/);
    expect(plans.join('; ')).toMatch(/INDEX event_tool_use/);
  });
});
