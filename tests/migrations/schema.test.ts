import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS, SCHEMA_NUMBER } from '../../migrations/list.ts';
import { schemaText } from './schema-text.ts';

async function migrated(): Promise<Database.Database> {
  const database = new Database(':memory:');
  await migrate(database, queryBuilder(database));
  return database;
}

test('all steps together make the schema of the committed snapshot', async () => {
  const database = await migrated();
  const snapshot = new URL('../../migrations/schema.sql', import.meta.url);
  // Without a file the comparison would write one and pass.
  expect(existsSync(snapshot)).toBe(true);
  await expect(schemaText(database)).toMatchFileSnapshot(fileURLToPath(snapshot));
});

test('every table of the register is STRICT', async () => {
  const database = await migrated();
  const tables = database
    .prepare<[], { name: string; strict: number }>(
      `select name, strict from pragma_table_list where schema = 'main' and type = 'table'
         and name not like 'sqlite_%' and name not like 'kysely_%'`,
    )
    .all();
  expect(tables.length).toBeGreaterThan(20);
  expect(tables.filter(({ strict }) => strict !== 1)).toEqual([]);
});

test('every foreign key refuses to delete what is referred to', async () => {
  const database = await migrated();
  const keys = database
    .prepare<[], { table: string; on_delete: string }>(
      `select t.name as "table", f.on_delete from pragma_table_list t join pragma_foreign_key_list(t.name) f
        where t.schema = 'main' and t.type = 'table'`,
    )
    .all();
  expect(keys.length).toBeGreaterThan(20);
  expect(keys.filter((key) => key.on_delete !== 'RESTRICT')).toEqual([]);
});

test('a step is named by its time and what it does, and the names are in order', () => {
  const names = Object.keys(MIGRATIONS);
  expect(names).toHaveLength(SCHEMA_NUMBER);
  for (const name of names) expect(name).toMatch(/^\d{8}T\d{4}_[a-z]+(_[a-z]+)+$/);
  expect(names.toSorted()).toEqual(names);
});

test('the file carries the schema number and the mark of this program', async () => {
  const database = await migrated();
  expect(database.pragma('user_version', { simple: true })).toBe(SCHEMA_NUMBER);
  expect(database.pragma('application_id', { simple: true })).toBe(0x53747564);
});
