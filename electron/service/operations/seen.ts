import type { Kysely } from 'kysely';
import type { WriteContext } from '../context.ts';
import { RequestFailure } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { peopleOf } from '../repositories/history.ts';

type Db = Kysely<RegisterSchema>;

const LISTED = 10;

/** Newest event of a joint, in the order of recording; null for a joint without one. */
export async function newestEvent(db: Db, jointId: string): Promise<string | null> {
  const row = await recorded(db, jointId).limit(1).executeTakeFirst();
  return row?.id ?? null;
}

function recorded(db: Db, jointId: string) {
  return (
    db
      .selectFrom('event_joint')
      .innerJoin('event', 'event.id', 'event_joint.event_id')
      .select(['event.id', 'event.kind', 'event.happened_at as happenedAt'])
      .where('event_joint.joint_id', '=', jointId)
      // A signature says something about work; nothing at the joint has changed.
      .where('event.kind', '<>', 'record signed')
      .orderBy('event.recorded_at', 'desc')
      .orderBy('event.id', 'desc')
  );
}

/**
 * Refuses a record made from a picture of the joint that is no longer true: another window wrote in the meantime. The
 * answer says what; whoever asked looks at it and sends again.
 */
export async function checkSeen(
  { db }: Pick<WriteContext, 'db'>,
  jointId: string,
  seen: string | null,
): Promise<void> {
  const events = await recorded(db, jointId).limit(LISTED).execute();
  if ((events[0]?.id ?? null) === seen) return;
  const known = events.findIndex(({ id }) => id === seen);
  const since = known < 0 ? events : events.slice(0, known);
  const people = await peopleOf(
    db,
    since.map(({ id }) => id),
  );
  const told = since.map(({ id, kind, happenedAt }) => {
    const by = people.get(id);
    return `${kind}, ${happenedAt}${by === undefined ? '' : `, ${by.join(', ')}`}`;
  });
  throw new RequestFailure(
    'conflict',
    `Something else was recorded on this joint in the meantime: ${told[0] ?? 'nothing that is known'}. Nothing was written`,
    told.map((allowed) => ({ field: 'seen', value: seen ?? 'none', allowed })),
  );
}
