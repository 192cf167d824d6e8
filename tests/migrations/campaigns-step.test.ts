import { expect, test } from 'vitest';
import { registerBefore, rowsThen, takeStep } from './before-step.ts';
import { insert, migratedDatabase, SOUND_ROWS } from './rows.ts';

const STEP = '20261127T0740_create_campaigns';
const TABLES = ['campaign', 'job', 'job_version'];

test('a register from before takes the step, keeps its events and has no campaign from it', async () => {
  const database = await registerBefore(STEP);
  const events = () => database.prepare('select id, kind, body from event order by id').all();
  const before = events();
  expect(before.length).toBeGreaterThan(5);
  await takeStep(database, STEP);
  expect(events()).toEqual(before);
  for (const table of TABLES) {
    expect(database.prepare(`select count(*) as n from ${table}`).get(), table).toEqual({ n: 0 });
  }
  const later = rowsThen(database).filter(
    ([table, { kind }]) => TABLES.includes(table) || kind === 'job saved',
  );
  expect(later).toHaveLength(TABLES.length + 1);
  for (const row of later) insert(database, ...row);
});

test('a number is taken once in a campaign, a name once among those that are open', async () => {
  const database = await migratedDatabase();
  const sound = (table: string) => SOUND_ROWS.find(([name]) => name === table)?.[1] ?? {};
  const other = '00000000-0000-7000-8000-000000000998';
  expect(() => insert(database, 'job', { ...sound('job'), id: other })).toThrow(/UNIQUE/);
  expect(() => insert(database, 'campaign', { ...sound('campaign'), id: other })).toThrow(/UNIQUE/);
  insert(database, 'campaign', { ...sound('campaign'), id: other, closed: 1 });
  expect(() => database.exec(`update job_version set reason = 'another'`)).toThrow(/append-only/);
});
