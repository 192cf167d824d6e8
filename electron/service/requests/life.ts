import { decisionReasons } from '../../../core/joint/life/deviation.ts';
import { append } from '../chain/append.ts';
import type { ReadContext } from '../context.ts';
import { notFound, RequestFailure } from '../failure.ts';
import { standingOf } from '../life/standing.ts';
import { takeStep } from '../life/take-step.ts';
import { deviationPage, standingView } from '../life/view.ts';
import { saved } from '../operations/edit.ts';
import { checkSeen } from '../operations/seen.ts';
import { checkNotLater, checkPerson } from '../operations/who-and-when.ts';
import { findJoint } from '../repositories/joint.ts';
import type { Read, Write } from './handler.ts';

async function jointNamed({ db }: Pick<ReadContext, 'db'>, field: string, id: string) {
  const joint = await findJoint(db, id);
  if (joint === null) throw notFound('joint', field, id);
  return joint;
}

export const jointStandingOf: Read<'joint.standing'> = async (context, { id }) =>
  standingView(context, await jointNamed(context, 'id', id));

export const stepJoint: Write<'joint.step'> = async (context, { seen, data }) => {
  const joint = await jointNamed(context, 'data.jointId', data.jointId);
  await checkSeen(context, joint.id, seen);
  const { id, outOfOrder } = await takeStep(context, joint, data);
  const { state } = await standingOf(context.db, joint.id);
  return { ...saved(id, null), state, outOfOrder: [...outOfOrder] };
};

/** How many joints of each plant unit stand open, for whoever watches what must not see pressure. */
export const countContainment: Read<'joint.containment'> = async ({ db }) => {
  const rows = await db
    .selectFrom('plant_unit')
    .leftJoin('joint', 'joint.unit_id', 'plant_unit.id')
    .leftJoin('joint_standing', 'joint_standing.joint_id', 'joint.id')
    .select(({ fn, eb }) => {
      const counted = (value: 'open' | 'closed') =>
        fn.count<number>(eb.case().when('joint_standing.containment', '=', value).then(1).else(null).end());
      return [
        'plant_unit.id as unitId',
        'plant_unit.name as unitName',
        counted('open').as('open'),
        counted('closed').as('closed'),
        fn.count<number>('joint.id').as('joints'),
        fn
          .count<number>(eb.case().when('joint_standing.state', '=', 'held').then(1).else(null).end())
          .as('held'),
        fn.count<number>('joint_standing.deviation_id').as('deviations'),
      ];
    })
    .groupBy('plant_unit.id')
    .orderBy('plant_unit.name_key')
    .execute();
  return {
    rows: rows.map(({ joints, ...row }) => ({ ...row, notFollowed: joints - row.open - row.closed })),
    total: rows.length,
  };
};

export const listDeviations: Read<'deviation.list'> = ({ db }, input) => deviationPage(db, input);

/** Decides what becomes of work out of order; the joint moves on from there, or stays, as the decision says. */
export const decideDeviation: Write<'deviation.decide'> = async (context, { seen, data }) => {
  const joint = await jointNamed(context, 'data.jointId', data.jointId);
  checkNotLater(context, data.happenedAt);
  await checkPerson(context, 'data.personId', data.personId);
  await checkSeen(context, joint.id, seen);
  const [reason] = decisionReasons(await standingOf(context.db, joint.id), data);
  if (reason !== undefined) {
    throw new RequestFailure('refused', `Not decided: ${reason}. Nothing was written`, [
      { field: 'data.deviationId', value: data.deviationId, allowed: reason },
    ]);
  }
  const id = context.newId();
  await append(context, [{ kind: 'deviation decided', id, happenedAt: data.happenedAt, data: { data } }]);
  return saved(id, null);
};
