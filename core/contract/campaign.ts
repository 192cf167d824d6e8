import * as z from 'zod';
import { criticality } from './assembly.ts';
import { jointState } from './life.ts';
import { toolSetInput } from './setting.ts';
import { date, id, instant, optionalText, page, text } from './values.ts';

const clockTime = z
  .string()
  .trim()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day as HH:MM, 00:00 to 23:59');

/** Hours of one day; one that ends before it begins, or when it begins, goes on into the next day. */
export const shift = z.strictObject({ from: clockTime, to: clockTime });

/** People who work together, with the days and hours they are there. */
export const crew = z.strictObject({
  name: text(60),
  personIds: z.array(id).max(40, 'at most 40 people').default([]),
  from: date,
  to: date,
  shifts: z.array(shift).min(1, 'at least one shift').max(4, 'at most 4 shifts a day'),
});

/** Tools that go to a joint together. A part may stand in several sets; it is in use in one at a time. */
export const campaignSet = z.strictObject({
  name: text(60),
  tools: toolSetInput,
  /** Days it is there for the campaign; null for all of them. */
  from: date.nullable().default(null),
  to: date.nullable().default(null),
});

/** A shutdown or another piece of planned work: when, by whom, with what. */
export const campaignData = z.strictObject({
  name: text(120),
  startsAt: instant,
  endsAt: instant,
  crews: z.array(crew).max(40, 'at most 40 crews').default([]),
  sets: z.array(campaignSet).max(60, 'at most 60 tool sets').default([]),
  /** In the order they are to be tested; one not named has no place in the order. */
  testPacks: z.array(text(60)).max(200, 'at most 200 test packs').default([]),
  /** Between jobs of two areas. */
  travelMinutes: z.int().min(0).max(480, 'allowed 0 to 480').default(15),
  remarks: optionalText(1000).default(''),
  /** Over: nothing of it is planned any more. */
  closed: z.boolean().default(false),
});
export type CampaignInput = z.input<typeof campaignData>;
export type CampaignData = z.output<typeof campaignData>;

export const campaignRow = z.strictObject({
  id,
  version: z.int(),
  data: campaignData,
  /** Jobs that are not dropped. */
  jobs: z.int(),
  dropped: z.int(),
});
export type CampaignRow = z.infer<typeof campaignRow>;

/** Making up and breaking are one job when the joint is closed again in the same campaign. */
export const jobScope = z.enum(['break', 'make', 'break and make']);
export type JobScope = z.infer<typeof jobScope>;

/** Half of a job: loosening, or tightening. */
export const jobPart = z.enum(['break', 'make']);

/** Work of at most three days without a pause for anything else. */
const minutes = z.int().min(5, 'allowed 5 to 4320').max(4320, 'allowed 5 to 4320');

/** What somebody has fixed; a plan leaves it where it is. */
export const jobLock = z.strictObject({
  part: jobPart,
  set: text(60),
  crew: text(60),
  startsAt: instant,
});
export type JobLock = z.output<typeof jobLock>;

/** One joint in a campaign. */
export const jobData = z.strictObject({
  campaignId: id,
  /** Unique in its campaign. */
  number: text(40),
  jointId: id,
  boltSet: z.int().min(0).max(8, 'allowed 0 to 8').default(0),
  scope: jobScope,
  /** It is closed for a time only, and opened again before start-up. */
  temporary: z.boolean().default(false),
  workOrder: optionalText(60).default(''),
  system: optionalText(60).default(''),
  testPack: optionalText(60).default(''),
  /** Null: from the campaign's start, and until its end. */
  earliest: instant.nullable().default(null),
  latest: instant.nullable().default(null),
  isolationRef: optionalText(60).default(''),
  permitRef: optionalText(60).default(''),
  /** Scaffold, crane, confined space: what has to be there. */
  access: optionalText(200).default(''),
  /** Names of crews that may do it; none for any. */
  crews: z.array(text(60)).max(40).default([]),
  /** Numbers of jobs that have to be finished before it begins. */
  after: z.array(text(40)).max(60, 'at most 60 jobs before it').default([]),
  /** Between breaking and making: cleaning, inspection, the work the joint is opened for. */
  gapMinutes: z.int().min(0).max(43_200, 'allowed 0 to 43200').default(0),
  /** Null: from the table of durations. */
  breakMinutes: minutes.nullable().default(null),
  makeMinutes: minutes.nullable().default(null),
  locked: z.array(jobLock).max(2, 'breaking and making').default([]),
  /** Taken out of the scope; it stays on the list with its reason. */
  dropped: z.boolean().default(false),
  remarks: optionalText(1000).default(''),
});
export type JobInput = z.input<typeof jobData>;
export type JobData = z.output<typeof jobData>;

/** One change of a job as told: by whom and why. */
export const jobReason = text(500);

export const jobRow = z.strictObject({
  id,
  version: z.int(),
  data: jobData,
  tag: z.string(),
  unit: z.string(),
  location: z.string(),
  service: z.string(),
  /** State of its joint, which may be unassessed. */
  state: jointState,
  criticality: criticality.nullable(),
});
export type JobRow = z.infer<typeof jobRow>;

export const jobListInput = z.strictObject({
  campaignId: id,
  text: optionalText(100).default(''),
  scope: jobScope.nullable().default(null),
  system: optionalText(60).nullable().default(null),
  testPack: optionalText(60).nullable().default(null),
  /** With those that were dropped. */
  dropped: z.boolean().default(false),
  ...page,
});

/** What one version changed, field by field; the first has no "from". */
export const jobChange = z.strictObject({
  eventId: id,
  jobId: id,
  number: z.string(),
  tag: z.string(),
  version: z.int(),
  at: z.string(),
  /** "not recorded" without a name. */
  by: z.string(),
  reason: z.string(),
  changes: z.array(z.strictObject({ field: z.string(), from: z.string(), to: z.string() })),
});
export type JobChange = z.infer<typeof jobChange>;

export const jobChangesInput = z.strictObject({
  campaignId: id,
  /** Null for all jobs of the campaign. */
  jobId: id.nullable().default(null),
  since: instant.nullable().default(null),
  ...page,
});
