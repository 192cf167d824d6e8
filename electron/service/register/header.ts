import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { SCHEMA_NUMBER } from '../../../migrations/list.ts';
import { RequestFailure } from '../failure.ts';
import { APPLICATION_ID } from './pragmas.ts';

const MAGIC = 'SQLite format 3\u0000';
const HEADER_LENGTH = 100;

export interface RegisterHeader {
  readonly userVersion: number;
}

/**
 * Looks at the file's first 100 bytes without SQLite, which may recover, create side files or lock; so a file that
 * isn't ours is left exactly as it was. Must run before this process has the file open: on POSIX systems closing any
 * handle drops the process's locks on it.
 *
 * Offsets as in "Database File Format", section 1.3, of SQLite's documentation.
 */
export function checkHeader(file: string): RegisterHeader {
  const handle = openSync(file, 'r');
  try {
    const size = fstatSync(handle).size;
    const header = Buffer.alloc(HEADER_LENGTH);
    const read = readSync(handle, header, 0, HEADER_LENGTH, 0);
    return interpret(header.subarray(0, read), size);
  } finally {
    closeSync(handle);
  }
}

function interpret(header: Buffer, size: number): RegisterHeader {
  if (header.length === 0) {
    throw new RequestFailure(
      'register_damaged',
      'The register file is empty (0 bytes); it was left as it is',
    );
  }
  if (header.toString('latin1', 0, MAGIC.length) !== MAGIC) {
    throw new RequestFailure(
      'register_not_sqlite',
      'The register file is not a SQLite database; it was left as it is',
    );
  }
  if (header.length < HEADER_LENGTH) throw truncated(size);
  const applicationId = header.readUInt32BE(68);
  if (applicationId !== APPLICATION_ID) {
    throw new RequestFailure(
      'register_foreign',
      `The file is a database of another program (application id ${applicationId}); it was left as it is`,
    );
  }
  const pageSize = header.readUInt16BE(16) === 1 ? 65536 : header.readUInt16BE(16);
  const pages = header.readUInt32BE(28);
  // The page count is valid only when the change counter equals the version-valid-for number.
  const pagesValid = header.readUInt32BE(24) === header.readUInt32BE(92);
  if (pagesValid && size < pages * pageSize) throw truncated(size);
  return { userVersion: header.readUInt32BE(60) };
}

function truncated(size: number): RequestFailure {
  return new RequestFailure(
    'register_damaged',
    `The register file is cut short (${size} bytes); it was left as it is. Restore a backup`,
  );
}

export function isNewer(userVersion: number): boolean {
  return userVersion > SCHEMA_NUMBER;
}
