import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { registerBefore } from './before-step.ts';
import { insert, isOfAccess, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0300_create_access';

test('a register from before works without sign-in, and its settings set nothing aside', async () => {
  const database = await registerBefore(STEP);
  const settings = () => database.prepare('select * from setting').all();
  const before = settings();
  expect(before).toHaveLength(1);
  await migrate(database, queryBuilder(database));
  expect(settings()).toEqual(before);
  for (const table of ['sign_in', 'person_secret', 'setting_override']) {
    expect(database.prepare(`select count(*) as n from ${table}`).get(), table).toEqual({ n: 0 });
  }
});

test('sign-in needs the step, and a secret belongs to one person', async () => {
  const database = await registerBefore(STEP);
  const rows = SOUND_ROWS.filter(isOfAccess);
  const [event] = rows;
  if (event === undefined) throw new Error('fixture: no sign-in');
  expect(() => insert(database, ...event)).toThrow(/FOREIGN KEY/);
  await migrate(database, queryBuilder(database));
  for (const row of rows) insert(database, ...row);
  const [, secret] = rows.find(([table]) => table === 'person_secret') ?? [];
  expect(() => insert(database, 'person_secret', secret ?? {})).toThrow(/UNIQUE/);
});
