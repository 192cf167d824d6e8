import { isDeepStrictEqual } from 'node:util';
import type { JobData } from '../../../core/contract/campaign.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import { type JobFault, jobFaults, orderFaults } from '../operations/job-checks.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import { findCampaign } from '../repositories/campaign.ts';
import { changePage, findJob, jobPage, jobRow, jobsOf } from '../repositories/job.ts';
import { findJoint } from '../repositories/joint.ts';
import type { Read, Write } from './handler.ts';

export const listJobs: Read<'job.list'> = ({ db }, input) => jobPage(db, input);

export const getJob: Read<'job.get'> = async ({ db }, { id }) => {
  const row = await jobRow(db, id);
  if (row === null) throw notFound('job', 'id', id);
  return row;
};

export const listJobChanges: Read<'job.changes'> = ({ db, site }, input) =>
  changePage(db, input, site.timeZone);

export const saveJob: Write<'job.save'> = async (context, { id, version, data, personId, reason }) => {
  const { db, newId } = context;
  const current = id === null ? null : await findJob(db, id);
  const next = nextVersion('job', id, version, current);
  await checkPerson(context, 'personId', personId);
  await checkJob(context, id, data);
  if (current && current.data.campaignId !== data.campaignId) {
    throw invalidField('data.campaignId', data.campaignId, 'the campaign it was entered in');
  }
  if (current && isDeepStrictEqual(current.data, data)) return saved(current.id, current.version);
  const jobId = id ?? newId();
  await append(context, [
    {
      kind: 'job saved',
      id: newId(),
      data: { id: jobId, version: next, data, importId: null, personId, reason },
    },
  ]);
  return saved(jobId, next);
};

async function checkJob({ db }: WriteContext, id: string | null, data: JobData): Promise<void> {
  const campaign = await findCampaign(db, data.campaignId);
  if (campaign === null) throw notFound('campaign', 'data.campaignId', data.campaignId);
  if (campaign.data.closed) {
    throw invalidField('data.campaignId', campaign.data.name, 'a campaign that is not closed');
  }
  const joint = await findJoint(db, data.jointId);
  if (joint === null) throw notFound('joint', 'data.jointId', data.jointId);
  const others = (await jobsOf(db, data.campaignId)).filter((job) => job.id !== id);
  if (others.some((job) => nameKey(job.data.number) === nameKey(data.number))) {
    throw duplicateOf('job', 'data.number', data.number);
  }
  const [fault] = jobFaults(data, campaign, joint.data);
  if (fault !== undefined) throw fieldFault(fault);
  const ordered = orderFaults([...others.map((job) => job.data), data]).get(nameKey(data.number));
  if (ordered !== undefined) throw fieldFault(ordered);
}

const fieldFault = ({ field, value, allowed }: JobFault) => invalidField(`data.${field}`, value, allowed);
