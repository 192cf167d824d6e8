import * as z from 'zod';
import { criticality } from './assembly.ts';
import { jobScope } from './campaign.ts';
import { jointState } from './life.ts';
import { id, instant } from './values.ts';

/** How far the work of a job has come, as records since the campaign's start and the joint's state tell. */
export const jobStage = z.enum([
  'to do',
  'opened',
  'held',
  'closing',
  'made',
  'witnessed',
  'tested',
  'test failed',
  'back',
]);
export type JobStage = z.infer<typeof jobStage>;

/** A job on the board. */
export const boardJob = z.strictObject({
  jobId: id,
  number: z.string(),
  jointId: id,
  tag: z.string(),
  location: z.string(),
  scope: jobScope,
  temporary: z.boolean(),
  system: z.string(),
  testPack: z.string(),
  criticality: criticality.nullable(),
  state: jointState,
  stage: jobStage,
  /** What its scope asks for is done. */
  closed: z.boolean(),
  /** What stands in the way, the worst first. */
  blockers: z.array(
    z.strictObject({ kind: z.enum(['unsafe', 'blocks', 'not known', 'late']), words: z.string() }),
  ),
  latest: instant.nullable(),
});
export type BoardJob = z.infer<typeof boardJob>;

/** Jobs of one system or one test pack, counted. */
export const boardGroup = z.strictObject({
  name: z.string(),
  jobs: z.int(),
  closed: z.int(),
  held: z.int(),
  unsafe: z.int(),
  notKnown: z.int(),
  late: z.int(),
  temporary: z.int(),
  /** Whether its leak test can begin, as far as the records tell; what stands against it. */
  ready: z.enum(['yes', 'no', 'not known']),
  against: z.array(z.string()),
});
export type BoardGroup = z.infer<typeof boardGroup>;

export const board = z.strictObject({
  /** The campaign in one sentence. */
  finding: z.string(),
  at: instant,
  jobs: z.array(boardJob),
  systems: z.array(boardGroup),
  testPacks: z.array(boardGroup),
});
export type Board = z.infer<typeof board>;
