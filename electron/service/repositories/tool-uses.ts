import type { Kysely } from 'kysely';
import type { UseRow } from '../../../core/contract/tool-record.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** Recorded work a tool was used in, newest first, a page of it: one range of the index of uses. */
export async function usePage(
  db: Db,
  { id, page, pageSize }: { readonly id: string; readonly page: number; readonly pageSize: number },
): Promise<UseRow[]> {
  const rows = await usesQuery(db, id)
    .orderBy('event_tool.used_at', 'desc')
    .orderBy('event_tool.event_id', 'desc')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  return rows.map(({ kind, tighteningFlags, breakoutFlags, ...row }) => ({
    eventId: row.eventId,
    kind: kind === 'breakout recorded' ? 'breakout' : 'tightening',
    jointId: row.jointId,
    tag: row.tag,
    happenedAt: row.happenedAt,
    role: row.role,
    pressure: row.dialled ?? row.highestDialled,
    torque: row.torque ?? row.highest,
    flags: (JSON.parse(tighteningFlags ?? breakoutFlags ?? '[]') as unknown[]).length,
  }));
}

export function usesQuery(db: Db, toolId: string) {
  return db
    .selectFrom('event_tool')
    .innerJoin('event', 'event.id', 'event_tool.event_id')
    .innerJoin('event_joint', 'event_joint.event_id', 'event_tool.event_id')
    .innerJoin('joint', 'joint.id', 'event_joint.joint_id')
    .leftJoin('tightening', 'tightening.id', 'event_tool.event_id')
    .leftJoin('breakout', 'breakout.id', 'event_tool.event_id')
    .select(({ selectFrom }) => [
      'event_tool.event_id as eventId',
      'event.kind',
      'joint.id as jointId',
      'joint.tag',
      'event.happened_at as happenedAt',
      'event_tool.role',
      'tightening.dialled_pa as dialled',
      'tightening.torque_nm as torque',
      'tightening.flags as tighteningFlags',
      'breakout.highest_nm as highest',
      'breakout.flags as breakoutFlags',
      selectFrom('breakout_reading')
        .select(({ fn }) => fn.max('breakout_reading.dialled_pa').as('highestDialled'))
        .whereRef('breakout_reading.breakout_id', '=', 'event_tool.event_id')
        .as('highestDialled'),
    ])
    .where('event_tool.tool_id', '=', toolId)
    .where('event_tool.used_at', 'is not', null);
}

/** First and last recorded use, as moments with their offset. */
export async function firstAndLastUse(
  db: Db,
  toolId: string,
): Promise<{ first: string | null; last: string | null }> {
  const end = async (direction: 'asc' | 'desc') => {
    const row = await db
      .selectFrom('event_tool')
      .innerJoin('event', 'event.id', 'event_tool.event_id')
      .select('event.happened_at as happenedAt')
      .where('event_tool.tool_id', '=', toolId)
      .where('event_tool.used_at', 'is not', null)
      .orderBy('event_tool.used_at', direction)
      .limit(1)
      .executeTakeFirst();
    return row?.happenedAt ?? null;
  };
  return { first: await end('asc'), last: await end('desc') };
}

/** Studs turned in tightenings from a moment on; each counted once, whatever its passes. Null when none is recorded. */
export async function studsTurnedSince(db: Db, toolId: string, since: string): Promise<number | null> {
  const { studs } = await db
    .selectFrom('event_tool')
    .innerJoin('tightening', 'tightening.id', 'event_tool.event_id')
    .select(({ fn }) => fn.sum<number | null>('tightening.bolts_tightened').as('studs'))
    .where('event_tool.tool_id', '=', toolId)
    .where('event_tool.used_at', '>=', since)
    .executeTakeFirstOrThrow();
  return studs;
}
