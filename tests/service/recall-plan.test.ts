import Database from 'better-sqlite3';
import { beforeAll, expect, test } from 'vitest';
import { batchUses, countUses, toolUses } from '../../electron/service/recall/uses.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { fillWithTightenings, toolId } from '../bench/many-events.ts';

const database = new Database(':memory:');
const db = queryBuilder(database);
const COUNTS = { events: 4000, joints: 200, wrenches: 20, gauges: 5, pumps: 5 };
const FROM = '2021-01-01T00:00:00.000Z';
const TO = '2024-01-01T00:00:00.000Z';

beforeAll(async () => {
  await migrate(database, db);
  fillWithTightenings(database, COUNTS);
});

interface Compiled {
  readonly sql: string;
  readonly parameters: readonly unknown[];
}

function planOf({ sql, parameters }: Compiled): string[] {
  return database
    .prepare<unknown[], { detail: string }>(`explain query plan ${sql}`)
    .all(...parameters)
    .map(({ detail }) => detail);
}

/** With and without the statistics a register may have. */
function plansOf(compiled: Compiled): string[][] {
  database.exec('drop table if exists sqlite_stat1');
  const bare = planOf(compiled);
  database.exec('analyze');
  return [bare, planOf(compiled)];
}

test.each([
  ['since a certificate', FROM],
  ['without any good evidence', null],
])('the reverse trace of a tool %s is a range of one index, never a scan', (_, from) => {
  const query = toolUses(db, toolId('wrench', 3), { from, to: TO }).compile();
  for (const plan of plansOf(query)) {
    expect(plan.filter((step) => step.startsWith('SCAN'))).toEqual([]);
    const range = from === null ? 'used_at<?' : 'used_at>? AND used_at<?';
    expect(plan[0]).toContain(`event_tool USING COVERING INDEX event_tool_use (tool_id=? AND ${range})`);
    expect(plan.slice(1).every((step) => step.startsWith('SEARCH'))).toBe(true);
  }
});

test('the reverse trace of a batch begins with the batch', () => {
  const query = batchUses(db, toolId('wrench', 3), { from: FROM, to: TO }).compile();
  for (const plan of plansOf(query)) {
    expect(plan.filter((step) => step.startsWith('SCAN'))).toEqual([]);
    expect(plan[0]).toContain('event_batch_trace (batch_id=?)');
  }
});

test('the trace finds what a look at every record finds', async () => {
  const id = toolId('wrench', 3);
  const traced = await toolUses(db, id, { from: FROM, to: TO }).execute();
  const everything = database
    .prepare<[], { id: string; at: string; tool: string }>(
      `select tightening.id, happened_at_utc as at, tool_id as tool
         from tightening join event_tool on event_id = tightening.id where role = 'drive unit'`,
    )
    .all();
  expect(everything).toHaveLength(COUNTS.events);
  const looked = everything.filter(({ at, tool }) => tool === id && at >= FROM && at <= TO);
  expect(looked.length).toBeGreaterThan(20);
  expect(traced.map(({ eventId }) => eventId).toSorted()).toEqual(looked.map((row) => row.id).toSorted());
  const moments = traced.map(({ happenedAtUtc }) => happenedAtUtc);
  expect(moments).toEqual(moments.toSorted());
  const subject = { kind: 'tool' as const, id };
  expect(await countUses(db, subject, { from: FROM, to: TO })).toBe(looked.length);
});
