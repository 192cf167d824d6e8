import type { Kysely } from 'kysely';
import type { LeakRow } from '../../../core/contract/leak-log.ts';
import type { RecordedEvent } from '../chain/events.ts';
import type { Projector } from '../chain/projector.ts';
import { standingOf } from '../life/standing.ts';
import { insertRows } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { endOfDay, startOfDay, toUtc } from '../time.ts';

type Db = Kysely<RegisterSchema>;
type Stepped = RecordedEvent<'joint stepped'>;

/**
 * Leaks that a step reports, and leaks it closes. A step out of order closes none, since whether it counts is not
 * decided; a joint nobody has assessed follows no order.
 */
export async function keepLeaks(db: Db, event: Stepped): Promise<void> {
  const { data, outOfOrder } = event.data;
  const { state } = await standingOf(db, data.jointId);
  const counts = outOfOrder.length === 0 || state === 'unassessed';
  switch (data.step) {
    case 'report leak':
      return open(db, event, 'report', data.evidence.phase, data.evidence.causes);
    case 'test':
      if (data.evidence.result === 'failed') return open(db, event, 'failed test', 'leak test', []);
      return data.evidence.result === 'passed' && counts ? close(db, event, {}) : undefined;
    case 'close leak watch': {
      const { leakEventId, causes } = data.evidence;
      return close(db, event, {
        ...(leakEventId === null ? {} : { only: leakEventId }),
        ...(causes.length === 0 ? {} : { causes: JSON.stringify(causes) }),
      });
    }
    case 'reinstate':
      // Made up again since, and back: what leaked then is no longer there.
      return counts ? close(db, event, { before: await makeUpOf(db, data.jointId) }) : undefined;
    default:
  }
}

async function open(
  db: Db,
  { id, happenedAt, happenedAtUtc, data: { data } }: Stepped,
  origin: LeakRow['origin'],
  phase: LeakRow['phase'],
  causes: readonly unknown[],
): Promise<void> {
  await db
    .insertInto('leak')
    .values({
      id,
      joint_id: data.jointId,
      origin,
      phase,
      make_up: await makeUpOf(db, data.jointId),
      happened_at: happenedAt,
      happened_at_utc: happenedAtUtc,
      causes: JSON.stringify(causes),
      closed_by: null,
      closed_at: null,
      closed_at_utc: null,
    })
    .execute();
}

/** Make-ups that the joint's states have seen; without states the openings on record stand for them. */
export async function makeUpOf(db: Db, jointId: string): Promise<number> {
  const { state, makeUp } = await standingOf(db, jointId);
  if (state !== 'unassessed') return makeUp;
  const { opened } = await db
    .selectFrom('breakout')
    .select(({ fn }) => fn.countAll<number>().as('opened'))
    .where('joint_id', '=', jointId)
    .executeTakeFirstOrThrow();
  return opened;
}

interface Closes {
  readonly only?: string;
  /** Only leaks of make-ups before this one. */
  readonly before?: number;
  /** Causes found since, as JSON. */
  readonly causes?: string;
}

async function close(
  db: Db,
  { id, happenedAt, happenedAtUtc, data: { data } }: Stepped,
  { only, before, causes }: Closes,
): Promise<void> {
  let query = db
    .updateTable('leak')
    .set({
      closed_by: id,
      closed_at: happenedAt,
      closed_at_utc: happenedAtUtc,
      ...(causes === undefined ? {} : { causes }),
    })
    .where('joint_id', '=', data.jointId)
    .where('closed_by', 'is', null)
    .where('happened_at_utc', '<=', happenedAtUtc);
  if (only !== undefined) query = query.where('id', '=', only);
  if (before !== undefined) query = query.where('make_up', '<', before);
  await query.execute();
}

export const projectCycles: Projector<'cycles counted'> = async (db, events) => {
  for (const { id, data: counted } of events) {
    const { data, timeZone } = counted;
    await insertRows(
      db,
      'event_joint',
      data.jointIds.map((jointId) => ({ event_id: id, joint_id: jointId })),
    );
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: data.personId, role: 'counted', position: 0 },
    ]);
    await insertRows(
      db,
      'cycle_count',
      data.jointIds.map((jointId) => ({
        event_id: id,
        joint_id: jointId,
        starts_on: data.from,
        ends_on: data.until,
        from_utc: toUtc(startOfDay(data.from, timeZone)),
        until_utc: toUtc(endOfDay(data.until, timeZone)),
        cycles: data.cycles,
      })),
    );
  }
};
