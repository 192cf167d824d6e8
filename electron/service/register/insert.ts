import type { Insertable, Kysely } from 'kysely';
import type { RegisterSchema } from './schema.ts';

/** Well under SQLite's 32,766 parameters for the widest table. */
const ROWS_PER_STATEMENT = 200;

export function chunks<T>(rows: readonly T[], size = ROWS_PER_STATEMENT): T[][] {
  const parts: T[][] = [];
  for (let start = 0; start < rows.length; start += size) parts.push(rows.slice(start, start + size));
  return parts;
}

/** Inserts many rows with few statements. */
export async function insertRows<T extends keyof RegisterSchema>(
  db: Kysely<RegisterSchema>,
  table: T,
  rows: readonly Insertable<RegisterSchema[T]>[],
): Promise<void> {
  for (const part of chunks(rows)) await db.insertInto(table).values(part).execute();
}
