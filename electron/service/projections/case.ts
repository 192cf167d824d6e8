import type { CaseData } from '../../../core/contract/recall.ts';
import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';
import type { PersonRole } from '../register/schema.ts';

export const projectCases: Projector<'case opened'> = async (db, events) => {
  for (const { id, happenedAt, happenedAtUtc, data: opened } of events) {
    const { data } = opened;
    const { subject } = data;
    await insertRows(db, 'recall_case', [
      {
        id,
        number: opened.number,
        subject_kind: subject.kind,
        tool_id: subject.kind === 'tool' ? subject.toolId : null,
        batch_id: subject.kind === 'batch' ? subject.batchId : null,
        basis_kind: data.basis.kind,
        basis_event_id: basisEvent(data),
        subject: opened.subject,
        basis: opened.basis,
        happened_at: happenedAt,
        happened_at_utc: happenedAtUtc,
        person_id: data.personId,
        data: JSON.stringify(data),
      },
    ]);
    if (subject.kind === 'tool') {
      await insertRows(db, 'event_tool', [
        { event_id: id, tool_id: subject.toolId, role: 'case', position: 0 },
      ]);
    }
    await insertRows(db, 'event_person', [link(id, data.personId, 'opened the case')]);
  }
};

function basisEvent({ basis }: CaseData): string | null {
  if (basis.kind === 'statement') return null;
  return basis.kind === 'certificate' ? basis.certificateId : basis.checkId;
}

export const projectDecisions: Projector<'case decided'> = async (db, events) => {
  for (const { id, happenedAt, happenedAtUtc, data: decided } of events) {
    const { data } = decided;
    await insertRows(
      db,
      'recall_decision',
      data.eventIds.map((tighteningId) => ({
        event_id: id,
        tightening_id: tighteningId,
        case_id: data.caseId,
        decision: data.decision,
        reason: data.reason,
        happened_at: happenedAt,
        happened_at_utc: happenedAtUtc,
        person_id: data.personId,
      })),
    );
    const joints = await db
      .selectFrom('tightening')
      .select('joint_id')
      .distinct()
      .where('id', 'in', [...data.eventIds])
      .execute();
    await insertRows(
      db,
      'event_joint',
      joints.map(({ joint_id }) => ({ event_id: id, joint_id })),
    );
    await insertRows(db, 'event_person', [link(id, data.personId, 'decided')]);
  }
};

export const projectClosures: Projector<'case closed'> = async (db, events) => {
  for (const { id, happenedAt, happenedAtUtc, data: closed } of events) {
    const { data, recall } = closed;
    await insertRows(db, 'recall_closure', [
      {
        id,
        case_id: data.caseId,
        affected: recall.affected.length,
        decided: recall.affected.filter(({ decision }) => decision !== null).length,
        happened_at: happenedAt,
        happened_at_utc: happenedAtUtc,
        person_id: data.personId,
      },
    ]);
    await insertRows(db, 'event_person', [link(id, data.personId, 'closed the case')]);
  }
};

const link = (eventId: string, personId: string, role: PersonRole) => ({
  event_id: eventId,
  person_id: personId,
  role,
  position: 0,
});
