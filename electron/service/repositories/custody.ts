import type { Kysely } from 'kysely';
import type { MoveRow } from '../../../core/contract/custody.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** Moment of the newest move of each tool that was moved at all. */
export async function newestMoves(db: Db, toolIds: readonly string[]) {
  const rows = await db
    .selectFrom('tool_move')
    .select(['tool_id as toolId', 'happened_at as happenedAt', 'happened_at_utc as happenedAtUtc'])
    .where('tool_id', 'in', [...toolIds])
    .orderBy('happened_at_utc')
    .execute();
  return [...new Map(rows.map((row) => [row.toolId, row])).values()];
}

/** Kits not closed that hold one of the tools, each with the tool. */
export async function openKitsWith(db: Db, toolIds: readonly string[]) {
  return db
    .selectFrom('kit_tool')
    .innerJoin('kit', 'kit.id', 'kit_tool.kit_id')
    .select(['kit_tool.tool_id as toolId', 'kit.id', 'kit.name', 'kit.from_day as from', 'kit.to_day as to'])
    .where('kit_tool.tool_id', 'in', [...toolIds])
    .where('kit.closed', '=', 0)
    .orderBy('kit.from_day')
    .orderBy('kit.name_key')
    .execute();
}

/** Moves of a tool, newest first; of two at one moment the later recorded comes first. */
export async function movesOf(db: Db, toolId: string): Promise<MoveRow[]> {
  const rows = await db
    .selectFrom('tool_move')
    .innerJoin('event', 'event.id', 'tool_move.event_id')
    .innerJoin('tool', 'tool.id', 'tool_move.tool_id')
    .innerJoin('person', 'person.id', 'tool_move.person_id')
    .leftJoin('person as holder', 'holder.id', 'tool_move.holder_id')
    .select([
      'tool_move.event_id as id',
      'tool_move.tool_id as toolId',
      'tool.number',
      'tool_move.step',
      'tool_move.from_status as from',
      'tool_move.to_status as to',
      'tool_move.happened_at as happenedAt',
      'person.name as person',
      'holder.name as holder',
      'tool_move.condition',
      'tool_move.place',
      'tool_move.reference',
      'tool_move.reason',
    ])
    .where('tool_move.tool_id', '=', toolId)
    .orderBy('tool_move.happened_at_utc', 'desc')
    .orderBy('event.sequence', 'desc')
    .execute();
  return rows;
}
