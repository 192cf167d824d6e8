import { expect, test } from 'vitest';
import { registerBefore, rowsThen, takeStep } from './before-step.ts';
import { insert, migratedDatabase, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0340_create_joint_life';
const TABLES = ['class_rule', 'joint_standing', 'class_tightening', 'deviation'];

test('a register with joints and records takes the step, and leaves each of them unassessed', async () => {
  const database = await registerBefore(STEP);
  const before = database.prepare('select id, kind, body from event order by id').all();
  await takeStep(database, STEP);
  expect(database.prepare('select id, kind, body from event order by id').all()).toEqual(before);
  expect(before.length).toBeGreaterThan(5);
  for (const table of TABLES) {
    expect(database.prepare(`select count(*) as n from ${table}`).get(), table).toEqual({ n: 0 });
  }
  const later = rowsThen(database).filter(
    ([table, { kind }]) => TABLES.includes(table) || kind === 'joint stepped' || kind === 'deviation decided',
  );
  expect(later).toHaveLength(TABLES.length + 2);
  for (const row of later) insert(database, ...row);
});

test('a joint has one standing, and a class one name', async () => {
  const database = await migratedDatabase();
  const [, standing] = SOUND_ROWS.find(([table]) => table === 'joint_standing') ?? [];
  expect(() => insert(database, 'joint_standing', { ...standing, state: 'held' })).toThrow(/UNIQUE/);
  const [, rule] = SOUND_ROWS.find(([table]) => table === 'class_rule') ?? [];
  const other = { ...rule, id: '00000000-0000-7000-8000-00000000abcd' };
  expect(() => insert(database, 'class_rule', other)).toThrow(/UNIQUE/);
});
