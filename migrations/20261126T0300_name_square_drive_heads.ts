import type { Kysely } from 'kysely';
import { appendOnly, runStatements } from './statements.ts';

/** A square-drive head that stood in the cassette's place of a set was linked as a cassette. */
export async function up(db: Kysely<unknown>): Promise<void> {
  const [closed = ''] = appendOnly('event_tool', ['event_id', 'tool_id', 'role']);
  await runStatements(db, [
    'drop trigger event_tool_no_update',
    `update event_tool set role = 'square-drive head'
       where role = 'cassette' and tool_id in (select id from tool where class = 'square-drive head')`,
    closed,
  ]);
}
