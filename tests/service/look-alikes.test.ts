import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { JointInput } from '../../core/contract/joint.ts';
import { lookAlikes } from '../../core/joint/look-alike.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { withCandidates } from '../../electron/service/repositories/look-alike.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { jointA, saveJoint } from './records.ts';

const JOINTS = 20_000;

let folder: string;
let started: TestService;
let unitId: string;

beforeAll(async () => {
  folder = temporaryFolder();
  started = startService(folder);
  await createEmpty(started);
  const unit = { key: key(), id: null, version: null, data: { name: 'Unit 100' } };
  unitId = (await ask(started, 'unit.save', unit)).id;
});
afterAll(() => started.service.close());

const save = async (tag: string, changes: Partial<JointInput> = {}) =>
  (await saveJoint(started, { ...jointA(unitId, tag), ...changes })).id;
const of = async (id: string) => (await ask(started, 'joint.lookAlikes', { id })).rows;

test('each kind of likeness is found in the register', async () => {
  const far = { service: 'steam', flange: { kind: 'custom', description: 'other' } } as const;
  const own = await save('E-201A N3', {
    identity: {
      valve: 'XV-12',
      valveSide: 'upstream',
      confusableWith: [{ tag: 'v-9', tell: 'blue here' }],
      neighbours: ['Z-5'],
    },
  });
  await save('V-9', far);
  await save('X-1', { ...far, identity: { confusableWith: [{ tag: 'e-201a n3' }] } });
  await save('X-2', { ...far, identity: { valve: 'xv-12', valveSide: 'downstream' } });
  await save('E-201B N3');
  await save('E-2O1A N3', far);
  await save('E-210A N3', far);
  await save('Z-5');
  await save('Q-77');
  const rows = await of(own);
  expect(rows.map(({ tag }) => tag).toSorted()).toEqual(
    ['V-9', 'X-1', 'X-2', 'E-201B N3', 'E-2O1A N3', 'E-210A N3', 'Z-5'].toSorted(),
  );
  expect(rows.find(({ tag }) => tag === 'V-9')).toMatchObject({
    tells: ['E-201A N3: blue here'],
    state: null,
    unitName: 'Unit 100',
  });
});

test('a joint that is not on the register has none', async () => {
  const id = '01990000-0000-7000-8000-000000000001';
  expect(await askBadly(started, 'joint.lookAlikes', { id })).toMatchObject({ code: 'not_found' });
});

/** Copies one joint under running tags, as rows: look-alikes read no event. */
function multiply(file: string, id: string): void {
  const database = new Database(file);
  database.pragma('foreign_keys = OFF');
  const names = database.prepare("select name from pragma_table_info('joint')").pluck().all() as string[];
  const tag = `'M-' || substr('000000' || i, -6)`;
  const changed: Readonly<Record<string, string>> = {
    id: `'00000000-0000-7000-8001-' || substr('000000000000' || i, -12)`,
    tag,
    tag_key: `lower(${tag})`,
    tag_sort: `'m-' || substr('0000000000' || i, -10)`,
    valve_key: `'xv-' || (i / 2)`,
    data: `json_set(data, '$.tag', ${tag}, '$.identity.valve', 'XV-' || (i / 2))`,
  };
  const values = names.map((name) => changed[name] ?? name).join(', ');
  database
    .prepare(
      `with recursive n (i) as (select 1 union all select i + 1 from n where i < ${JOINTS})
       insert into joint (${names.join(', ')}) select ${values} from joint, n where id = ?`,
    )
    .run(id);
  database.close();
}

test('among 20,000 joints of one kind they are looked up by index, a few hundred rows at most', async () => {
  const model = await save('M-MODEL');
  const file = join(folder, 'register.sqlite');
  await started.service.close();
  multiply(file, model);
  const statements: string[] = [];
  const database = new Database(file, { readonly: true, verbose: (text) => statements.push(String(text)) });
  const db = queryBuilder(database);
  const middle = '00000000-0000-7000-8001-000000010000';

  const times: number[] = [];
  let found: ReturnType<typeof lookAlikes> = [];
  let candidates = 0;
  for (let round = 0; round < 5; round++) {
    const from = process.cpuUsage();
    const seen = await withCandidates(db, middle);
    if (seen === null) throw new Error('fixture: no such joint');
    found = lookAlikes(seen.own, seen.others);
    const { user, system } = process.cpuUsage(from);
    times.push((user + system) / 1000);
    candidates = seen.others.length;
  }
  expect(found[0]?.joint.tag).toBe('M-010001');
  expect(found[0]?.reasons[0]).toContain('XV-5000');
  expect(candidates).toBeGreaterThan(40);
  expect(candidates).toBeLessThan(300);
  // Processor time, so that a busy machine doesn't count.
  expect(Math.min(...times)).toBeLessThan(50);

  const reads = statements.filter((text) => /^select/i.test(text));
  expect(reads.length).toBeGreaterThan(5);
  const plan = database.prepare<[], { detail: string }>(
    `explain query plan ${reads.find((text) => text.includes('json_each')) ?? ''}`,
  );
  const steps = plan.all().map(({ detail }) => detail);
  expect(steps.join('\n')).toMatch(/SEARCH joint USING .*INDEX .*tag_key=\?/);
  for (const text of new Set(reads)) {
    const rows = database.prepare<[], { detail: string }>(`explain query plan ${text}`).all();
    const scans = rows.filter(({ detail }) => /^SCAN joint\b/.test(detail));
    expect([text.slice(0, 90), scans]).toEqual([text.slice(0, 90), []]);
  }
  database.close();
});
