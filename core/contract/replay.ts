import * as z from 'zod';
import { date, entered, id, instant, optionalText, text } from './values.ts';

const stress = entered('stress', { min: 0, max: 2e9 }).nullable().default(null);

/** What is taken to have been otherwise. */
export const assumption = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('nut factor'), nutFactor: entered('ratio', { min: 0.03, max: 1 }) }),
  /** Designation of the thread that was really there, as the tables have it. */
  z.strictObject({ kind: z.literal('stud size'), thread: text(40) }),
  /** Gasket stresses the joint should have been held between; one left out stays as the joint has it. */
  z.strictObject({ kind: z.literal('gasket limit'), seating: stress, most: stress }),
]);
export type Assumption = z.output<typeof assumption>;

/** Which tightenings are looked at again; what is left out takes all. */
export const replayScope = z.strictObject({
  unitId: id.nullable().default(null),
  jointId: id.nullable().default(null),
  /** Number of an issued setting: a sheet with a wrong value reaches what was done by it. */
  setting: optionalText(40).default(''),
  lubricant: optionalText(120).default(''),
  batch: optionalText(80).default(''),
  from: date.nullable().default(null),
  to: date.nullable().default(null),
});

export const replayInput = z.strictObject({ assumption, scope: replayScope });

const standing = z.enum(['kept', 'not sure', 'broken', 'not known']);
export type ReplayStanding = z.infer<typeof standing>;

/** One tightening as recorded, and as it would have been. Loads N per bolt. */
export const replayRow = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  torque: z.number().nullable(),
  loadThen: z.number().nullable(),
  loadOtherwise: z.number().nullable(),
  /** Load otherwise over the load then, less one. */
  change: z.number().nullable(),
  standingThen: standing,
  standing,
  /** It kept its limits, or might have, and would not. */
  leaves: z.boolean(),
  /** Nearest limit in words; what is missing where the standing is not known. */
  words: z.string(),
  /** Nothing was loosened or tightened since: the load is still in the joint. */
  standsNow: z.boolean(),
});
export type ReplayRow = z.infer<typeof replayRow>;

export const replayView = z.strictObject({
  finding: z.string(),
  /** What this is and is not. */
  caveat: z.string(),
  /** Worst first. */
  rows: z.array(replayRow),
  shown: z.int(),
  total: z.int(),
  counts: z.strictObject({
    leaves: z.int(),
    leavesNow: z.int(),
    kept: z.int(),
    notSure: z.int(),
    broken: z.int(),
    notKnown: z.int(),
  }),
});
export type ReplayView = z.infer<typeof replayView>;
