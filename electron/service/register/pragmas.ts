import type Database from 'better-sqlite3';

/** "Stud" in ASCII: marks the file as a register of this program. */
export const APPLICATION_ID = 0x53747564;

/**
 * Set on every open, in this order. WAL with synchronous NORMAL could lose the last record in a power cut, and without
 * recursive triggers INSERT OR REPLACE walks past the append-only triggers.
 */
const PRAGMAS = [
  { name: 'trusted_schema', set: 'OFF', reads: 0 },
  { name: 'journal_mode', set: 'WAL', reads: 'wal' },
  { name: 'synchronous', set: 'FULL', reads: 2 },
  { name: 'foreign_keys', set: 'ON', reads: 1 },
  { name: 'recursive_triggers', set: 'ON', reads: 1 },
  { name: 'cell_size_check', set: 'ON', reads: 1 },
  { name: 'busy_timeout', set: '5000', reads: 5000 },
] as const;

/** Settings of a connection as read back, by name. */
export function readPragmas(database: Database.Database): Record<string, unknown> {
  return Object.fromEntries(PRAGMAS.map(({ name }) => [name, database.pragma(name, { simple: true })]));
}

/** Applies the settings and makes sure that each one holds: SQLite ignores what it doesn't know. */
export function applyPragmas(database: Database.Database): void {
  for (const { name, set } of PRAGMAS) {
    // A read-only connection can't switch the journal; the file's own mode is asserted below.
    if (database.readonly && name === 'journal_mode') continue;
    database.pragma(`${name} = ${set}`);
  }
  const actual = readPragmas(database);
  for (const { name, reads } of PRAGMAS) {
    if (actual[name] !== reads) {
      throw new Error(`pragma ${name} reads ${String(actual[name])} after being set, expected ${reads}`);
    }
  }
}
