import type { Kysely } from 'kysely';
import type { StintView } from '../../../core/contract/pass.ts';
import { passSteps } from '../../../core/sequence/pass-steps.ts';
import type { PlannedPass } from '../../../core/sequence/run.ts';
import { planOf } from '../../../core/setting/plan.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

export type RecordedPass = { readonly id: string } & EventDataByKind['pass recorded'];

/** Passes of a tightening in the order they were recorded. */
export async function passesOfRun(db: Db, runId: string): Promise<RecordedPass[]> {
  const rows = await db
    .selectFrom('pass_record')
    .innerJoin('event', 'event.id', 'pass_record.id')
    .select(['event.id', 'event.body'])
    .where('pass_record.run_id', '=', runId)
    .orderBy('pass_record.ended_at_utc')
    .orderBy('pass_record.id')
    .execute();
  return rows.map(read);
}

/** Passes of a joint between two moments, for a tightening that has no record of its end yet. */
export async function passesOfJoint(
  db: Db,
  jointId: string,
  { from, until }: { readonly from: string | null; readonly until: string | null },
): Promise<RecordedPass[]> {
  let query = db
    .selectFrom('pass_record')
    .innerJoin('event', 'event.id', 'pass_record.id')
    .select(['event.id', 'event.body'])
    .where('pass_record.joint_id', '=', jointId);
  if (from !== null) query = query.where('pass_record.ended_at_utc', '>=', from);
  if (until !== null) query = query.where('pass_record.ended_at_utc', '<', until);
  const rows = await query.orderBy('pass_record.ended_at_utc').orderBy('pass_record.id').execute();
  return rows.map(read);
}

export async function passesById(db: Db, ids: readonly string[]): Promise<Map<string, RecordedPass>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('pass_record')
    .innerJoin('event', 'event.id', 'pass_record.id')
    .select(['event.id', 'event.body'])
    .where('pass_record.id', 'in', [...ids])
    .execute();
  return new Map(rows.map((row) => [row.id, read(row)]));
}

function read({ id, body }: { readonly id: string; readonly body: string }): RecordedPass {
  return { id, ...((JSON.parse(body) as EventBody).data as EventDataByKind['pass recorded']) };
}

type IssuedBody = EventDataByKind['setting issued'];

export async function issuedBody(db: Db, settingId: string): Promise<IssuedBody | null> {
  const row = await db
    .selectFrom('setting')
    .innerJoin('event', 'event.id', 'setting.id')
    .select('event.body')
    .where('setting.id', '=', settingId)
    .executeTakeFirst();
  return row ? ((JSON.parse(row.body) as EventBody).data as IssuedBody) : null;
}

export interface PlannedAndWait extends PlannedPass {
  /** Shortest wait before it, s; null where it follows at once. */
  readonly wait: number | null;
}

/** The plan of an issued setting as its crew goes round it. */
export function plannedPasses({ card, cardInput }: Pick<IssuedBody, 'card' | 'cardInput'>): PlannedAndWait[] {
  const waits = planOf(cardInput)?.steps ?? [];
  const steps = passSteps(card);
  return card.passes.map(({ name }, at) => ({ name, steps: steps[at] ?? [], wait: waits[at]?.wait ?? null }));
}

/** Passes for reading, with the names of everybody who had a part. */
export async function stintViews(db: Db, passes: readonly RecordedPass[]): Promise<StintView[]> {
  const ids = new Set(
    passes
      .flatMap(({ data }) => [...data.personIds, data.setBy, data.confirmedBy])
      .filter((id) => id !== null),
  );
  const people =
    ids.size === 0
      ? []
      : await db
          .selectFrom('person')
          .select(['id', 'name'])
          .where('id', 'in', [...ids])
          .execute();
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const name = (id: string | null) => (id === null ? null : (names.get(id) ?? null));
  return passes.map(({ id, data, flags }) => {
    return {
      eventId: id,
      pass: data.pass,
      name: data.name,
      round: data.round,
      goRoundAgain: data.goRoundAgain,
      people: data.personIds.flatMap((personId) => name(personId) ?? []),
      setBy: name(data.setBy),
      confirmedBy: name(data.confirmedBy),
      startedAt: data.startedAt,
      endedAt: data.endedAt,
      dialled: data.dialled,
      torque: data.torque,
      boltsDone: data.boltsDone,
      leftOut: data.leftOut,
      readings: data.readings,
      stoppedBecause: data.stoppedBecause,
      remarks: data.remarks,
      flags: [...flags],
    };
  });
}
