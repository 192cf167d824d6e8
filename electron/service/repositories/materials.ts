import { forecastMany } from '../../../core/breakout/forecast-many.ts';
import { openingKey, yearsBetween } from '../../../core/breakout/recorded.ts';
import type { JobData } from '../../../core/contract/campaign.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { Materials } from '../../../core/contract/materials.ts';
import {
  type JobNeeds,
  materialGaps,
  materialRows,
  materialsFinding,
} from '../../../core/planning/materials.ts';
import { describeFlange } from '../../../core/text/describe.ts';
import { showEntered, showQuantity } from '../../../core/text/number.ts';
import { allSiteTables, jointsById, type SetBasis, setBasis, traitsOf } from '../breakout/joints.ts';
import { plantKnowledge } from '../breakout/plant.ts';
import type { ReadContext } from '../context.ts';
import type { Campaign } from './campaign.ts';
import { type Job, jobsOf } from './job.ts';

/** What the jobs of a campaign need, with spare studs for those the forecasts expect seized. */
export async function materialsOf({ db }: ReadContext, campaign: Campaign): Promise<Materials> {
  const jobs = (await jobsOf(db, campaign.id)).filter(({ data }) => !data.dropped);
  const joints = await jointsById(db, [...new Set(jobs.map(({ data }) => data.jointId))]);
  const site = await allSiteTables(db);
  const { plant, installed } = await plantKnowledge(db);
  const forecast = forecastMany(plant);
  const needs = jobs.flatMap((job): JobNeeds[] => {
    const joint = joints.get(job.data.jointId);
    if (joint === undefined) return [];
    const { boltSet } = job.data;
    const set = setBasis(joint.id, joint.data, boltSet, site);
    const key = openingKey(joint.id, boltSet);
    const work = installed.get(key) ?? null;
    const years = work === null ? null : yearsBetween(work.happenedAt, campaign.data.startsAt);
    const bolts = set?.basis.joint.boltCount ?? null;
    const { seized } = forecast(key, traitsOf(joint.data, boltSet, null, years), bolts);
    return [needsOf(job, joint.tag, joint.data, set, bolts, seized?.expected ?? null)];
  });
  const rows = materialRows(needs);
  const notKnown = needs.flatMap((job) => {
    const gaps = materialGaps(job);
    const { jobId, number, tag } = job;
    return gaps.length === 0 ? [] : [{ jobId, number, tag, words: gaps.join('; ') }];
  });
  return { finding: materialsFinding(rows, needs.length, notKnown.length), rows, notKnown };
}

function needsOf(
  { id, data }: Job,
  tag: string,
  joint: JointData,
  set: SetBasis | null,
  bolts: number | null,
  seized: number | null,
): JobNeeds {
  return {
    jobId: id,
    number: data.number,
    tag,
    scope: data.scope,
    bolts,
    stud: set === null ? null : studOf(set),
    nut: set === null ? null : nutOf(set),
    gasket: gasketOf(data, joint),
    lubricant: set?.data.lubricant?.name ?? null,
    seized,
  };
}

function studOf({ data, basis }: SetBasis): string | null {
  const { thread, studLength } = basis.joint;
  const { grade } = data.bolting;
  if (thread === null || grade === null) return null;
  const length = studLength === null ? 'length not known' : `${showQuantity(studLength.value, 'mm', 4)} long`;
  return `${thread.value.designation}, ${grade}, ${length}`;
}

function nutOf({ basis }: SetBasis): string | null {
  const { thread, nut } = basis.joint;
  if (thread === null || nut === null) return null;
  return `${thread.value.designation}, ${showQuantity(nut.value.acrossFlats, 'mm', 4)} across flats`;
}

function gasketOf({ boltSet }: JobData, { gasket, flange }: JointData): string | null {
  // Further bolt sets close the same gasket, which is counted with the joint's own bolting.
  if (boltSet !== 0 || gasket === null) return null;
  const thickness = gasket.thickness === null ? 'thickness not known' : showEntered(gasket.thickness);
  return `${describeFlange(flange)}, ${gasket.type}, ${thickness}`;
}
