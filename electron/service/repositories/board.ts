import type { Board, BoardJob } from '../../../core/contract/board.ts';
import type { JobData } from '../../../core/contract/campaign.ts';
import type { ClassRuleData, JointState } from '../../../core/contract/life.ts';
import { duesOfJoint } from '../../../core/joint/life/dues.ts';
import type { JointStanding } from '../../../core/joint/life/standing.ts';
import {
  boardFinding,
  boardGroups,
  isClosed,
  jobStageOf,
  type WorkSince,
} from '../../../core/planning/board.ts';
import type { ReadContext } from '../context.ts';
import { nameKey } from '../fold.ts';
import { ruleOf } from '../life/standing.ts';
import { atSite } from '../time.ts';
import type { Campaign } from './campaign.ts';

type Db = ReadContext['db'];

interface Stored {
  readonly id: string;
  readonly data: JobData;
  readonly tag: string;
  readonly location: string;
  readonly state: JointState | null;
  readonly criticality: BoardJob['criticality'];
  readonly standing: JointStanding | null;
}

/** Every job of a campaign that is not dropped, with what stands in its way, and its systems and test packs. */
export async function boardOf(context: ReadContext, campaign: Campaign): Promise<Board> {
  const { db, clock, site } = context;
  const now = clock().toISOString();
  const stored = await storedJobs(db, campaign.id);
  const work = await workSince(db, campaign);
  const issued = await issuedFor(db, campaign);
  const rules = await rulesOf(db, stored);
  const seen = stored.map((job) => {
    const state = job.state ?? 'unassessed';
    const stage = jobStageOf(state, work.get(job.data.jointId) ?? NOTHING);
    return { job, state, stage, closed: isClosed(job.data.scope, stage) };
  });
  const closedNumbers = new Set(
    seen.filter(({ closed }) => closed).map(({ job }) => nameKey(job.data.number)),
  );
  const jobs = seen.map(({ job, state, stage, closed }): BoardJob => {
    const { data } = job;
    return {
      jobId: job.id,
      number: data.number,
      jointId: data.jointId,
      tag: job.tag,
      location: job.location,
      scope: data.scope,
      temporary: data.temporary,
      system: data.system,
      testPack: data.testPack,
      criticality: job.criticality,
      state,
      stage,
      closed,
      blockers: [
        ...unsafeOf(job),
        ...(closed ? [] : blocksOf(data, closedNumbers, now)),
        ...(closed ? [] : notKnownOf(job, state, issued)),
        ...lateOf(job, rules.get(job.id) ?? null, closed, campaign, now, site.timeZone),
      ],
      latest: data.latest,
    };
  });
  const systems = boardGroups(jobs, ({ system }) => system, []);
  const testPacks = boardGroups(jobs, ({ testPack }) => testPack, campaign.data.testPacks);
  return {
    finding: boardFinding({ jobs, testPacks }),
    at: atSite(new Date(now), site.timeZone),
    jobs,
    systems,
    testPacks,
  };
}

const NOTHING: WorkSince = { brokenAt: null, tightenedAt: null, half: false };

async function storedJobs(db: Db, campaignId: string): Promise<Stored[]> {
  const rows = await db
    .selectFrom('job')
    .innerJoin('joint', 'joint.id', 'job.joint_id')
    .leftJoin('joint_standing', 'joint_standing.joint_id', 'joint.id')
    .select([
      'job.id',
      'job.data',
      'joint.tag',
      'joint.location',
      'joint_standing.state',
      'joint_standing.class_level as criticality',
      'joint_standing.standing',
    ])
    .where('job.campaign_id', '=', campaignId)
    .where('job.dropped', '=', 0)
    .orderBy('job.number_sort')
    .orderBy('job.id')
    .execute();
  return rows.map(({ data, standing, ...row }) => ({
    ...row,
    data: JSON.parse(data) as JobData,
    standing: standing === null ? null : (JSON.parse(standing) as JointStanding),
  }));
}

/** What was recorded of the campaign's joints since it began. */
async function workSince(db: Db, campaign: Campaign): Promise<Map<string, WorkSince>> {
  const since = new Date(campaign.data.startsAt).toISOString();
  const joints = db.selectFrom('job').select('job.joint_id').where('job.campaign_id', '=', campaign.id);
  const broken = await db
    .selectFrom('breakout')
    .select(({ fn }) => ['joint_id as jointId', fn.max('happened_at_utc').as('at')])
    .where('joint_id', 'in', joints)
    .where('happened_at_utc', '>=', since)
    .groupBy('joint_id')
    .execute();
  const tightened = await db
    .selectFrom('tightening')
    .select(({ fn }) => ['joint_id as jointId', fn.max('happened_at_utc').as('at')])
    .where('joint_id', 'in', joints)
    .where('happened_at_utc', '>=', since)
    .where('final_pass_no_turn', '=', 1)
    .groupBy('joint_id')
    .execute();
  const halves = await db
    .selectFrom('pass_record')
    .leftJoin('tightening_pass', 'tightening_pass.pass_id', 'pass_record.id')
    .select('pass_record.joint_id as jointId')
    .where('pass_record.joint_id', 'in', joints)
    .where('pass_record.ended_at_utc', '>=', since)
    .where('tightening_pass.pass_id', 'is', null)
    .groupBy('pass_record.joint_id')
    .execute();
  const brokenAt = new Map(broken.map(({ jointId, at }) => [jointId, at]));
  const tightenedAt = new Map(tightened.map(({ jointId, at }) => [jointId, at]));
  const half = new Set(halves.map(({ jointId }) => jointId));
  return new Map(
    [...new Set([...brokenAt.keys(), ...tightenedAt.keys(), ...half])].map((jointId) => [
      jointId,
      {
        brokenAt: brokenAt.get(jointId) ?? null,
        tightenedAt: tightenedAt.get(jointId) ?? null,
        half: half.has(jointId),
      },
    ]),
  );
}

