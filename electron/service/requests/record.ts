import { completeness } from '../../../core/record/completeness.ts';
import { notFound } from '../failure.ts';
import { assemblyRecord } from '../record/assembly.ts';
import { findJoint } from '../repositories/joint.ts';
import type { Read } from './handler.ts';

export const recordCompleteness: Read<'record.completeness'> = async (context, { jointId, eventId }) => {
  const joint = await findJoint(context.db, jointId);
  if (joint === null) throw notFound('joint', 'jointId', jointId);
  return completeness(await assemblyRecord(context, joint, eventId), null);
};
