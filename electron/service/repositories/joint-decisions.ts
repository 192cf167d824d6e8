import type { Kysely } from 'kysely';
import type { HistoryRow } from '../../../core/contract/joint.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;
type Told = Pick<HistoryRow, 'summary' | 'flags' | 'settingId' | 'caseId' | 'signedId'>;

/** What decisions of cases said of one joint, by the event of the decision. */
export async function decisionsOnJoint(
  db: Db,
  jointId: string,
  eventIds: readonly string[],
): Promise<Map<string, Told>> {
  if (eventIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('recall_decision')
    .innerJoin('tightening', 'tightening.id', 'recall_decision.tightening_id')
    .innerJoin('recall_case', 'recall_case.id', 'recall_decision.case_id')
    .select([
      'recall_decision.event_id as eventId',
      'recall_decision.case_id as caseId',
      'recall_decision.tightening_id as tighteningId',
      'recall_decision.decision',
      'recall_decision.reason',
      'recall_case.number',
      'recall_case.subject',
      'tightening.happened_at as tightenedAt',
    ])
    .where('recall_decision.event_id', 'in', [...eventIds])
    .where('tightening.joint_id', '=', jointId)
    .orderBy('tightening.happened_at_utc')
    .execute();
  const inForce = await decisionsInForce(
    db,
    rows.map(({ tighteningId }) => tighteningId),
  );
  const byEvent = Map.groupBy(rows, ({ eventId }) => eventId);
  return new Map(
    [...byEvent].flatMap(([eventId, decided]) => {
      const [first] = decided;
      if (first === undefined) return [];
      const days = decided.map(({ tightenedAt }) => tightenedAt.slice(0, 10));
      const replaced = decided.every(
        ({ caseId, tighteningId }) => inForce.get(`${caseId} ${tighteningId}`) !== eventId,
      );
      const { number, subject, decision, reason, caseId } = first;
      const told: Told = {
        summary: `${number}, ${subject}: ${decision} (tightening of ${days.join(', ')}). ${reason}`,
        flags: replaced ? ['a later decision of the case stands instead'] : [],
        settingId: null,
        caseId,
        signedId: null,
      };
      return [[eventId, told]];
    }),
  );
}

/** The decision recorded last counts, by case and tightening. */
async function decisionsInForce(db: Db, tighteningIds: readonly string[]): Promise<Map<string, string>> {
  const rows = await db
    .selectFrom('recall_decision')
    .innerJoin('event', 'event.id', 'recall_decision.event_id')
    .select(['recall_decision.case_id as caseId', 'tightening_id as tighteningId', 'event.id'])
    .where('recall_decision.tightening_id', 'in', [...new Set(tighteningIds)])
    .orderBy('event.recorded_at')
    .orderBy('event.sequence')
    .execute();
  return new Map(rows.map(({ caseId, tighteningId, id }) => [`${caseId} ${tighteningId}`, id]));
}
