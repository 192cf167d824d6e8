import Database from 'better-sqlite3';
import { queryBuilder } from '../register/dialect.ts';
import { migrate } from '../register/migrate.ts';
import { collector } from './findings.ts';
import type { Found } from './tasks.ts';

interface SchemaObject {
  readonly type: string;
  readonly name: string;
  readonly sql: string;
}

const objectsOf = (database: Database.Database): Map<string, SchemaObject> =>
  new Map(
    database
      .prepare<[], SchemaObject>(
        `select type, name, sql from sqlite_schema where sql is not null and name not like 'sqlite_%'`,
      )
      .all()
      .map((object) => [`${object.type} ${object.name}`, object]),
  );

/**
 * Holds the file's tables, indexes and triggers against those the steps of this program make in an empty file. Without
 * its triggers a log can be rewritten by plain statements; a trigger too many could write behind somebody's back.
 */
export async function checkSchema(database: Database.Database): Promise<Found> {
  const found = collector();
  const fresh = new Database(':memory:');
  try {
    await migrate(fresh, queryBuilder(fresh));
    const expected = objectsOf(fresh);
    const actual = objectsOf(database);
    for (const [key, { type, sql }] of expected) {
      const kind = type === 'trigger' ? 'trigger missing' : 'schema differs';
      const stands = actual.get(key);
      if (stands === undefined) found.add(kind, `The ${key} is not in the file`);
      else if (stands.sql !== sql) found.add(kind, `The ${key} is not as this program makes it`);
    }
    for (const key of actual.keys()) {
      if (!expected.has(key)) found.add('schema differs', `The ${key} is none of this program’s`);
    }
    return found.found(expected.size);
  } finally {
    fresh.close();
  }
}

/** SQLite's own look through every page and every index. */
export function checkFile(database: Database.Database): Found {
  const found = collector();
  const lines = database.pragma('integrity_check(100)') as { integrity_check: string }[];
  for (const { integrity_check: line } of lines) if (line !== 'ok') found.add('file damaged', line);
  return found.found(1);
}
