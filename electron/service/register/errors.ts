import Database from 'better-sqlite3';
import type { ErrorCode } from '../../../core/contract/errors.ts';
import { RequestFailure } from '../failure.ts';

interface Meaning {
  readonly code: ErrorCode;
  readonly message: string;
}

/** Primary result codes, and extended ones where they mean something else to a person. */
const MEANINGS: readonly (readonly [string, Meaning])[] = [
  ['SQLITE_NOTADB', { code: 'register_not_sqlite', message: 'The register file is not a SQLite database' }],
  ['SQLITE_CORRUPT', { code: 'register_damaged', message: 'The register file is damaged' }],
  ['SQLITE_FULL', { code: 'disk_full', message: 'The disk is full; nothing was written' }],
  [
    'SQLITE_BUSY',
    { code: 'busy', message: 'The register is in use by another program; nothing was written' },
  ],
  ['SQLITE_LOCKED', { code: 'busy', message: 'The register is in use; nothing was written' }],
  ['SQLITE_READONLY', { code: 'register_location', message: 'The register file may not be written to' }],
  [
    'SQLITE_CANTOPEN',
    { code: 'register_location', message: 'The register file or its folder cannot be opened' },
  ],
  ['SQLITE_PERM', { code: 'register_location', message: 'The register file may not be opened' }],
  ['SQLITE_IOERR', { code: 'register_location', message: 'The disk could not be read or written' }],
  [
    'SQLITE_CONSTRAINT_UNIQUE',
    { code: 'duplicate', message: 'A record with this name or number exists already' },
  ],
];

/** The system's own codes, from making folders and renaming files. */
const SYSTEM_MEANINGS: Readonly<Record<string, Meaning>> = {
  ENOSPC: { code: 'disk_full', message: 'The disk is full; nothing was written' },
  EDQUOT: { code: 'disk_full', message: 'The disk quota is used up; nothing was written' },
  EACCES: { code: 'register_location', message: 'The data folder may not be written to' },
  EPERM: { code: 'register_location', message: 'The data folder may not be written to' },
  EROFS: { code: 'register_location', message: 'The data folder is on a read-only disk' },
  ENOTDIR: { code: 'register_location', message: 'The data folder lies below something that is no folder' },
  EEXIST: { code: 'register_location', message: 'There is a file where the data folder should be' },
  EBUSY: { code: 'busy', message: 'The register file is in use by another program' },
};

/** Turns an error of SQLite or the system into the register's own; null when it has no meaning for a person. */
export function registerFailure(error: unknown): RequestFailure | null {
  if (error instanceof RequestFailure) return error;
  if (error instanceof Database.SqliteError) return sqliteFailure(error);
  const code = error instanceof Error && 'syscall' in error && 'code' in error ? String(error.code) : '';
  const meaning = Object.hasOwn(SYSTEM_MEANINGS, code) ? SYSTEM_MEANINGS[code] : undefined;
  return meaning ? new RequestFailure(meaning.code, `${meaning.message} (${code})`) : null;
}

function sqliteFailure(error: InstanceType<typeof Database.SqliteError>): RequestFailure | null {
  const meaning = MEANINGS.find(([code]) => error.code === code || error.code.startsWith(`${code}_`))?.[1];
  return meaning ? new RequestFailure(meaning.code, `${meaning.message} (${error.code})`) : null;
}
