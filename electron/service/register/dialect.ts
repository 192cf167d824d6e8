import type Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type DatabaseIntrospector,
  type Dialect,
  type Driver,
  Kysely,
  type QueryCompiler,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type SqliteStatement,
} from 'kysely';
import { checkBound } from './bind.ts';
import type { RegisterSchema } from './schema.ts';

/** SQLite rolls schema changes back with the rest; the stock adapter says otherwise and leaves half a schema behind. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

/** Takes the write lock at the start, so that a transaction can't fail half-way for want of it. */
class ImmediateDriver extends SqliteDriver {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database: guarded(database) });
    this.#database = database;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** A full disk rolls back by itself; a second rollback would hide the first error. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

const MAX_CACHED = 500;

/** The connection as Kysely sees it: parameters checked, statements kept. */
function guarded(database: Database.Database): SqliteDatabase {
  const statements = new Map<string, SqliteStatement>();
  return {
    close: () => {
      statements.clear();
      database.close();
    },
    prepare(sql: string): SqliteStatement {
      const known = statements.get(sql);
      if (known) return known;
      const statement = database.prepare<unknown[]>(sql);
      const checked = (parameters: readonly unknown[]) => {
        checkBound(parameters);
        return [...parameters];
      };
      const wrapped: SqliteStatement = {
        reader: statement.reader,
        all: (parameters) => statement.all(...checked(parameters)),
        run: (parameters) => statement.run(...checked(parameters)),
        iterate: (parameters) => statement.iterate(...checked(parameters)),
      };
      if (statements.size >= MAX_CACHED) statements.clear();
      statements.set(sql, wrapped);
      return wrapped;
    },
  };
}

function registerDialect(database: Database.Database): Dialect {
  return {
    createAdapter: () => new TransactionalAdapter(),
    createDriver: (): Driver => new ImmediateDriver(database),
    createIntrospector: (db: Kysely<unknown>): DatabaseIntrospector => new SqliteIntrospector(db),
    createQueryCompiler: (): QueryCompiler => new SqliteQueryCompiler(),
  };
}

/** Query builder over one connection. */
export function queryBuilder(database: Database.Database): Kysely<RegisterSchema> {
  return new Kysely<RegisterSchema>({ dialect: registerDialect(database) });
}
