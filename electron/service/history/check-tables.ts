import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { recordedEvent } from '../chain/append.ts';
import { NOT_PROJECTED } from '../chain/not-projected.ts';
import { project } from '../chain/project.ts';
import { queryBuilder } from '../register/dialect.ts';
import { migrate } from '../register/migrate.ts';
import { type Collector, collector } from './findings.ts';
import type { Found } from './tasks.ts';

const PER_TRANSACTION = 500;

/**
 * Works every table out again from the events' texts, in a file of its own, and compares row by row: what the lists
 * show must be what was recorded.
 */
export async function checkTables(
  stored: Database.Database,
  onTick: (records: number) => void,
): Promise<Found> {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-tables-'));
  const file = join(folder, 'tables.sqlite');
  const found = collector();
  try {
    await workOut(stored, file, onTick);
    return found.found(compare(stored, file, found));
  } catch (error) {
    if (!comesFromTheTexts(error)) throw error;
    found.add(
      'column differs from text',
      `The tables can not be worked out from the texts: ${error.message}`,
    );
    return found.found(0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A forged text can break the working out; a full or failing disk says nothing of the texts. */
function comesFromTheTexts(error: unknown): error is Error {
  if (error instanceof Database.SqliteError) return error.code.startsWith('SQLITE_CONSTRAINT');
  return error instanceof TypeError || error instanceof RangeError || error instanceof SyntaxError;
}

async function workOut(
  stored: Database.Database,
  file: string,
  onTick: (records: number) => void,
): Promise<void> {
  const fresh = new Database(file);
  try {
    const db = queryBuilder(fresh);
    await migrate(fresh, db);
    // Thrown away afterwards: nothing of it has to survive a crash.
    fresh.pragma('journal_mode = MEMORY');
    fresh.pragma('synchronous = OFF');
    fresh.pragma('foreign_keys = OFF');
    copyRows(stored, fresh, 'origin', 0);
    for (let last = 0; ; ) {
      const rows = copyRows(stored, fresh, 'event', last);
      const end = rows.at(-1);
      if (end === undefined) return;
      last = Number(end['rowid']);
      const events = rows.map((row) => recordedEvent(String(row['body']), String(row['previous_hash'])));
      await db.transaction().execute((transaction) => project(transaction, events));
      onTick(events.length);
    }
  } finally {
    fresh.close();
  }
}

type Row = Readonly<Record<string, unknown>>;

/** Copies what follows a row, as much as goes into one transaction. */
function copyRows(from: Database.Database, to: Database.Database, table: string, after: number): Row[] {
  const rows = from
    .prepare<[number], Row>(
      `select rowid, * from ${table} where rowid > ? order by rowid limit ${PER_TRANSACTION}`,
    )
    .all(after);
  const columns = Object.keys(rows[0] ?? {});
  if (columns.length === 0) return rows;
  const places = columns.map(() => '?').join(', ');
  const insert = to.prepare(`insert into ${table} (${columns.join(', ')}) values (${places})`);
  to.transaction(() => {
    for (const row of rows) insert.run(...Object.values(row));
  })();
  return rows;
}

/** Tables that follow from the events. */
export function projectedTables(database: Database.Database): string[] {
  return database
    .prepare<[], string>(
      `select name from sqlite_schema where type = 'table' and name not like 'kysely_%'
         and name not like 'sqlite_%' order by name`,
    )
    .pluck()
    .all()
    .filter((name) => !NOT_PROJECTED.includes(name));
}

/** Rows that differ are told of by the hundred; more of them say nothing new. */
const MOST = 1000;

function compare(stored: Database.Database, file: string, found: Collector): number {
  stored.prepare('attach ? as worked').run(file);
  try {
    const tables = projectedTables(stored);
    for (const table of tables) compareTable(stored, table, found);
    const count = (table: string) =>
      stored.prepare<[], number>(`select count(*) from main."${table}"`).pluck().get() ?? 0;
    return tables.reduce((sum, table) => sum + count(table), 0);
  } finally {
    stored.exec('detach worked');
  }
}

function compareTable(stored: Database.Database, table: string, found: Collector): void {
  const known = stored
    .prepare<[string], number>(`select count(*) from worked.sqlite_schema where type = 'table' and name = ?`)
    .pluck()
    .get(table);
  // A table that this program does not know is the schema's finding.
  if (known !== 1) return;
  const only = (here: string, there: string) =>
    stored
      .prepare<[], Row>(
        `select * from ${here}."${table}" except select * from ${there}."${table}" limit ${MOST}`,
      )
      .all();
  const keyOf = keyReader(stored, table);
  const expected = new Map(only('worked', 'main').map((row) => [keyOf(row), row]));
  for (const row of only('main', 'worked')) {
    const key = keyOf(row);
    const twin = expected.get(key);
    expected.delete(key);
    if (twin === undefined) {
      found.add('row without its record', `${table} ${key}: no text gives this row`);
      continue;
    }
    const columns = Object.keys(row).filter((column) => row[column] !== twin[column]);
    const told = columns.map((column) => said(column, row, twin)).join('; ');
    found.add('column differs from text', `${table} ${key}: ${told}`);
  }
  for (const key of expected.keys()) {
    found.add('row missing', `${table} ${key}: the texts give this row, and it is not there`);
  }
}

function keyReader(database: Database.Database, table: string): (row: Row) => string {
  const columns = database
    .prepare<[string], string>('select name from pragma_table_info(?) where pk > 0 order by pk')
    .pluck()
    .all(table);
  return (row) => columns.map((column) => String(row[column])).join(' ');
}

const SHOWN = 60;

function said(column: string, row: Row, twin: Row): string {
  const shown = (value: unknown) => (value === null ? 'nothing' : String(value).slice(0, SHOWN));
  return `${column} stands as ${shown(row[column])}, the text gives ${shown(twin[column])}`;
}
