import * as z from 'zod';
import { entered, id, text } from './values.ts';

/** One place at which a recomputed card is not what was frozen. */
export const cardDifference = z.strictObject({
  /** Where on the card, in words a reader can follow: "passes, 2, torque". */
  place: z.string(),
  frozen: z.string(),
  now: z.string(),
});
export type CardDifference = z.infer<typeof cardDifference>;

export const recomputation = z.strictObject({
  coreThen: z.string(),
  coreNow: z.string(),
  equal: z.boolean(),
  /** First differences; `count` counts all. */
  differences: z.array(cardDifference),
  count: z.int(),
  finding: z.string(),
});
export type Recomputation = z.infer<typeof recomputation>;

/** What a job sheet says about a joint; null where it says nothing. */
export const sheetInput = z.strictObject({
  jointId: id,
  boltCount: z.int('a whole number').min(1, 'allowed 1 to 400').max(400, 'allowed 1 to 400').nullable(),
  thread: text(30).nullable(),
  grade: text(60).nullable(),
  gasket: text(120).nullable(),
  torque: entered('torque', { min: 0.1, max: 2e5 }).nullable(),
  /** Relative difference of torques that counts as none. */
  torqueTolerance: entered('ratio', { min: 0, max: 1 }),
});

const sheetField = z.enum(['boltCount', 'thread', 'grade', 'gasket', 'torque']);
const against = z.enum(['register', 'standard', 'sister joint']);

export const sheetComparison = z.strictObject({
  differences: z.array(
    z.strictObject({
      field: sheetField,
      against,
      name: z.string(),
      sheet: z.string(),
      other: z.string(),
      text: z.string(),
    }),
  ),
  notCompared: z.array(z.strictObject({ field: sheetField, against, name: z.string(), reason: z.string() })),
  agreed: z.int(),
  /** What it was held against; joints of the same flange in the same plant unit are sisters. */
  references: z.array(z.strictObject({ against, name: z.string() })),
});
