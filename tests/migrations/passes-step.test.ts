import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { insert, isOfPasses, migratedDatabase, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0320_create_passes';

/** A register as the steps before this one left it; steps that came after it add nothing of what is looked at. */
async function earlierRegister(): Promise<Database.Database> {
  const database = new Database(':memory:');
  const before = Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => name < STEP));
  await migrate(database, queryBuilder(database), before);
  return database;
}

test('a pass needs the step, and after it one is taken with the tightening it belongs to', async () => {
  const database = await earlierRegister();
  const [event, ...rest] = SOUND_ROWS.filter(isOfPasses);
  if (event === undefined) throw new Error('fixture: no pass');
  database.pragma('foreign_keys = ON');
  insert(database, 'origin', SOUND_ROWS.find(([table]) => table === 'origin')?.[1] ?? {});
  expect(() => insert(database, ...event)).toThrow(/FOREIGN KEY/);
  await migrate(database, queryBuilder(database));
  insert(database, ...event);
  expect(rest.map(([table]) => table)).toEqual(['pass_record', 'tightening_pass', 'draft']);
});

test('a tightening names a pass once, and what it names can not be taken away', async () => {
  const database = await migratedDatabase();
  const [, link] = SOUND_ROWS.find(([table]) => table === 'tightening_pass') ?? [];
  expect(() => insert(database, 'tightening_pass', { ...link, position: 1 })).toThrow(/append-only/);
  expect(() => database.exec('delete from pass_record')).toThrow(/append-only/);
});

test('a draft is written over and taken away, one of a kind for each record', async () => {
  const database = await migratedDatabase();
  const [, draft] = SOUND_ROWS.find(([table]) => table === 'draft') ?? [];
  expect(() => insert(database, 'draft', draft ?? {})).toThrow(/UNIQUE/);
  insert(database, 'draft', { ...draft, kind: 'breakout at the joint' });
  database.exec(`update draft set data = '{"next":1}', version = version + 1`);
  expect(database.prepare('select version, data from draft').all()).toEqual([
    { version: 2, data: '{"next":1}' },
    { version: 2, data: '{"next":1}' },
  ]);
  database.exec('delete from draft');
  expect(database.prepare('select count(*) as n from draft').get()).toEqual({ n: 0 });
});
