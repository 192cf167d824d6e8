import { expect, test } from 'vitest';
import { registerBefore, rowsThen, takeStep } from './before-step.ts';
import { insert, migratedDatabase } from './rows.ts';

const STEP = '20261126T0350_create_leaks';
const TABLES = ['leak', 'cycle_count'];

test('a register with joints and steps takes the step, and has no leak and no count from it', async () => {
  const database = await registerBefore(STEP);
  const before = database.prepare('select id, kind, body from event order by id').all();
  await takeStep(database, STEP);
  expect(database.prepare('select id, kind, body from event order by id').all()).toEqual(before);
  expect(before.length).toBeGreaterThan(5);
  for (const table of TABLES) {
    expect(database.prepare(`select count(*) as n from ${table}`).get(), table).toEqual({ n: 0 });
  }
  const later = rowsThen(database).filter(
    ([table, { kind }]) => TABLES.includes(table) || kind === 'cycles counted',
  );
  expect(later).toHaveLength(TABLES.length + 1);
  for (const row of later) insert(database, ...row);
});

test('a leak can be closed and its causes revised; a count of cycles stays as it was recorded', async () => {
  const database = await migratedDatabase();
  database.exec(`update leak set causes = '[{"cause":"vibration"}]'`);
  expect(database.prepare('select causes from leak').pluck().all()).toEqual(['[{"cause":"vibration"}]']);
  expect(() => database.exec('update cycle_count set cycles = 0')).toThrow(/append-only/);
});
