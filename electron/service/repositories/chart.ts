import { type Kysely, sql } from 'kysely';
import type { ChartPoint } from '../../../core/contract/joint.ts';
import { tellsRefusal } from '../../../core/setting/flags.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** Every record of a joint with a torque, in order of time. */
export async function chartPoints(db: Kysely<RegisterSchema>, jointId: string): Promise<ChartPoint[]> {
  const tightenings = db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .select(({ val }) => [
      'tightening.id as eventId',
      val<'tightening' | 'breakout'>('tightening').as('kind'),
      'tightening.happened_at as happenedAt',
      'tightening.happened_at_utc as utc',
      'event.sequence as sequence',
      'tightening.torque_nm as torque',
      'tightening.torque_nm as highest',
      val(1).as('readings'),
      val(0).as('notTurned'),
      'tightening.flags as flags',
    ])
    .where('tightening.joint_id', '=', jointId)
    .where('tightening.torque_nm', 'is not', null);
  const breakouts = db
    .selectFrom('breakout')
    .innerJoin('event', 'event.id', 'breakout.id')
    .select(({ val }) => [
      'breakout.id as eventId',
      val<'tightening' | 'breakout'>('breakout').as('kind'),
      'breakout.happened_at as happenedAt',
      'breakout.happened_at_utc as utc',
      'event.sequence as sequence',
      'breakout.torque_nm as torque',
      'breakout.highest_nm as highest',
      'breakout.readings as readings',
      'breakout.not_turned as notTurned',
      'breakout.flags as flags',
    ])
    .where('breakout.joint_id', '=', jointId)
    .where('breakout.torque_nm', 'is not', null);
  const rows = await tightenings.unionAll(breakouts).orderBy('utc').orderBy('sequence').execute();
  return rows.flatMap(({ utc: _, sequence: __, flags, torque, highest, ...row }) =>
    torque === null || highest === null
      ? []
      : [{ ...row, torque, highest, refused: tellsRefusal(JSON.parse(flags) as string[]) }],
  );
}

/** Newest tightening of a bolt set with a known torque up to a moment; what a later breakout is measured against. */
export async function lastTightening(
  db: Kysely<RegisterSchema>,
  jointId: string,
  boltSet: number,
  untilUtc: string | null,
) {
  let query = db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .select([
      'tightening.id as eventId',
      'tightening.torque_nm as torque',
      'tightening.happened_at as happenedAt',
    ])
    .where('tightening.joint_id', '=', jointId)
    .where('tightening.torque_nm', 'is not', null)
    .where(sql<number>`coalesce(json_extract(event.body, '$.data.data.boltSet'), 0)`, '=', boltSet);
  if (untilUtc !== null) query = query.where('tightening.happened_at_utc', '<=', untilUtc);
  const row = await query
    .orderBy('tightening.happened_at_utc', 'desc')
    .orderBy('event.sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row && row.torque !== null ? { ...row, torque: row.torque } : null;
}
