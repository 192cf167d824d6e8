import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { toolFacts } from '../../electron/service/repositories/tool-facts.ts';
import { ask, createEmpty, startService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant } from './records.ts';
import { ruleOf, saveRule } from './tool-room.ts';

const TOOLS = 5000;

/** Copies one wrench and its certificate under other ids, as rows: the list reads no event. */
function multiply(file: string, driveId: string): void {
  const database = new Database(file);
  database.pragma('foreign_keys = OFF');
  const columns = (table: string) =>
    database
      .prepare<[string], { name: string }>('select name from pragma_table_info(?)')
      .all(table)
      .map(({ name }) => name);
  const copy = (table: string, key: string, changed: Readonly<Record<string, string>>) => {
    const names = columns(table);
    const values = names.map((name) => changed[name] ?? name);
    database
      .prepare(
        `with recursive n (i) as (select 1 union all select i + 1 from n where i < ${TOOLS})
         insert into ${table} (${names.join(', ')}) select ${values.join(', ')} from ${table}, n where ${key} = ?`,
      )
      .run(driveId);
  };
  const uuid = (group: string) => `'00000000-0000-7000-8${group}-' || substr('000000000000' || i, -12)`;
  const certificate = database.prepare('select id from certificate where tool_id = ?').pluck().get(driveId);
  database
    .prepare(
      `with recursive n (i) as (select 1 union all select i + 1 from n where i < ${TOOLS})
       insert into event select ${uuid('001')}, origin_id, 1000 + i, previous_hash,
         substr('${'0'.repeat(64)}' || i, -64), body, body_version, kind, happened_at, happened_at_utc, recorded_at, supersedes
       from event, n where id = ?`,
    )
    .run(certificate);
  copy('certificate', 'tool_id', { id: uuid('001'), tool_id: uuid('002') });
  copy('tool', 'id', {
    id: uuid('002'),
    number: `'X-' || i`,
    number_key: `'x-' || i`,
    number_sort: `'x-' || substr('0000000000' || i, -10)`,
  });
  database.close();
}

test('5,000 tools are looked at in as many queries as one, and the list comes a page at a time', async () => {
  const folder = temporaryFolder();
  const started = startService(folder);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  await saveRule(started, ruleOf({ certificateUses: 100 }));
  await started.service.close();
  const file = join(folder, 'register.sqlite');
  multiply(file, plant.tools.driveId ?? '');

  const statements: string[] = [];
  const seen = new Database(file, { readonly: true, verbose: (text) => statements.push(String(text)) });
  const db = queryBuilder(seen);
  const ids = (await db.selectFrom('tool').select('id').where('class', '=', 'drive unit').execute()).map(
    ({ id }) => id,
  );
  expect(ids).toHaveLength(TOOLS + 1);
  const queriesFor = async (some: readonly string[]) => {
    statements.length = 0;
    const facts = await toolFacts(db, some, '2026-03-16');
    expect(facts).toHaveLength(some.length);
    return statements.length;
  };
  expect(await queriesFor(ids)).toBe(await queriesFor(ids.slice(0, 1)));
  seen.close();

  const again = startService(folder);
  const input = {
    on: null,
    withinDays: 400,
    text: '',
    class: 'drive unit' as const,
    all: true,
    pageSize: 50,
  };
  const begun = performance.now();
  const page = await ask(again, 'tool.due', { ...input, page: 100 });
  const seconds = (performance.now() - begun) / 1000;
  expect(page.total).toBe(TOOLS + 1);
  expect(page.rows).toHaveLength(50);
  // Far above what it takes, so that only another order of growth can miss it.
  expect(seconds).toBeLessThan(10);
  await again.service.close();
});
