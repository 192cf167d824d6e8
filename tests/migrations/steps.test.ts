import { expect, test } from 'vitest';
import { APPEND_ONLY, AWKWARD_VALUES, insert, migratedDatabase, SOUND_ROWS } from './rows.ts';

const tables = [...new Set(SOUND_ROWS.map(([table]) => table))];

test('there is a sound row for every table of the register', async () => {
  const database = await migratedDatabase();
  const names = database
    .prepare<[], { name: string }>(
      `select name from sqlite_schema where type = 'table' and name not like 'kysely_%' order by name`,
    )
    .all();
  expect(names.map(({ name }) => name)).toEqual(tables.toSorted());
  for (const { name } of names) {
    const count = database.prepare<[], { count: number }>(`select count(*) as count from ${name}`).get();
    expect(count?.count, name).toBeGreaterThan(0);
  }
});

test.each(AWKWARD_VALUES)('%s.%s refuses %s: %s', async (table, column, value) => {
  const database = await migratedDatabase();
  const sound = SOUND_ROWS.findLast(([name]) => name === table)?.[1];
  // Without the table's triggers: a CHECK must refuse by itself, not the rule against entering a row twice.
  for (const trigger of database
    .prepare<[string], { name: string }>(
      `select name from sqlite_schema where type = 'trigger' and tbl_name = ?`,
    )
    .all(table)) {
    database.exec(`drop trigger ${trigger.name}`);
  }
  const change = () => database.prepare(`update ${table} set ${column} = ?`).run(value);
  expect(sound).toHaveProperty(column);
  expect(change).toThrow(/CHECK|FOREIGN KEY|NOT NULL|cannot store/);
});

test.each(APPEND_ONLY)('%s refuses UPDATE, DELETE and a second INSERT, also OR REPLACE', async (table) => {
  const database = await migratedDatabase();
  database.pragma('foreign_keys = OFF');
  const row = SOUND_ROWS.findLast(([name]) => name === table)?.[1] ?? {};
  const [column] = Object.keys(row);
  const before = database.prepare(`select * from ${table}`).all();
  const refused = new RegExp(`${table} is append-only`);
  expect(() => database.exec(`update ${table} set ${column} = ${column}`)).toThrow(refused);
  expect(() => database.exec(`delete from ${table}`)).toThrow(refused);
  for (const verb of ['insert', 'insert or replace', 'insert or ignore', 'replace']) {
    expect(() => insert(database, table, row, verb), verb).toThrow(refused);
  }
  expect(database.prepare(`select * from ${table}`).all()).toEqual(before);
});

test('REPLACE over another unique key than the id is refused as well', async () => {
  const database = await migratedDatabase();
  const event = SOUND_ROWS.findLast(([name]) => name === 'event')?.[1] ?? {};
  const other = { ...event, id: '00000000-0000-7000-8000-00000000abcd' };
  expect(() => insert(database, 'event', other, 'insert or replace')).toThrow(/append-only|FOREIGN KEY/);
  expect(database.prepare('select count(*) as n from event where id = ?').get(event.id)).toEqual({ n: 1 });
});

test('what events name can not be deleted', async () => {
  const database = await migratedDatabase();
  for (const table of ['person', 'joint', 'tool', 'plant_unit', 'site', 'batch']) {
    expect(() => database.exec(`delete from ${table}`), table).toThrow(/FOREIGN KEY/);
  }
});
