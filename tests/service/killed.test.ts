import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { firstBreak } from '../../core/audit/chain.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS, SCHEMA_NUMBER } from '../../migrations/list.ts';
import { EARLIER_ROWS, insert } from '../migrations/rows.ts';
import { ask, createEmpty, startService } from './ask.ts';
import { temporaryFolder } from './folder.ts';

interface Said {
  readonly word: string;
  readonly key: string;
  readonly count: number;
}

/** Lets another process write until it has said so many lines, then kills it where it stands. */
async function writeAndKill(folder: string, lines: number): Promise<Said[]> {
  const script = fileURLToPath(new URL('./writer.ts', import.meta.url));
  const child = spawn(process.execPath, ['--no-warnings', script, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  await new Promise<void>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', () => resolve());
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString('utf8');
      if (output.split('\n').length > lines) child.kill('SIGKILL');
    });
  });
  return output
    .split('\n')
    .slice(0, -1)
    .map((line) => {
      const [word = '', key = '', count = ''] = line.split(' ');
      return { word, key, count: Number(count) };
    });
}

test.each([21, 50, 83])(
  'a process killed after %i lines loses nothing it had confirmed, and a retry is written once',
  async (lines) => {
    const folder = temporaryFolder();
    const first = startService(folder);
    await createEmpty(first);
    await first.service.close();
    const said = await writeAndKill(folder, lines);
    const done = said.filter(({ word }) => word === 'done');
    const sent = said.filter(({ word }) => word === 'sent');
    expect(done.length).toBeGreaterThan(5);
    expect(said.filter(({ word }) => word === 'failed')).toEqual([]);

    const started = startService(folder);
    const names = (await ask(started, 'unit.list', {})).rows.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(done.map(({ count }) => `Unit ${count}`)));
    for (const { key, count } of sent) {
      const save = { key, id: null, version: null, data: { name: `Unit ${count}` } };
      const answer = await ask(started, 'unit.save', save);
      if (done.some((each) => each.key === key)) expect(answer.alreadyRecorded).toBe(true);
    }
    const units = await ask(started, 'unit.list', {});
    expect(units.total).toBe(sent.length);
    await started.service.close();

    const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
    const links = database
      .prepare<[], { sequence: number; previousHash: string; hash: string; body: string }>(
        'select sequence, previous_hash as previousHash, hash, body from event order by sequence',
      )
      .all();
    expect(links).toHaveLength(sent.length + 1);
    expect(firstBreak(sha256, links)).toBeNull();
    database.close();
  },
);

test('a register of an earlier schema is backed up, checked and brought up to date with its data', async () => {
  const folder = temporaryFolder();
  const earlier = Object.fromEntries(Object.entries(MIGRATIONS).slice(0, -1));
  const old = new Database(join(folder, 'register.sqlite'));
  await migrate(old, queryBuilder(old), earlier);
  for (const [table, row] of EARLIER_ROWS) insert(old, table, row);
  old.close();

  const started = startService(folder);
  const state = await ask(started, 'register.state', {});
  expect(state).toMatchObject({ state: 'open', siteName: 'Site', joints: 1, tools: 1, events: 5 });
  await started.service.close();

  const updated = new Database(join(folder, 'register.sqlite'), { readonly: true });
  expect(updated.pragma('user_version', { simple: true })).toBe(SCHEMA_NUMBER);
  expect(updated.prepare('select count(*) as n from tightening').get()).toEqual({ n: 1 });
  expect(updated.prepare('select count(*) as n from site_row').get()).toEqual({ n: 0 });
  updated.close();
  const backup = new Database(
    join(folder, 'backups', `before-schema-${SCHEMA_NUMBER}-20260316T120000Z.sqlite`),
    {
      readonly: true,
    },
  );
  expect(backup.pragma('user_version', { simple: true })).toBe(SCHEMA_NUMBER - 1);
  expect(backup.prepare('select count(*) as n from event').get()).toEqual({ n: 5 });
  backup.close();
});