/** Joints with a setting issued for days of the campaign, by joint and kind of work. */
async function issuedFor(db: Db, { id, data }: Campaign): Promise<ReadonlySet<string>> {
  const joints = db.selectFrom('job').select('job.joint_id').where('job.campaign_id', '=', id);
  const rows = await db
    .selectFrom('setting')
    .select(['joint_id as jointId', 'kind'])
    .where('joint_id', 'in', joints)
    .where('ends_on', '>=', data.startsAt.slice(0, 10))
    .where('starts_on', '<=', data.endsAt.slice(0, 10))
    .execute();
  return new Set(rows.map(({ jointId, kind }) => `${jointId} ${kind}`));
}

async function rulesOf(db: Db, jobs: readonly Stored[]): Promise<Map<string, ClassRuleData | null>> {
  const known = new Map<string, ClassRuleData | null>();
  const rules = new Map<string, ClassRuleData | null>();
  for (const { id, standing } of jobs) {
    const given = standing?.class ?? null;
    const key = given === null ? '' : (given.ruleId ?? given.level);
    if (!known.has(key)) known.set(key, await ruleOf(db, given));
    rules.set(id, known.get(key) ?? null);
  }
  return rules;
}

type Blockers = BoardJob['blockers'];

function unsafeOf({ standing }: Stored): Blockers {
  if (standing === null) return [];
  const { deviation, state, heldBecause } = standing;
  const unsafe = (words: string) => ({ kind: 'unsafe' as const, words });
  return [
    ...(deviation === null ? [] : [unsafe('work out of order, not decided on')]),
    ...(state === 'held' ? [unsafe(`held: ${heldBecause ?? 'no reason told'}`)] : []),
    ...(state === 'test failed' ? [unsafe('its leak test failed')] : []),
    ...(state === 'leak watch' ? [unsafe('it leaks')] : []),
  ];
}

function blocksOf({ after, earliest }: JobData, closed: ReadonlySet<string>, now: string): Blockers {
  const waits = after.filter((number) => !closed.has(nameKey(number)));
  const blocks = (words: string) => ({ kind: 'blocks' as const, words });
  return [
    ...(waits.length === 0 ? [] : [blocks(`waits for ${waits.join(', ')}`)]),
    ...(earliest !== null && Date.parse(earliest) > Date.parse(now)
      ? [blocks(`not before ${earliest}`)]
      : []),
  ];
}

function notKnownOf({ data }: Stored, state: JointState, issued: ReadonlySet<string>): Blockers {
  const lacks = (words: string) => ({ kind: 'not known' as const, words });
  const kinds = data.scope === 'break' ? ['breakout'] : ['tightening'];
  return [
    ...(data.isolationRef === '' ? [lacks('isolation not named')] : []),
    ...(data.permitRef === '' ? [lacks('permit not named')] : []),
    ...(state === 'unassessed' ? [lacks('class of the joint not known')] : []),
    ...kinds
      .filter((kind) => !issued.has(`${data.jointId} ${kind}`))
      .map((kind) => lacks(`no setting issued for ${kind === 'tightening' ? 'tightening' : 'breaking out'}`)),
  ];
}

function lateOf(
  { data, standing }: Stored,
  rule: ClassRuleData | null,
  closed: boolean,
  campaign: Campaign,
  now: string,
  timeZone: string,
): Blockers {
  const latest = data.latest ?? campaign.data.endsAt;
  const shown = (moment: string) => atSite(new Date(moment), timeZone).slice(0, 16).replace('T', ' ');
  const late = (words: string) => ({ kind: 'late' as const, words });
  const dues = standing === null ? [] : duesOfJoint(standing, rule, now);
  return [
    ...(!closed && Date.parse(latest) < Date.parse(now)
      ? [late(`was to be finished by ${shown(latest)}`)]
      : []),
    ...dues
      .filter(({ dueAt }) => dueAt !== null && Date.parse(dueAt) < Date.parse(now))
      .map(({ text }) => late(text)),
  ];
}
