import type { Kysely } from 'kysely';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema, ToolRole } from '../register/schema.ts';
import type { Subject } from './subject.ts';

type Db = Kysely<RegisterSchema>;

/** Moments in UTC; both belong to the window. */
export interface Bounds {
  readonly from: string | null;
  readonly to: string;
}

/** A tightening the subject had a part in. A tool with two parts in one record comes twice. */
export interface UseRow {
  readonly eventId: string;
  readonly jointId: string;
  readonly tag: string;
  readonly happenedAt: string;
  readonly happenedAtUtc: string;
  readonly dialled: number | null;
  readonly torque: number | null;
  readonly role: ToolRole | null;
}

/** The reverse trace of a tool: every tightening it had a part in within the window, by one range of an index. */
export function toolUses(db: Db, toolId: string, { from, to }: Bounds) {
  return db
    .selectFrom('event_tool')
    .innerJoin('tightening', 'tightening.id', 'event_tool.event_id')
    .innerJoin('joint', 'joint.id', 'tightening.joint_id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'joint.tag',
      'tightening.happened_at as happenedAt',
      'tightening.happened_at_utc as happenedAtUtc',
      'tightening.dialled_pa as dialled',
      'tightening.torque_nm as torque',
      'event_tool.role',
    ])
    .where('event_tool.tool_id', '=', toolId)
    .where('event_tool.used_at', '<=', to)
    .$if(from !== null, (query) => query.where('event_tool.used_at', '>=', from))
    .orderBy('event_tool.used_at')
    .orderBy('event_tool.event_id');
}

/** The same for a batch that went into the joints. */
export function batchUses(db: Db, batchId: string, { from, to }: Bounds) {
  return db
    .selectFrom('event_batch')
    .innerJoin('tightening', 'tightening.id', 'event_batch.event_id')
    .innerJoin('joint', 'joint.id', 'tightening.joint_id')
    .select([
      'tightening.id as eventId',
      'tightening.joint_id as jointId',
      'joint.tag',
      'tightening.happened_at as happenedAt',
      'tightening.happened_at_utc as happenedAtUtc',
      'tightening.dialled_pa as dialled',
      'tightening.torque_nm as torque',
    ])
    .where('event_batch.batch_id', '=', batchId)
    .where('tightening.happened_at_utc', '<=', to)
    .$if(from !== null, (query) => query.where('tightening.happened_at_utc', '>=', from ?? ''))
    .orderBy('tightening.happened_at_utc')
    .orderBy('tightening.id');
}

/** Every tightening in the window once, a tool with the first of its parts; of one joint where that is asked. */
export async function usesOfSubject(
  db: Db,
  subject: Subject,
  bounds: Bounds,
  jointId: string | null = null,
): Promise<UseRow[]> {
  if (subject.kind === 'batch') {
    const rows = await batchUses(db, subject.id, bounds)
      .$if(jointId !== null, (query) => query.where('tightening.joint_id', '=', jointId ?? ''))
      .execute();
    return rows.map((row) => ({ ...row, role: null }));
  }
  const rows = await toolUses(db, subject.id, bounds)
    .$if(jointId !== null, (query) => query.where('tightening.joint_id', '=', jointId ?? ''))
    .execute();
  return rows.filter((row, index) => rows[index - 1]?.eventId !== row.eventId);
}

/** Breakouts in the window: the load is gone, but what was read on them was wrong too. */
export async function breakoutsOfSubject(db: Db, subject: Subject, { from, to }: Bounds) {
  const of =
    subject.kind === 'tool'
      ? db.selectFrom('event_tool').select('event_id').where('tool_id', '=', subject.id)
      : db.selectFrom('event_batch').select('event_id').where('batch_id', '=', subject.id);
  return db
    .selectFrom('breakout')
    .innerJoin('joint', 'joint.id', 'breakout.joint_id')
    .select(['breakout.id as eventId', 'joint.tag', 'breakout.happened_at as happenedAt'])
    .where('breakout.id', 'in', of)
    .where('breakout.happened_at_utc', '<=', to)
    .$if(from !== null, (query) => query.where('breakout.happened_at_utc', '>=', from ?? ''))
    .orderBy('breakout.happened_at_utc')
    .orderBy('breakout.id')
    .execute();
}

/** Verbatim bodies of events by their id. */
export async function bodiesOf(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  const bodies = new Map<string, string>();
  for (const part of chunks(ids)) {
    const rows = await db.selectFrom('event').select(['id', 'body']).where('id', 'in', part).execute();
    for (const { id, body } of rows) bodies.set(id, body);
  }
  return bodies;
}

/** Number of tightenings in the window, without reading them. */
export async function countUses(
  db: Db,
  subject: Pick<Subject, 'kind' | 'id'>,
  { from, to }: Bounds,
): Promise<number> {
  const query =
    subject.kind === 'tool'
      ? db
          .selectFrom('event_tool')
          .innerJoin('tightening', 'tightening.id', 'event_tool.event_id')
          .where('event_tool.tool_id', '=', subject.id)
          .where('event_tool.used_at', '<=', to)
          .$if(from !== null, (one) => one.where('event_tool.used_at', '>=', from))
          .select(({ fn }) => fn.count<number>('tightening.id').distinct().as('uses'))
      : db
          .selectFrom('event_batch')
          .innerJoin('tightening', 'tightening.id', 'event_batch.event_id')
          .where('event_batch.batch_id', '=', subject.id)
          .where('tightening.happened_at_utc', '<=', to)
          .$if(from !== null, (one) => one.where('tightening.happened_at_utc', '>=', from ?? ''))
          .select(({ fn }) => fn.count<number>('tightening.id').distinct().as('uses'));
  return (await query.executeTakeFirstOrThrow()).uses;
}
