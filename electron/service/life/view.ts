import type { Kysely } from 'kysely';
import type { DeviationRow, JointStandingView } from '../../../core/contract/life.ts';
import { stepsFrom } from '../../../core/joint/life/allowed.ts';
import { duesOfJoint } from '../../../core/joint/life/dues.ts';
import type { DeviatingWork, OpenDeviation } from '../../../core/joint/life/standing.ts';
import { containmentOf } from '../../../core/joint/life/states.ts';
import type { ReadContext } from '../context.ts';
import { newestEvent } from '../operations/seen.ts';
import type { RegisterSchema } from '../register/schema.ts';
import type { JointOnRegister } from '../repositories/joint.ts';
import { stepFacts } from './facts.ts';
import { standingOf } from './standing.ts';

/** A joint's state with what stands open on it and the steps that lead on. */
export async function standingView(
  { db, site, clock }: ReadContext,
  joint: JointOnRegister,
): Promise<JointStandingView> {
  const standing = await standingOf(db, joint.id);
  // Roles are listed with each step; who is looking does not change what is open on the joint.
  const facts = await stepFacts({ db, site, actor: null }, joint, standing, null);
  const now = clock().toISOString();
  const { state, since, heldFrom, heldBecause, class: given, deviation } = standing;
  return {
    jointId: joint.id,
    tag: joint.data.tag,
    seen: await newestEvent(db, joint.id),
    state,
    since,
    containment: containmentOf(state, heldFrom),
    class: given,
    rule: facts.rule,
    heldFrom,
    heldBecause,
    isolationRef: standing.isolationRef,
    permitRef: standing.permitRef,
    permitUntil: standing.permitUntil,
    lastBreakAt: standing.lastBreakAt,
    pass: standing.pass,
    dues: duesOfJoint(standing, facts.rule, now),
    deviation: deviation === null ? null : { ...openDeviation(deviation), state },
    steps: stepsFrom(standing, facts, now),
  };
}

const openDeviation = ({ id, openedAt, works, ifAccepted }: OpenDeviation) => ({
  id,
  openedAt,
  ifAccepted: ifAccepted.state,
  works: works.map(workView),
});

const workView = ({ eventId, what, happenedAt, reasons }: DeviatingWork) => ({
  eventId,
  what,
  happenedAt,
  reasons: [...reasons],
});

interface DeviationPage {
  readonly state: 'open' | 'decided' | null;
  readonly jointId: string | null;
  readonly page: number;
  readonly pageSize: number;
}

/** Deviations, open ones first, each from the oldest on. */
export async function deviationPage(
  db: Kysely<RegisterSchema>,
  { state, jointId, page, pageSize }: DeviationPage,
): Promise<{ rows: DeviationRow[]; total: number }> {
  let matching = db.selectFrom('deviation');
  if (state !== null) matching = matching.where('decision', state === 'open' ? 'is' : 'is not', null);
  if (jointId !== null) matching = matching.where('deviation.joint_id', '=', jointId);
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const found = await matching
    .innerJoin('joint', 'joint.id', 'deviation.joint_id')
    .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
    .leftJoin('person', 'person.id', 'deviation.person_id')
    .select([
      'deviation.id',
      'deviation.joint_id as jointId',
      'joint.tag',
      'plant_unit.name as unitName',
      'deviation.opened_at as openedAt',
      'deviation.state',
      'deviation.if_accepted as ifAccepted',
      'deviation.works',
      'deviation.decision',
      'deviation.reason',
      'person.name as person',
      'deviation.decided_at as decidedAt',
    ])
    .orderBy('deviation.decision', (item) => item.asc().nullsFirst())
    .orderBy('deviation.opened_at_utc')
    .orderBy('deviation.id')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const rows: DeviationRow[] = [];
  for (const { works, decision, reason, person, decidedAt, ...row } of found) {
    rows.push({
      ...row,
      works: (JSON.parse(works) as DeviatingWork[]).map(workView),
      seen: await newestEvent(db, row.jointId),
      decided:
        decision === null || reason === null || person === null || decidedAt === null
          ? null
          : { decision, reason, person, happenedAt: decidedAt },
    });
  }
  return { rows, total };
}
