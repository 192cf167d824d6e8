import type { Kysely } from 'kysely';
import type { JointData } from '../../../core/contract/joint.ts';
import { basisOf } from '../../../core/setting/basis.ts';
import {
  compareSheet,
  type Reference,
  registerReference,
  standardReference,
} from '../../../core/setting/compare.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import { notFound } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { findJoint, sisterJoints } from '../repositories/joint.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import type { Read } from './handler.ts';

/** Holds a job sheet against the register, the flange standard and the joints of the same flange in the plant unit. */
export const compareJobSheet: Read<'joint.compareSheet'> = async ({ db }, input) => {
  const joint = await findJoint(db, input.jointId);
  if (joint === null) throw notFound('joint', 'jointId', input.jointId);
  const standard = standardReference(joint.data);
  const references: Reference[] = [
    await referenceOf(db, joint, 'register'),
    ...(standard === null ? [] : [standard]),
  ];
  for (const sister of await sisterJoints(db, joint.id)) {
    references.push(await referenceOf(db, sister, 'sister joint'));
  }
  const { boltCount, thread, grade, gasket, torque, torqueTolerance } = input;
  const sheet = { boltCount, thread, grade, gasket, torque: torque?.si ?? null };
  const { differences, notCompared, agreed } = compareSheet(sheet, references, torqueTolerance.si);
  return {
    differences: [...differences],
    notCompared: [...notCompared],
    agreed,
    references: references.map(({ kind, name }) => ({ against: kind, name })),
  };
};

async function referenceOf(
  db: Kysely<RegisterSchema>,
  { id, data }: { readonly id: string; readonly data: JointData },
  kind: 'register' | 'sister joint',
): Promise<Reference> {
  const site = await siteTablesFor(db, data);
  const target = basisOf({ joint: { id, version: 1, data }, site }).targetTorque;
  return registerReference(data, (await issuedTorque(db, id)) ?? target, kind);
}

/** Torque of the newest setting issued for tightening, N·m. */
async function issuedTorque(db: Kysely<RegisterSchema>, jointId: string): Promise<number | null> {
  const row = await db
    .selectFrom('setting')
    .innerJoin('event', 'event.id', 'setting.id')
    .select('event.body')
    .where('setting.joint_id', '=', jointId)
    .where('setting.kind', '=', 'tightening')
    .orderBy('event.sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (!row) return null;
  const { card } = (JSON.parse(row.body) as EventBody).data as EventDataByKind['setting issued'];
  return card.torque;
}
