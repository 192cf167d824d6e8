import type { Kysely } from 'kysely';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import { type AssemblyRecord, emptyRecord } from '../../../core/record/record.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { Site } from '../context.ts';
import { notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { peopleOf } from '../repositories/history.ts';
import type { JointOnRegister } from '../repositories/joint.ts';
import { issuedBody, passesById, passesOfJoint } from '../repositories/pass.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { dateAtSite } from '../time.ts';

type Db = Kysely<RegisterSchema>;

/** From the break an assembly began with to the next one; null where the register knows no such break. */
interface Span {
  readonly from: string | null;
  readonly until: string | null;
}

/** Everything the register holds of one assembly: the one an event belongs to, or the joint's newest. */
export async function assemblyRecord(
  { db, site }: { readonly db: Db; readonly site: Site },
  joint: JointOnRegister,
  eventId: string | null,
): Promise<AssemblyRecord> {
  const resolved = resolveJoint(joint.data, await siteTablesFor(db, joint.data));
  const span = await spanOf(db, joint.id, eventId);
  const tightening = await tighteningIn(db, joint.id, span, eventId);
  const settingId = tightening === null ? await newestSetting(db, joint.id) : tightening.data.settingId;
  const issued = settingId === null ? null : await issuedBody(db, settingId);
  const passIds = tightening?.data.passIds ?? [];
  const passes =
    tightening === null
      ? await passesOfJoint(db, joint.id, span)
      : [...(await passesById(db, passIds)).values()].toSorted(
          (a, b) => passIds.indexOf(a.id) - passIds.indexOf(b.id),
        );
  return {
    ...emptyRecord(joint.data, resolved),
    unitName: joint.unitName,
    setting: issued && { number: issued.number, card: issued.card },
    tightening,
    passes: passes.map(({ data }) => data),
    breakout: span.from === null ? null : await breakoutAt(db, site, joint.id, span.from),
  };
}

async function spanOf(db: Db, jointId: string, eventId: string | null): Promise<Span> {
  const at = eventId === null ? null : await momentOf(db, jointId, eventId);
  const breaks = db.selectFrom('breakout').select('happened_at_utc as at').where('joint_id', '=', jointId);
  const before = at === null ? breaks : breaks.where('happened_at_utc', '<=', at);
  const from = await before.orderBy('happened_at_utc', 'desc').limit(1).executeTakeFirst();
  const after =
    at === null
      ? undefined
      : await breaks.where('happened_at_utc', '>', at).orderBy('happened_at_utc').limit(1).executeTakeFirst();
  return { from: from?.at ?? null, until: after?.at ?? null };
}

async function momentOf(db: Db, jointId: string, eventId: string): Promise<string> {
  const event = await db
    .selectFrom('event_joint')
    .innerJoin('event', 'event.id', 'event_joint.event_id')
    .select('event.happened_at_utc as at')
    .where('event_joint.joint_id', '=', jointId)
    .where('event.id', '=', eventId)
    .executeTakeFirst();
  if (!event) throw notFound('record of this joint', 'eventId', eventId);
  return event.at;
}

/** The tightening asked about; else the newest of the assembly. */
async function tighteningIn(
  db: Db,
  jointId: string,
  { from, until }: Span,
  eventId: string | null,
): Promise<AssemblyRecord['tightening']> {
  let query = db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .select(['event.id', 'event.body'])
    .where('tightening.joint_id', '=', jointId);
  if (from !== null) query = query.where('tightening.happened_at_utc', '>=', from);
  if (until !== null) query = query.where('tightening.happened_at_utc', '<', until);
  const asked = eventId === null ? undefined : await query.where('event.id', '=', eventId).executeTakeFirst();
  const row =
    asked ??
    (await query
      .orderBy('tightening.happened_at_utc', 'desc')
      .orderBy('event.sequence', 'desc')
      .limit(1)
      .executeTakeFirst());
  if (!row) return null;
  const body = JSON.parse(row.body) as EventBody;
  const { data, flags } = body.data as EventDataByKind['tightening recorded'];
  return {
    // Bodies recorded before passes and batches were kept name none.
    data: { ...data, batches: data.batches ?? [], passIds: data.passIds ?? [] },
    flags,
    people: (await peopleOf(db, [row.id])).get(row.id) ?? [],
    recordedBy: await nameOf(db, body.recordedBy ?? null),
  };
}

async function nameOf(db: Db, personId: string | null): Promise<string | null> {
  if (personId === null) return null;
  const person = await db.selectFrom('person').select('name').where('id', '=', personId).executeTakeFirst();
  return person?.name ?? null;
}

async function breakoutAt(
  db: Db,
  site: Site,
  jointId: string,
  at: string,
): Promise<AssemblyRecord['breakout']> {
  const row = await db
    .selectFrom('breakout')
    .innerJoin('event', 'event.id', 'breakout.id')
    .select('event.body')
    .where('breakout.joint_id', '=', jointId)
    .where('breakout.happened_at_utc', '=', at)
    .orderBy('event.sequence', 'desc')
    .executeTakeFirstOrThrow();
  const { happenedAt, data } = JSON.parse(row.body) as EventBody;
  return {
    data: (data as EventDataByKind['breakout recorded']).data,
    on: dateAtSite(happenedAt, site.timeZone),
  };
}

async function newestSetting(db: Db, jointId: string): Promise<string | null> {
  const row = await db
    .selectFrom('setting')
    .select('id')
    .where('joint_id', '=', jointId)
    .where('kind', '=', 'tightening')
    .orderBy('issued_at', 'desc')
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.id ?? null;
}
