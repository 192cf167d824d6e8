import { existsSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Kysely } from 'kysely';
import { SCHEMA_NUMBER } from '../../../migrations/list.ts';
import { RequestFailure } from '../failure.ts';
import { makeVerifiedBackup } from './backup.ts';
import { queryBuilder } from './dialect.ts';
import { registerFailure } from './errors.ts';
import { registerFile } from './files.ts';
import { checkHeader, isNewer } from './header.ts';
import { migrate } from './migrate.ts';
import { applyPragmas } from './pragmas.ts';
import type { RegisterSchema } from './schema.ts';

export interface OpenRegister {
  /** Null when the register is open for reading only; `problem` then says why. */
  readonly writer: Kysely<RegisterSchema> | null;
  readonly reader: Kysely<RegisterSchema>;
  readonly problem: RequestFailure | null;
  close(): void;
}

const CHECK_TIMEOUT_MS = 1000;
const OPEN_TIMEOUT_MS = 5000;

/**
 * Opens the register in a folder; null when there is none. A file that can't be used stays untouched and the failure
 * names what is wrong with it. The caller holds the register's lock.
 */
export async function openRegister(folder: string, now: Date): Promise<OpenRegister | null> {
  const file = registerFile(folder);
  if (!existsSync(file)) return null;
  try {
    const { userVersion } = checkHeader(file);
    checkWhole(file);
    if (isNewer(userVersion)) return openNewer(file, userVersion);
    return await openWritable(folder, file, now);
  } catch (error) {
    throw openFailure(error);
  }
}

/** A read-only look through all pages, before anything that could write. */
function checkWhole(file: string): void {
  const database = new Database(file, { readonly: true, timeout: CHECK_TIMEOUT_MS });
  try {
    const result = database.pragma('quick_check(1)', { simple: true });
    if (result !== 'ok') {
      throw new RequestFailure(
        'register_damaged',
        `The register file is damaged (${String(result)}); it was left as it is. Restore a backup`,
      );
    }
  } finally {
    database.close();
  }
}

async function openWritable(folder: string, file: string, now: Date): Promise<OpenRegister> {
  const database = new Database(file, { timeout: OPEN_TIMEOUT_MS });
  try {
    applyPragmas(database);
    const version = Number(database.pragma('user_version', { simple: true }));
    if (isNewer(version)) {
      database.close();
      return openNewer(file, version);
    }
    const writer = queryBuilder(database);
    if (version < SCHEMA_NUMBER) {
      const stamp = now.toISOString().replace(/[-:]|\.\d+/g, '');
      await makeVerifiedBackup(
        database,
        join(folder, 'backups', `before-schema-${SCHEMA_NUMBER}-${stamp}.sqlite`),
      );
      await migrate(database, writer);
    }
    const reading = openReading(file);
    return {
      writer,
      reader: queryBuilder(reading),
      problem: null,
      // The writer last: the last connection folds the write-ahead log into the file.
      close: () => {
        reading.close();
        database.close();
      },
    };
  } catch (error) {
    database.close();
    throw error;
  }
}

/** A connection that can only read, with every setting of a register's. */
export function openReading(file: string): Database.Database {
  const database = new Database(file, { readonly: true, timeout: OPEN_TIMEOUT_MS });
  try {
    applyPragmas(database);
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Later schemas only add, so what this program knows can still be read. */
function openNewer(file: string, version: number): OpenRegister {
  const database = openReading(file);
  return {
    writer: null,
    reader: queryBuilder(database),
    problem: new RequestFailure(
      'register_newer',
      `The register was written by a newer Studbook (schema ${version}, this program knows ${SCHEMA_NUMBER}); it is open for reading only`,
    ),
    close: () => database.close(),
  };
}

function openFailure(error: unknown): unknown {
  const failure = registerFailure(error);
  if (failure?.code === 'busy') {
    return new RequestFailure(
      'register_locked',
      'Another program has the register file locked; it was left as it is',
    );
  }
  return failure ?? error;
}
