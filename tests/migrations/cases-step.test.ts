import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { insert, SOUND_ROWS } from './rows.ts';

const STEP = '20261125T2020_create_cases';
const stepsUntil = (wanted: (name: string) => boolean) =>
  Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => wanted(name)));

const isOfCases = ([table, { kind }]: (typeof SOUND_ROWS)[number]) =>
  table.startsWith('recall_') || String(kind).startsWith('case ');

/** Rows the register could hold before the step: of its own tables and kinds of events, and not about cases. */
function rowsBefore(database: Database.Database): (typeof SOUND_ROWS)[number][] {
  const tables = database.prepare(`select name from sqlite_schema where type = 'table'`).pluck().all();
  const kinds = database.prepare('select name from event_kind').pluck().all();
  return SOUND_ROWS.filter((row) => {
    const [table, { kind }] = row;
    return tables.includes(table) && !isOfCases(row) && (table !== 'event' || kinds.includes(kind));
  });
}

/** A register as the steps before this one left it, with a tool that failed a check. */
async function earlierRegister(): Promise<Database.Database> {
  const database = new Database(':memory:');
  await migrate(
    database,
    queryBuilder(database),
    stepsUntil((name) => name < STEP),
  );
  database.pragma('foreign_keys = ON');
  for (const row of rowsBefore(database)) insert(database, ...row);
  return database;
}

test('everything recorded before comes through the step as it was', async () => {
  const database = await earlierRegister();
  const tables = [...new Set(rowsBefore(database).map(([table]) => table))];
  const all = () =>
    tables
      .filter((table) => table !== 'event_kind' && table !== 'person_part')
      .map((table) => database.prepare(`select * from ${table}`).all());
  const before = all();
  expect(before.length).toBeGreaterThan(25);
  await migrate(
    database,
    queryBuilder(database),
    stepsUntil((name) => name <= STEP),
  );
  expect(all()).toEqual(before);
});

test('a case needs the step, and after it one is taken', async () => {
  const database = await earlierRegister();
  const rows = SOUND_ROWS.filter(isOfCases);
  const [first] = rows;
  if (first === undefined) throw new Error('fixture: no case');
  expect(() => insert(database, ...first)).toThrow(/FOREIGN KEY/);
  await migrate(database, queryBuilder(database));
  for (const row of rows) insert(database, ...row);
  expect(database.prepare('select number from recall_case').all()).toEqual([{ number: 'OT-0001' }]);
  const parts = ['opened the case', 'decided', 'closed the case'];
  const known = database.prepare(`select name from person_part`).pluck().all();
  expect(known).toEqual(expect.arrayContaining(parts));
});

test('a case is closed once, and a decision names a tightening', async () => {
  const database = await earlierRegister();
  await migrate(database, queryBuilder(database));
  for (const row of SOUND_ROWS.filter(isOfCases)) insert(database, ...row);
  const [, closure] = SOUND_ROWS.find(([table]) => table === 'recall_closure') ?? [];
  const [, decision] = SOUND_ROWS.find(([table]) => table === 'recall_decision') ?? [];
  const [, opened] = SOUND_ROWS.find(([table]) => table === 'recall_case') ?? [];
  const otherEvent = opened?.basis_event_id;
  expect(() => insert(database, 'recall_closure', { ...closure, id: otherEvent })).toThrow(
    /append-only|UNIQUE/,
  );
  expect(() =>
    insert(database, 'recall_decision', { ...decision, event_id: otherEvent, tightening_id: opened?.id }),
  ).toThrow(/FOREIGN KEY/);
});
