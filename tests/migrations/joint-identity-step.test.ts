import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { insert, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0340_create_joint_identity';
const OF_STEP = ['joint_confusable', 'joint_attachment'];

const steps = (wanted: (name: string) => boolean) =>
  Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => wanted(name)));

/** A register as the steps before this one left it, with joints and a file. */
async function earlierRegister(): Promise<Database.Database> {
  const database = new Database(':memory:');
  await migrate(
    database,
    queryBuilder(database),
    steps((name) => name < STEP),
  );
  database.pragma('foreign_keys = ON');
  const tables = ['origin', 'event', 'attachment', 'site', 'plant_unit', 'person', 'joint'];
  const kinds = database.prepare('select name from event_kind').pluck().all();
  for (const [table, row] of SOUND_ROWS) {
    const known = table !== 'event' || kinds.includes(row.kind);
    if (tables.includes(table) && known) insert(database, table, row);
  }
  return database;
}

test('a joint recorded before names no valve, and is otherwise as it was', async () => {
  const database = await earlierRegister();
  const before = database.prepare<[], object>('select * from joint').all();
  expect(before).toHaveLength(1);
  await migrate(
    database,
    queryBuilder(database),
    steps((name) => name <= STEP),
  );
  expect(database.prepare('select * from joint').all()).toEqual(
    before.map((row) => ({ ...row, valve_key: '' })),
  );
});

test('files and confusable tags of a joint are taken after the step', async () => {
  const database = await earlierRegister();
  const rows = SOUND_ROWS.filter(([table]) => OF_STEP.includes(table));
  expect(rows.map(([table]) => table)).toEqual(OF_STEP);
  for (const row of rows) expect(() => insert(database, ...row)).toThrow(/no such table/);
  await migrate(
    database,
    queryBuilder(database),
    steps((name) => name <= STEP),
  );
  for (const row of rows) insert(database, ...row);
  expect(database.prepare('select tag_key from joint_confusable').pluck().all()).toEqual(['j-2']);
  expect(database.prepare('select name from joint_attachment').pluck().all()).toEqual(['a.jpg']);
});
