import { closeSync, existsSync, openSync, readdirSync, readSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { EarlierHead, HeadComparison } from '../../../core/contract/history.ts';
import { headOf, originEnds } from './plan.ts';

type Source = HeadComparison['source'];

/** A head that this history should have had, or a copy in the folder that tells of none. */
export type EarlierClaim =
  | { readonly source: Source; readonly name: string; readonly head: string; readonly events: number | null }
  | {
      readonly source: Source;
      readonly name: string;
      readonly problem: 'another register' | 'can not be read';
    };

/**
 * Every earlier head there is: the typed one, those of backups and exports in the data folder.
 * Whoever can rewrite the log can also clear the folder; a head on paper is out of their reach.
 */
export function earlierClaims(
  database: Database.Database,
  folder: string,
  typed: EarlierHead | null,
): EarlierClaim[] {
  const known = new Set(database.prepare<[], string>('select id from origin').pluck().all());
  return [
    ...(typed === null ? [] : [{ source: 'typed' as const, name: '', ...typed }]),
    ...named(join(folder, 'backups'), /\.sqlite$/).map(({ name, file }) => ofBackup(name, file, known)),
    ...named(join(folder, 'exports'), /\.jsonl$/).map(({ name, file }) => ofExport(name, file, known)),
  ];
}

function named(folder: string, ending: RegExp): { name: string; file: string }[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => ending.test(name))
    .toSorted()
    .map((name) => ({ name, file: join(folder, name) }));
}

function ofBackup(name: string, file: string, known: ReadonlySet<string>): EarlierClaim {
  const source = 'backup';
  try {
    const copy = new Database(file, { readonly: true });
    try {
      copy.pragma('trusted_schema = OFF');
      const heads = originEnds(copy);
      if (!heads.some(({ id }) => known.has(id))) {
        return { source, name, problem: 'another register' };
      }
      const events = heads.reduce((sum, head) => sum + head.events, 0);
      return { source, name, head: headOf(heads), events };
    } finally {
      copy.close();
    }
  } catch (error) {
    if (error instanceof Database.SqliteError) return { source, name, problem: 'can not be read' };
    throw error;
  }
}

/** Longer than any first line that an export begins with: it names the site and the origins. */
const FIRST_LINE = 1_000_000;

function ofExport(name: string, file: string, known: ReadonlySet<string>): EarlierClaim {
  const source = 'export';
  const first = firstLine(file);
  if (first === null) return { source, name, problem: 'can not be read' };
  const { head, events, origins } = first;
  if (!origins.some((id) => known.has(id))) return { source, name, problem: 'another register' };
  return { source, name, head, events };
}

function firstLine(file: string): { head: string; events: number; origins: string[] } | null {
  const handle = openSync(file, 'r');
  try {
    const start = Buffer.alloc(FIRST_LINE);
    const read = readSync(handle, start, 0, FIRST_LINE, 0);
    const [line = ''] = start.toString('utf8', 0, read).split('\n', 1);
    const { head, events, origins } = JSON.parse(line) as Record<string, unknown>;
    if (typeof head !== 'string' || typeof events !== 'number' || !Array.isArray(origins)) return null;
    return { head, events, origins: origins.map((origin) => String((origin as { id?: unknown }).id)) };
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return null;
    throw error;
  } finally {
    closeSync(handle);
  }
}
