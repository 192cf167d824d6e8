import { completeness } from '../../../core/record/completeness.ts';
import { notFound } from '../failure.ts';
import { ruleOf, standingOf } from '../life/standing.ts';
import { assemblyRecord } from '../record/assembly.ts';
import { findJoint } from '../repositories/joint.ts';
import type { Read } from './handler.ts';

export const recordCompleteness: Read<'record.completeness'> = async (context, { jointId, eventId }) => {
  const joint = await findJoint(context.db, jointId);
  if (joint === null) throw notFound('joint', 'jointId', jointId);
  const { class: given } = await standingOf(context.db, jointId);
  const rule = await ruleOf(context.db, given);
  return completeness(await assemblyRecord(context, joint, eventId), rule?.fields ?? null);
};
