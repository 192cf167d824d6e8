import type Database from 'better-sqlite3';
import { type Kysely, sql } from 'kysely';
import { type Migration, Migrator } from 'kysely/migration';
import { MIGRATIONS } from '../../../migrations/list.ts';
import { APPLICATION_ID } from './pragmas.ts';
import type { RegisterSchema } from './schema.ts';

/**
 * Brings the schema up to date, all steps or none. Foreign keys are off meanwhile, because a step may rebuild a table
 * that others refer to; they are checked before the commit. The caller has the lock and, for a file that held data, a
 * verified backup.
 */
export async function migrate(
  database: Database.Database,
  db: Kysely<RegisterSchema>,
  migrations: Readonly<Record<string, Migration>> = MIGRATIONS,
): Promise<void> {
  database.pragma('foreign_keys = OFF');
  try {
    await db.transaction().execute(async (transaction) => {
      const migrator = new Migrator({
        db: transaction,
        provider: { getMigrations: async () => ({ ...migrations }) },
      });
      const { error } = await migrator.migrateToLatest();
      if (error !== undefined) throw error;
      const dangling = database.pragma('foreign_key_check') as unknown[];
      if (dangling.length > 0) {
        throw new Error(`${dangling.length} rows refer to missing rows after the schema change`);
      }
      await sql.raw(`pragma application_id = ${APPLICATION_ID}`).execute(transaction);
      await sql.raw(`pragma user_version = ${Object.keys(migrations).length}`).execute(transaction);
    });
  } finally {
    database.pragma('foreign_keys = ON');
  }
}
