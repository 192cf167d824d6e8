import type { Kysely } from 'kysely';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import { type AssemblyRecord, emptyRecord } from '../../../core/record/record.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { Site } from '../context.ts';
import { notFound } from '../failure.ts';
import { standingOf } from '../life/standing.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { peopleOf } from '../repositories/history.ts';
import type { JointOnRegister } from '../repositories/joint.ts';
import { issuedBody, passesById, passesOfJoint } from '../repositories/pass.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { dateAtSite } from '../time.ts';
import { nameOf, type Span, spanAround, stepsWithin } from './steps.ts';

type Db = Kysely<RegisterSchema>;

/** Everything the register holds of one assembly: the one an event belongs to, or the joint's newest. */
export async function assemblyRecord(
  { db, site }: { readonly db: Db; readonly site: Site },
  joint: JointOnRegister,
  eventId: string | null,
): Promise<AssemblyRecord> {
  const resolved = resolveJoint(joint.data, await siteTablesFor(db, joint.data));
  const span = await spanOf(db, joint.id, eventId);
  const stepped = await stepsWithin(db, joint.id, span);
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
    criticality: (await standingOf(db, joint.id)).class?.level ?? null,
    ...stepped,
    setting: issued && { number: issued.number, card: issued.card },
    tightening,
    passes: passes.map(({ data }) => data),
    breakout: await breakoutOf(db, site, joint.id, span),
  };
}

async function spanOf(db: Db, jointId: string, eventId: string | null): Promise<Span> {
  return spanAround(db, jointId, eventId === null ? null : await momentOf(db, jointId, eventId));
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

/** The breakout an assembly began with; opening the joint may have been recorded as a step alone. */
async function breakoutOf(
  db: Db,
  site: Site,
  jointId: string,
  { from, until }: Span,
): Promise<AssemblyRecord['breakout']> {
  if (from === null) return null;
  let query = db
    .selectFrom('breakout')
    .innerJoin('event', 'event.id', 'breakout.id')
    .select('event.body')
    .where('breakout.joint_id', '=', jointId)
    .where('breakout.happened_at_utc', '>=', from);
  if (until !== null) query = query.where('breakout.happened_at_utc', '<', until);
  const row = await query
    .orderBy('breakout.happened_at_utc', 'desc')
    .orderBy('event.sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (!row) return null;
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
