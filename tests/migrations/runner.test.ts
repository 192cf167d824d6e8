import Database from 'better-sqlite3';
import { sql } from 'kysely';
import type { Migration } from 'kysely/migration';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS, SCHEMA_NUMBER } from '../../migrations/list.ts';
import { migratedDatabase } from './rows.ts';
import { schemaText } from './schema-text.ts';

const failing: Migration = {
  up: async (db) => {
    await sql`create table half_done (id integer) strict`.execute(db);
    throw new Error('planted fault');
  },
};

const dangling: Migration = {
  up: async (db) => {
    await sql`delete from person`.execute(db);
  },
};

const extended = (step: Migration) => ({ ...MIGRATIONS, '20991231T0000_plant_fault': step });

test('a step that fails leaves nothing of itself or of the steps before it', async () => {
  const database = new Database(':memory:');
  await expect(migrate(database, queryBuilder(database), extended(failing))).rejects.toThrow('planted fault');
  expect(schemaText(database)).toBe('\n');
  expect(database.pragma('user_version', { simple: true })).toBe(0);
});

test('a step that fails on a register with data leaves schema, rows and number as they were', async () => {
  const database = await migratedDatabase();
  const before = { schema: schemaText(database), people: database.prepare('select * from person').all() };
  await expect(migrate(database, queryBuilder(database), extended(failing))).rejects.toThrow('planted fault');
  expect(schemaText(database)).toBe(before.schema);
  expect(database.prepare('select * from person').all()).toEqual(before.people);
  expect(database.pragma('user_version', { simple: true })).toBe(SCHEMA_NUMBER);
  expect(database.pragma('foreign_keys', { simple: true })).toBe(1);
});

test('a step that leaves rows referring to nothing is undone', async () => {
  const database = await migratedDatabase();
  await expect(migrate(database, queryBuilder(database), extended(dangling))).rejects.toThrow(
    /refer to missing rows/,
  );
  expect(database.prepare('select count(*) as n from person').get()).toEqual({ n: 1 });
});

test('running again does nothing', async () => {
  const database = await migratedDatabase();
  const before = schemaText(database);
  await migrate(database, queryBuilder(database));
  expect(schemaText(database)).toBe(before);
});
