import { existsSync, renameSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { Transaction } from 'kysely';
import { RequestFailure } from '../failure.ts';
import { queryBuilder } from './dialect.ts';
import { registerFile, removeUnfinished, syncFile, syncFolderOf } from './files.ts';
import { migrate } from './migrate.ts';
import { applyPragmas } from './pragmas.ts';
import type { RegisterSchema } from './schema.ts';

/**
 * Makes a register under another name, fills it in one transaction and only then gives it its name: what is called a
 * register is always a finished one.
 */
export async function createRegister(
  folder: string,
  fill: (db: Transaction<RegisterSchema>) => Promise<void>,
): Promise<void> {
  const file = registerFile(folder);
  const unfinished = `${file}.unfinished`;
  removeUnfinished(unfinished);
  const database = new Database(unfinished);
  try {
    applyPragmas(database);
    const db = queryBuilder(database);
    await migrate(database, db);
    await db.transaction().execute(fill);
    database.pragma('wal_checkpoint(TRUNCATE)');
    database.close();
    syncFile(unfinished);
    if (existsSync(file)) throw new RequestFailure('conflict', 'There is a register in this folder already');
    renameSync(unfinished, file);
    syncFolderOf(file);
  } catch (error) {
    database.close();
    removeUnfinished(unfinished);
    throw error;
  }
}
