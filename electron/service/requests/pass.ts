import { notFound } from '../failure.ts';
import { saved } from '../operations/edit.ts';
import { openRun } from '../operations/open-run.ts';
import { recordPass } from '../operations/record-pass.ts';
import { checkSeen, newestEvent } from '../operations/seen.ts';
import { findJoint } from '../repositories/joint.ts';
import { issuedBody, plannedPasses } from '../repositories/pass.ts';
import type { Read, Write } from './handler.ts';

export const openPassesOf: Read<'pass.open'> = async ({ db }, { jointId, settingId }) => {
  if ((await findJoint(db, jointId)) === null) throw notFound('joint', 'jointId', jointId);
  const issued = settingId === null ? null : await issuedBody(db, settingId);
  if (settingId !== null && issued?.input.jointId !== jointId) {
    throw notFound('setting of this joint', 'settingId', settingId);
  }
  const open = await openRun(db, jointId, issued?.input.boltSet ?? null);
  const plan = issued === null ? (open?.plan ?? null) : plannedPasses(issued);
  return {
    seen: await newestEvent(db, jointId),
    plan: plan?.map((pass) => ({ ...pass, steps: pass.steps.map((step) => [...step]) })) ?? null,
    run: open?.run ?? null,
  };
};

export const recordPassOf: Write<'pass.record'> = async (context, { seen, data }) => {
  if ((await findJoint(context.db, data.jointId)) === null)
    throw notFound('joint', 'data.jointId', data.jointId);
  await checkSeen(context, data.jointId, seen);
  return saved(await recordPass(context, data), null);
};
