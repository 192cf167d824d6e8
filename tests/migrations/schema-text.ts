import type Database from 'better-sqlite3';

/** The whole schema as SQLite keeps it, tables before indexes before triggers, by name. */
export function schemaText(database: Database.Database): string {
  const rows = database
    .prepare<[], { sql: string }>(
      `select sql from sqlite_schema where sql is not null
         order by case type when 'table' then 1 when 'index' then 2 else 3 end, name`,
    )
    .all();
  return `${rows.map(({ sql }) => `${sql};`).join('\n\n')}\n`;
}
