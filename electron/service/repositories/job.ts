import { type Kysely, sql } from 'kysely';
import type { JobChange, JobData, JobRow } from '../../../core/contract/campaign.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { jobChanges } from '../../../core/planning/job-words.ts';
import { likePatterns, nameKey } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { atSite, toUtc } from '../time.ts';

type Db = Kysely<RegisterSchema>;

export interface Job {
  readonly id: string;
  readonly version: number;
  readonly data: JobData;
}

export async function findJob(db: Db, id: string): Promise<Job | null> {
  const row = await db
    .selectFrom('job')
    .select(['id', 'version', 'data'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? { ...row, data: JSON.parse(row.data) as JobData } : null;
}

/** All jobs of a campaign by number, the dropped ones among them. */
export async function jobsOf(db: Db, campaignId: string): Promise<Job[]> {
  const rows = await db
    .selectFrom('job')
    .select(['id', 'version', 'data'])
    .where('campaign_id', '=', campaignId)
    .orderBy('number_sort')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({ ...row, data: JSON.parse(row.data) as JobData }));
}

function jobColumns(db: Db) {
  return db
    .selectFrom('job')
    .innerJoin('joint', 'joint.id', 'job.joint_id')
    .innerJoin('plant_unit', 'plant_unit.id', 'joint.unit_id')
    .leftJoin('joint_standing', 'joint_standing.joint_id', 'joint.id');
}

const SHOWN = [
  'job.id',
  'job.version',
  'job.data',
  'joint.tag',
  'plant_unit.name as unit',
  'joint.location',
  'joint.service',
  'joint_standing.state',
  'joint_standing.class_level as criticality',
] as const;

type Stored = Omit<JobRow, 'data' | 'state'> & {
  readonly data: string;
  readonly state: JobRow['state'] | null;
};

const shown = ({ data, state, ...row }: Stored): JobRow => ({
  ...row,
  data: JSON.parse(data) as JobData,
  state: state ?? 'unassessed',
});

export async function jobRow(db: Db, id: string): Promise<JobRow | null> {
  const row = await jobColumns(db).select(SHOWN).where('job.id', '=', id).executeTakeFirst();
  return row ? shown(row) : null;
}

/** Jobs by number, a page of them. */
export async function jobPage(
  db: Db,
  input: ParsedInput<'job.list'>,
): Promise<{ rows: JobRow[]; total: number }> {
  let matching = jobColumns(db).where('job.campaign_id', '=', input.campaignId);
  if (!input.dropped) matching = matching.where('job.dropped', '=', 0);
  if (input.scope !== null) matching = matching.where('job.scope', '=', input.scope);
  if (input.system !== null) matching = matching.where('job.system_key', '=', nameKey(input.system));
  if (input.testPack !== null) matching = matching.where('job.test_pack_key', '=', nameKey(input.testPack));
  for (const pattern of likePatterns(input.text)) {
    matching = matching.where(
      sql<boolean>`(job.search like ${pattern} escape '\\' or joint.search like ${pattern} escape '\\')`,
    );
  }
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const rows = await matching
    .select(SHOWN)
    .orderBy('job.number_sort')
    .orderBy('job.id')
    .limit(input.pageSize)
    .offset((input.page - 1) * input.pageSize)
    .execute();
  return { rows: rows.map(shown), total };
}

/** What changed in a campaign's jobs, the newest first. */
export async function changePage(
  db: Db,
  { campaignId, jobId, since, page, pageSize }: ParsedInput<'job.changes'>,
  timeZone: string,
): Promise<{ rows: JobChange[]; total: number }> {
  let matching = db.selectFrom('job_version').where('job_version.campaign_id', '=', campaignId);
  if (jobId !== null) matching = matching.where('job_version.job_id', '=', jobId);
  if (since !== null) matching = matching.where('job_version.happened_at_utc', '>=', toUtc(since));
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const rows = await matching
    .innerJoin('job', 'job.id', 'job_version.job_id')
    .innerJoin('joint', 'joint.id', 'job.joint_id')
    .leftJoin('person', 'person.id', 'job_version.person_id')
    .leftJoin('job_version as before', (join) =>
      join
        .onRef('before.job_id', '=', 'job_version.job_id')
        .on(({ eb, ref }) => eb(ref('before.version'), '=', eb(ref('job_version.version'), '-', 1))),
    )
    .select([
      'job_version.event_id as eventId',
      'job_version.job_id as jobId',
      'job.number',
      'joint.tag',
      'job_version.version',
      'job_version.happened_at as at',
      'person.name as by',
      'job_version.reason',
      'job_version.data',
      'before.data as before',
    ])
    .orderBy('job_version.happened_at_utc', 'desc')
    .orderBy('job_version.event_id', 'desc')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  const say = (moment: string) => atSite(new Date(moment), timeZone).slice(0, 16).replace('T', ' ');
  return {
    rows: rows.map(({ data, before, by, ...row }) => ({
      ...row,
      by: by ?? 'not recorded',
      changes: jobChanges(
        before === null ? null : (JSON.parse(before) as JobData),
        JSON.parse(data) as JobData,
        say,
      ),
    })),
    total,
  };
}
