import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { canonicalText } from '../../core/audit/canonical.ts';
import { eventHash, NO_PREVIOUS } from '../../core/audit/chain.ts';
import type { EventBody } from '../../electron/service/chain/events.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { temporaryFolder } from './folder.ts';
import { rebuilt } from './rebuild.ts';

export const registerIn = (folder: string) => join(folder, 'register.sqlite');

/** A data folder like another one, to be spoiled. */
export function copyOf(folder: string): string {
  const copy = temporaryFolder();
  cpSync(folder, copy, { recursive: true });
  return copy;
}

/** Works on a register with every guard taken off; they are put back unless they are what is taken. */
export function behindItsBack(
  folder: string,
  work: (database: Database.Database) => void,
  guards: 'put back' | 'left off' = 'put back',
): void {
  const database = new Database(registerIn(folder));
  const triggers = database
    .prepare<[], { name: string; sql: string }>(`select name, sql from sqlite_schema where type = 'trigger'`)
    .all();
  database.pragma('foreign_keys = OFF');
  database.pragma('ignore_check_constraints = ON');
  for (const { name } of triggers) database.exec(`drop trigger ${name}`);
  work(database);
  if (guards === 'put back') for (const { sql } of triggers) database.exec(sql);
  database.close();
}

interface Logged {
  readonly hash: string;
  readonly body: EventBody;
}

/** What becomes of the log. */
export type Change = (log: readonly Logged[]) => readonly EventBody[];

/**
 * What somebody who knows the program can do: change the log as they like, renumber and hash it anew from there, and
 * work every table out again. The file that comes of it is whole, and every guard stands.
 */
export async function forge(
  folder: string,
  change: Change,
  signatures: 'made to fit' | 'left as they were' = 'made to fit',
): Promise<void> {
  const file = registerIn(folder);
  const database = new Database(file);
  const log = database
    .prepare<[], { hash: string; body: string }>('select hash, body from event order by sequence')
    .all()
    .map(({ hash, body }) => ({ hash, body: JSON.parse(body) as EventBody }));
  const hashes = new Map(log.map(({ hash, body }) => [body.id, hash]));
  for (const { name } of database
    .prepare<[], { name: string }>(`select name from sqlite_schema where type = 'trigger'`)
    .all()) {
    database.exec(`drop trigger ${name}`);
  }
  database.pragma('foreign_keys = OFF');
  database.pragma('ignore_check_constraints = ON');
  let previous = NO_PREVIOUS;
  const rows = change(log).map((body, index) => {
    const data = body.data as { hash?: string; eventId?: string };
    const fitted =
      body.kind === 'record signed' && signatures === 'made to fit'
        ? { ...data, hash: hashes.get(data.eventId ?? '') ?? '' }
        : data;
    const text = canonicalText({ ...body, sequence: index + 1, data: fitted });
    const hash = eventHash(sha256, previous, text);
    hashes.set(body.id, hash);
    const row = { id: body.id, sequence: index + 1, previous, hash, text };
    previous = hash;
    return row;
  });
  const stays = new Set(rows.map(({ id }) => id));
  for (const { body } of log) {
    if (!stays.has(body.id)) database.prepare('delete from event where id = ?').run(body.id);
  }
  database.exec('update event set sequence = sequence + 1000000, hash = id');
  const update = database.prepare(
    'update event set sequence = @sequence, previous_hash = @previous, hash = @hash, body = @text where id = @id',
  );
  for (const row of rows) update.run(row);
  const target = await rebuilt(database);
  database.close();
  for (const ending of ['', '-wal', '-shm']) rmSync(`${file}${ending}`, { force: true });
  target.exec(`vacuum into '${file}'`);
  target.close();
}
