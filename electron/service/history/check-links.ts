import type Database from 'better-sqlite3';
import { collector } from './findings.ts';
import type { EventLink, Found } from './tasks.ts';

/** Columns of other tables that name an event, as the file's own schema declares them. */
export function eventLinks(database: Database.Database): EventLink[] {
  const named = database
    .prepare<[], { name: string; column: string }>(
      `select t.name as name, f."from" as "column" from pragma_table_list t join pragma_foreign_key_list(t.name) f
         where t.schema = 'main' and t.type = 'table' and f."table" = 'event' order by 1, 2`,
    )
    .all();
  return named.map(({ name, column }) => {
    const rows = database.prepare<[], number>(`select count(*) from "${name}"`).pluck().get() ?? 0;
    return { table: name, column, rows };
  });
}

/** Rows that follow from an event which is gone: what is left when somebody cuts the log and forgets the rest. */
export function checkLink(database: Database.Database, { table, column, rows }: EventLink): Found {
  const found = collector();
  const left = database
    .prepare<[], { n: number; example: string | null }>(
      `select count(*) as n, min(x."${column}") as example from "${table}" x where x."${column}" is not null
         and not exists (select 1 from event where event.id = x."${column}")`,
    )
    .get();
  if (left !== undefined && left.n > 0) {
    const one = `${left.n} ${left.n === 1 ? 'row' : 'rows'} of ${table}`;
    found.add(
      'row without its record',
      `${one} follow from records that are not in the log, among them ${left.example}`,
    );
  }
  return found.found(rows);
}
