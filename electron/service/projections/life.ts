import type { Kysely } from 'kysely';
import type { StepData } from '../../../core/contract/life.ts';
import { standingNext } from '../../../core/joint/life/fold.ts';
import type { JointStanding, LifeEvent } from '../../../core/joint/life/standing.ts';
import { containmentOf } from '../../../core/joint/life/states.ts';
import type { TighteningLife } from '../chain/events.ts';
import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';
import { lifeOfDecision, lifeOfStep } from '../life/events.ts';
import { standingOf } from '../life/standing.ts';
import { insertRows } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { toUtc } from '../time.ts';
import { keepLeaks } from './leak.ts';

type Db = Kysely<RegisterSchema>;

/** Takes a joint's standing one event further. A joint nobody has assessed has no row, and an event may leave it so. */
export async function advanceStanding(db: Db, jointId: string, event: LifeEvent | null): Promise<void> {
  if (event === null) return;
  const before = await standingOf(db, jointId);
  const next = standingNext(before, event);
  if (next.state === 'unassessed' && next.deviation === null) return;
  const row = standingColumns(next);
  await db
    .insertInto('joint_standing')
    .values({ joint_id: jointId, ...row })
    .onConflict((conflict) => conflict.column('joint_id').doUpdateSet(row))
    .execute();
  await keepDeviation(db, jointId, { before, next, event });
}

function standingColumns(standing: JointStanding) {
  const { state, heldFrom, class: given, since, pass, isolationRef, permitRef, deviation } = standing;
  return {
    state,
    containment: containmentOf(state, heldFrom),
    class_name: given?.name ?? null,
    class_level: given?.level ?? null,
    class_rule_id: given?.ruleId ?? null,
    since,
    since_utc: since === null ? null : toUtc(since),
    pass: pass?.number ?? null,
    of_passes: pass?.of ?? null,
    last_bolt: pass?.lastBolt ?? null,
    isolation_ref: isolationRef,
    permit_ref: permitRef,
    deviation_id: deviation?.id ?? null,
    standing: JSON.stringify(standing),
  };
}

interface Advance {
  readonly before: JointStanding;
  readonly next: JointStanding;
  readonly event: LifeEvent;
}

async function keepDeviation(db: Db, jointId: string, { before, next, event }: Advance): Promise<void> {
  const open = next.deviation;
  if (open !== null) {
    const row = {
      state: next.state,
      if_accepted: open.ifAccepted.state,
      works: JSON.stringify(open.works),
    };
    await db
      .insertInto('deviation')
      .values({
        id: open.id,
        joint_id: jointId,
        opened_at: open.openedAt,
        opened_at_utc: toUtc(open.openedAt),
        ...row,
      })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    return;
  }
  if (before.deviation === null || event.kind !== 'decision') return;
  await db
    .updateTable('deviation')
    .set({
      decision_event_id: event.id,
      decision: event.decision,
      reason: event.reason,
      person_id: event.by,
      decided_at: event.happenedAt,
    })
    .where('id', '=', before.deviation.id)
    .execute();
}

/** The number a tightening has in its class, so that the next one gets the next. */
export async function countOfClass(db: Db, eventId: string, life: TighteningLife | undefined): Promise<void> {
  if (life === undefined || life.classKey === null || life.ordinal === null) return;
  await insertRows(db, 'class_tightening', [
    { event_id: eventId, class_key: life.classKey, ordinal: life.ordinal },
  ]);
}

export const projectSteps: Projector<'joint stepped'> = async (db, events) => {
  for (const event of events) {
    const { id, happenedAt, data: stepped } = event;
    const { data } = stepped;
    await insertRows(db, 'event_joint', [{ event_id: id, joint_id: data.jointId }]);
    await insertRows(
      db,
      'event_person',
      peopleOfStep(data).map(({ personId, role }, position) => ({
        event_id: id,
        person_id: personId,
        role,
        position,
      })),
    );
    await insertRows(
      db,
      'event_attachment',
      [...new Set(data.evidence.pictures)].map((hash) => ({ event_id: id, attachment_hash: hash })),
    );
    await advanceStanding(db, data.jointId, lifeOfStep(id, happenedAt, stepped));
    await keepLeaks(db, event);
  }
};

function peopleOfStep(data: StepData) {
  const others = new Set(data.personIds);
  others.delete(data.by);
  return [
    { personId: data.by, role: 'took the step' as const },
    ...[...others].map((personId) => ({ personId, role: 'did the work' as const })),
    ...(data.step === 'witness' && data.evidence.witnessId !== null
      ? [{ personId: data.evidence.witnessId, role: 'witnessed' as const }]
      : []),
    ...(data.step === 'release'
      ? data.evidence.identityChecks.map(({ personId }) => ({
          personId,
          role: 'checked which joint it is' as const,
        }))
      : []),
  ];
}

export const projectDecided: Projector<'deviation decided'> = async (db, events) => {
  for (const { id, happenedAt, data: decided } of events) {
    const { jointId, personId } = decided.data;
    await insertRows(db, 'event_joint', [{ event_id: id, joint_id: jointId }]);
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: personId, role: 'decided', position: 0 },
    ]);
    await advanceStanding(db, jointId, lifeOfDecision(id, happenedAt, decided));
  }
};

export const projectClassRules: Projector<'class rule saved'> = async (db, events) => {
  for (const { data } of events) {
    const { name, level, retired } = data.data;
    const row = {
      version: data.version,
      name,
      name_key: nameKey(name),
      level,
      retired: retired ? 1 : 0,
      data: JSON.stringify(data.data),
    };
    await db
      .insertInto('class_rule')
      .values({ id: data.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};
