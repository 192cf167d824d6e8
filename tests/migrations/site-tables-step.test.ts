import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { EARLIER_ROWS, insert } from './rows.ts';

const STEP = '20261125T1815_create_site_tables';

/** A register as the steps before this one left it, with a chain, a correction and people in it. */
async function earlierRegister(): Promise<Database.Database> {
  const database = new Database(':memory:');
  const before = Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => name < STEP));
  await migrate(database, queryBuilder(database), before);
  for (const [table, row] of EARLIER_ROWS) insert(database, table, row);
  const first = EARLIER_ROWS.find(([table]) => table === 'event')?.[1];
  insert(database, 'event', {
    ...first,
    id: '00000000-0000-7000-8000-0000000000aa',
    sequence: 99,
    hash: 'a'.repeat(64),
    body: '{"with":"ü \\u0001 and 😀"}',
    supersedes: first?.id,
  });
  return database;
}

test('the log and the people in it come through the step as they were', async () => {
  const database = await earlierRegister();
  const all = (table: string) => database.prepare(`select * from ${table} order by 1, 2`).all();
  const before = { events: all('event'), people: all('event_person') };
  expect(before.events.length).toBeGreaterThan(5);
  await migrate(database, queryBuilder(database));
  expect({ events: all('event'), people: all('event_person') }).toEqual(before);
});

test('after the step the log is as closed to changes as before it', async () => {
  const database = await earlierRegister();
  await migrate(database, queryBuilder(database));
  database.pragma('foreign_keys = ON');
  expect(() => database.exec(`update event set body = '{}'`)).toThrow(/event is append-only/);
  expect(() => database.exec('delete from event')).toThrow(/event is append-only/);
  expect(() => database.exec('delete from event_person')).toThrow(/event_person is append-only/);
  const [, row] = EARLIER_ROWS.findLast(([table]) => table === 'event') ?? [];
  const added = { ...row, id: '00000000-0000-7000-8000-0000000000bb', sequence: 100, hash: 'b'.repeat(64) };
  expect(() => insert(database, 'event', { ...added, kind: 'made up' })).toThrow(/FOREIGN KEY/);
  expect(() => insert(database, 'event', { ...added, kind: 'pass plan approved' })).not.toThrow();
});
