import Database from 'better-sqlite3';
import { recordedEvent } from '../../electron/service/chain/append.ts';
import { NOT_PROJECTED } from '../../electron/service/chain/not-projected.ts';
import { project } from '../../electron/service/chain/project.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';

interface StoredEvent {
  readonly body: string;
  readonly previous_hash: string;
}

/** A fresh database in memory, filled from the verbatim bodies of a register's events and nothing else. */
export async function rebuilt(source: Database.Database): Promise<Database.Database> {
  const target = new Database(':memory:');
  const db = queryBuilder(target);
  await migrate(target, db);
  for (const table of ['origin', 'event']) copyTable(source, target, table);
  const events = source
    .prepare<[], StoredEvent>('select body, previous_hash from event order by origin_id, sequence')
    .all()
    .map(({ body, previous_hash: previousHash }) => recordedEvent(body, previousHash));
  await db.transaction().execute((transaction) => project(transaction, events));
  return target;
}

function copyTable(source: Database.Database, target: Database.Database, table: string): void {
  for (const row of source.prepare<[], Record<string, unknown>>(`select * from ${table}`).all()) {
    const columns = Object.keys(row);
    target
      .prepare(`insert into ${table} (${columns.join(', ')}) values (${columns.map(() => '?').join(', ')})`)
      .run(...Object.values(row));
  }
}

export function projectedTables(database: Database.Database): string[] {
  return database
    .prepare<[], { name: string }>(
      `select name from sqlite_schema where type = 'table' and name not like 'kysely_%' order by name`,
    )
    .all()
    .map(({ name }) => name)
    .filter((name) => !NOT_PROJECTED.includes(name));
}

/** All rows of a table in an order of their own. */
export function rowsOf(database: Database.Database, table: string): unknown[] {
  const rows = database.prepare<[], Record<string, unknown>>(`select * from ${table}`).all();
  return rows.toSorted((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
}
