import { type Kysely, sql } from 'kysely';
import type { JointStep, StepData } from '../../../core/contract/life.ts';
import { EVIDENCE_STEPS, type EvidenceStep } from '../../../core/record/field.ts';
import type { AssemblyRecord, StepsOfRecord } from '../../../core/record/record.ts';
import type { EventBody, EventDataByKind, EventKind } from '../chain/events.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** From the break an assembly began with to the next one; null where the register knows no such break. */
export interface Span {
  readonly from: string | null;
  readonly until: string | null;
}

const OPENING: readonly EventKind[] = ['breakout recorded', 'joint stepped'];
const CLOSING: readonly EventKind[] = ['tightening recorded', 'pass recorded', 'joint stepped'];

/** The assembly that a moment falls in; null asks for the newest. */
export async function spanAround(db: Db, jointId: string, at: string | null): Promise<Span> {
  const breaks = await breaksOf(db, jointId);
  const before = at === null ? breaks : breaks.filter((moment) => moment <= at);
  const after = at === null ? undefined : breaks.find((moment) => moment > at);
  return { from: before.at(-1) ?? null, until: after ?? null };
}

/** Moments a joint was opened. A breakout and the step that says the same of one opening count once, as the first. */
async function breaksOf(db: Db, jointId: string): Promise<string[]> {
  const rows = await db
    .selectFrom('event_joint')
    .innerJoin('event', 'event.id', 'event_joint.event_id')
    .select([
      'event.kind',
      'event.happened_at_utc as at',
      sql<string | null>`json_extract(event.body, '$.data.data.step')`.as('step'),
    ])
    .where('event_joint.joint_id', '=', jointId)
    .where('event.kind', 'in', [...new Set([...OPENING, ...CLOSING])])
    .orderBy('event.happened_at_utc')
    .orderBy('event.sequence')
    .execute();
  const breaks: string[] = [];
  let open = false;
  for (const { kind, at, step } of rows) {
    if (OPENING.includes(kind) && (step === null || step === 'break')) {
      if (!open) breaks.push(at);
      open = true;
    } else if (CLOSING.includes(kind) && (step === null || step === 'make up')) open = false;
  }
  return breaks;
}

/** What belongs to getting ready: it lies before the break it is about. */
const BEFORE_THE_BREAK: readonly JointStep[] = ['assess', 'isolate', 'release'];

/** Newest evidence of each step of an assembly, who returned it to service, and the leaks of the joint up to its end. */
export async function stepsWithin(
  db: Db,
  jointId: string,
  { from, until }: Span,
): Promise<Pick<AssemblyRecord, 'steps' | 'reinstatedBy' | 'leaks'>> {
  let query = db
    .selectFrom('event_joint')
    .innerJoin('event', 'event.id', 'event_joint.event_id')
    .select(['event.body', 'event.happened_at_utc as at'])
    .where('event_joint.joint_id', '=', jointId)
    .where('event.kind', '=', 'joint stepped');
  if (until !== null) query = query.where('event.happened_at_utc', '<', until);
  const rows = await query.orderBy('event.happened_at_utc').orderBy('event.sequence').execute();
  const taken = rows.map(({ body, at }) => ({
    at,
    data: ((JSON.parse(body) as EventBody).data as EventDataByKind['joint stepped']).data,
  }));
  const own = taken.filter(
    ({ at, data }) => BEFORE_THE_BREAK.includes(data.step) || from === null || at >= from,
  );
  const newest = (name: EvidenceStep) => own.findLast(({ data }) => data.step === name)?.data ?? null;
  const by = newest('reinstate')?.by ?? null;
  return {
    steps: Object.fromEntries(
      EVIDENCE_STEPS.map((name) => [name, newest(name)?.evidence ?? null]),
    ) as unknown as StepsOfRecord,
    reinstatedBy: by === null ? null : await nameOf(db, by),
    leaks: taken.filter(({ data }) => isLeak(data)).length,
  };
}

const isLeak = (data: StepData) =>
  data.step === 'report leak' || (data.step === 'test' && data.evidence.result === 'failed');

export async function nameOf(db: Db, personId: string | null): Promise<string | null> {
  if (personId === null) return null;
  const person = await db.selectFrom('person').select('name').where('id', '=', personId).executeTakeFirst();
  return person?.name ?? null;
}
