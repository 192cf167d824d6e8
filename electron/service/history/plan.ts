import type Database from 'better-sqlite3';
import { merkleHead } from '../../../core/audit/merkle.ts';
import { SCHEMA_NUMBER } from '../../../migrations/list.ts';
import { sha256 } from '../chain/sha256.ts';
import { eventLinks } from './check-links.ts';
import type { OriginEnd, Plan } from './tasks.ts';

/** How much there is to look at. */
export function makePlan(database: Database.Database): Plan {
  const origins = originEnds(database);
  return {
    origins,
    events: origins.reduce((sum, { events }) => sum + events, 0),
    links: eventLinks(database),
    attachments: countOf(database, `event where kind = 'attachment added'`),
    signatures: countOf(database, `event where kind = 'record signed'`),
    refusals: hasRefusals(database) ? countOf(database, 'refusal') : 0,
    schemaKnown: database.pragma('user_version', { simple: true }) === SCHEMA_NUMBER,
  };
}

const countOf = (database: Database.Database, rows: string): number =>
  database.prepare<[], number>(`select count(*) from ${rows}`).pluck().get() ?? 0;

/** A file that lost the table is told of by the look at its schema. */
export const hasRefusals = (database: Database.Database): boolean =>
  countOf(database, `sqlite_schema where type = 'table' and name = 'refusal'`) === 1;

/** Last record of each origin. The counting reads an index alone; one statement with the hash would read every row. */
export function originEnds(database: Database.Database): OriginEnd[] {
  const counted = database
    .prepare<[], { id: string; events: number; sequence: number }>(
      `select origin_id as id, count(*) as events, max(sequence) as sequence from event group by origin_id order by 1`,
    )
    .all();
  const name = database.prepare<[string], string>('select name from origin where id = ?').pluck();
  const hash = database
    .prepare<[string, number], string>('select hash from event where origin_id = ? and sequence = ?')
    .pluck();
  return counted.map(({ id, events, sequence }) => ({
    id,
    name: name.get(id) ?? 'not named',
    events,
    sequence,
    hash: hash.get(id, sequence) ?? '',
  }));
}

export const headOf = (origins: readonly OriginEnd[]): string =>
  merkleHead(
    sha256,
    origins.map(({ id, sequence, hash }) => ({ originId: id, sequence, hash })),
  );
