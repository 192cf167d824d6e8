import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { canonicalText } from '../../core/audit/canonical.ts';
import { firstBreak } from '../../core/audit/chain.ts';
import { merkleHead } from '../../core/audit/merkle.ts';
import { settingCard } from '../../core/setting/card.ts';
import { freeze } from '../../core/units/round.ts';
import type { EventBody, EventDataByKind } from '../../electron/service/chain/events.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { ask, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import { breakoutOf, certify, enterPlant, settingFor, type TestPlant, tighteningOf } from './records.ts';

let folder: string;
let started: TestService;
let plant: TestPlant;
let database: Database.Database;

/** A register with an event of every kind but the import, edits among them. */
beforeEach(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  const { id: settingId } = await ask(started, 'setting.issue', {
    key: key(),
    data: settingFor(plant),
    personId: plant.personId,
  });
  await ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant, { settingId }) });
  await ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant) });
  const joint = await ask(started, 'joint.get', { id: plant.jointId });
  const data = { ...joint.data, tag: 'J-0001-A', location: 'renamed' };
  await ask(started, 'joint.save', { key: key(), id: joint.id, version: 1, data });
  // An older record entered late must not move the joint's last event.
  const late = tighteningOf(plant, { happenedAt: '2026-02-01T09:00:00+01:00' });
  await ask(started, 'event.recordTightening', { key: key(), data: late });
  database = new Database(join(folder, 'register.sqlite'), { readonly: true });
});
afterEach(async () => {
  database.close();
  await started.service.close();
});

interface EventRow {
  id: string;
  origin_id: string;
  sequence: number;
  previous_hash: string;
  hash: string;
  body: string;
  kind: string;
}

const eventRows = () => database.prepare<[], EventRow>('select * from event order by sequence').all();

const links = (rows: readonly EventRow[]) =>
  rows.map((row) => ({
    sequence: row.sequence,
    previousHash: row.previous_hash,
    hash: row.hash,
    body: row.body,
  }));

test('the chain holds from the first event to the last, and the stored text is canonical', () => {
  const rows = eventRows();
  expect(rows.length).toBeGreaterThan(12);
  expect(firstBreak(sha256, links(rows))).toBeNull();
  for (const { body } of rows) expect(canonicalText(JSON.parse(body))).toBe(body);
});

test('a change of one character, a lost event and an exchanged pair show where the chain breaks', () => {
  const sound = links(eventRows());
  const changed = sound.map((link) =>
    link.sequence === 5 ? { ...link, body: link.body.replace('"', '“') } : link,
  );
  expect(firstBreak(sha256, changed)).toBe(5);
  expect(
    firstBreak(
      sha256,
      sound.filter(({ sequence }) => sequence !== 3),
    ),
  ).toBe(3);
  const exchanged = [...sound.slice(0, 1), ...sound.slice(1, 3).toReversed(), ...sound.slice(3)];
  expect(firstBreak(sha256, exchanged)).toBe(2);
});

test('the head stands for the last event and moves with every write', async () => {
  const last = eventRows().at(-1);
  const before = await ask(started, 'register.state', {});
  const entry = { originId: last?.origin_id ?? '', sequence: last?.sequence ?? 0, hash: last?.hash ?? '' };
  expect(before.head).toBe(merkleHead(sha256, [entry]));
  await ask(started, 'person.save', { key: key(), id: null, version: null, data: { name: 'B', role: '' } });
  expect((await ask(started, 'register.state', {})).head).not.toBe(before.head);
});

test('all columns can be rebuilt from the events alone', async () => {
  const fresh = await rebuilt(database);
  const tables = projectedTables(database);
  expect(tables.length).toBeGreaterThan(15);
  for (const table of tables) expect(rowsOf(fresh, table), table).toEqual(rowsOf(database, table));
  expect(rowsOf(fresh, 'breakout_reading')).toHaveLength(3);
  expect(rowsOf(fresh, 'event_batch')).toHaveLength(3);
});

test('an issued card can be computed again from its frozen inputs, to the frozen digits', () => {
  const row = eventRows().find(({ kind }) => kind === 'setting issued');
  const body = JSON.parse(row?.body ?? '{}') as EventBody;
  const { cardInput, card } = body.data as EventDataByKind['setting issued'];
  expect(card.dial?.value).toBe(260);
  expect(JSON.parse(canonicalText(freeze(settingCard(cardInput))))).toEqual(card);
});

test('a record entered late stands in its place in time', async () => {
  const chart = await ask(started, 'joint.chart', { id: plant.jointId });
  expect(chart.points.map(({ happenedAt }) => happenedAt)).toEqual([
    '2026-02-01T09:00:00+01:00',
    '2026-03-16T09:00:00+01:00',
    '2026-03-16T10:00:00+01:00',
  ]);
  const list = await ask(started, 'joint.list', {
    text: 'renamed',
    unitId: plant.unitId,
    sort: 'tag',
    direction: 'asc',
    page: 1,
    pageSize: 10,
  });
  expect(list.rows[0]?.lastEvent).toEqual({ kind: 'breakout', happenedAt: '2026-03-16T10:00:00+01:00' });
});

test('a tool can be traced to every event it had a part in, by index', () => {
  const plan = (sql: string) =>
    database
      .prepare<[string], { detail: string }>(`explain query plan ${sql}`)
      .all('x')
      .map(({ detail }) => detail)
      .join('; ');
  const trace = `select event.id from event_tool join event on event.id = event_tool.event_id where event_tool.tool_id = ?`;
  expect(plan(trace)).toMatch(/event_tool USING (COVERING )?INDEX event_tool_trace/);
  expect(plan(trace)).not.toMatch(/SCAN/);
  const history = `select event.id from event_joint join event on event.id = event_joint.event_id where event_joint.joint_id = ?`;
  expect(plan(history)).toMatch(/event_joint USING (COVERING )?INDEX event_joint_history/);
  expect(plan(history)).not.toMatch(/SCAN/);
  const byTag = `select id from joint where ? is not null order by tag_sort, id limit 50`;
  expect(plan(byTag)).toMatch(/joint_by_tag/);
  expect(plan(byTag)).not.toMatch(/TEMP B-TREE/);
  const batch = `select event_id from event_batch where batch_id = ?`;
  expect(plan(batch)).toMatch(/event_batch_trace/);
  const uses = database
    .prepare<[string], { n: number }>('select count(*) as n from event_tool where tool_id = ?')
    .get(plant.tools.driveId ?? '');
  // Saved, calibrated, one setting, two tightenings, one breakout.
  expect(uses?.n).toBe(6);
});
