import Database from 'better-sqlite3';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { MIGRATIONS } from '../../migrations/list.ts';
import { insert, SOUND_ROWS } from './rows.ts';

/** A register as the steps before one left it, with a sound row of every table there was. */
export async function registerBefore(step: string): Promise<Database.Database> {
  const database = new Database(':memory:');
  await migrate(
    database,
    queryBuilder(database),
    stepsUntil((name) => name < step),
  );
  database.pragma('foreign_keys = ON');
  for (const row of rowsThen(database)) insert(database, ...row);
  return database;
}

/** Takes the one step, and none that came later. */
export async function takeStep(database: Database.Database, step: string): Promise<void> {
  await migrate(
    database,
    queryBuilder(database),
    stepsUntil((name) => name <= step),
  );
}

/** Rows of the tables and kinds of event that are there already, and of nothing that leads to later ones. */
export function rowsThen(database: Database.Database): typeof SOUND_ROWS {
  const names = (sql: string) => new Set(database.prepare(sql).pluck().all());
  const tables = names(`select name from sqlite_schema where type = 'table'`);
  const kinds = names('select name from event_kind');
  const later = new Set(
    SOUND_ROWS.flatMap(([table, row]) => (table === 'event' && !kinds.has(row.kind) ? [row.id] : [])),
  );
  return SOUND_ROWS.filter(
    ([table, row]) => tables.has(table) && !Object.values(row).some((value) => later.has(value)),
  );
}

function stepsUntil(keep: (name: string) => boolean) {
  return Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => keep(name)));
}
