import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { RequestFailure } from '../failure.ts';

export interface RegisterLock {
  release(): void;
}

/**
 * One service process per register. The lock is an open transaction on a file of its own: the system drops it when the
 * process dies, however it dies, so there is no stale lock to clear.
 */
export function takeLock(folder: string): RegisterLock {
  mkdirSync(folder, { recursive: true });
  const lock = new Database(join(folder, 'register.lock'), { timeout: 0 });
  try {
    lock.exec('begin exclusive');
  } catch (error) {
    lock.close();
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) {
      throw new RequestFailure(
        'register_locked',
        'Another running Studbook has this register open; it was left as it is',
      );
    }
    throw error;
  }
  return { release: () => lock.close() };
}
