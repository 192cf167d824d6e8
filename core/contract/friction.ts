import * as z from 'zod';
import { date, entered, id, instant, optionalText } from './values.ts';

export const frictionKey = z.enum(['lubricant', 'batch', 'size', 'grade', 'uses']);
export type FrictionKey = z.infer<typeof frictionKey>;

export const frictionInput = z.strictObject({
  /** What rows are told apart by. */
  by: z.array(frictionKey).min(1, 'at least one').max(5),
  /** Only these; null for all. */
  lubricant: optionalText(120).nullable().default(null),
  jointId: id.nullable().default(null),
  from: date.nullable().default(null),
  /** Nut factor to hold the measured one against; null takes the one each joint's data state. */
  assumed: entered('ratio', { min: 0.03, max: 0.8 }).nullable().default(null),
});
export type FrictionInput = z.input<typeof frictionInput>;

/** One tightening whose loads were measured; K = T/(F·D) of each bolt. */
export const frictionPoint = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  bolts: z.int(),
  mean: z.number(),
  lowest: z.number(),
  highest: z.number(),
  /** Nut factor the joint's data stated then. */
  stated: z.number().nullable(),
  method: z.string(),
});
export type FrictionPoint = z.infer<typeof frictionPoint>;

const range = z.strictObject({ low: z.number(), high: z.number() });

export const measuredFriction = z.strictObject({
  events: z.int(),
  bolts: z.int(),
  mean: z.number(),
  lowest: z.number(),
  highest: z.number(),
  /** Coefficient of variation from bolt to bolt within one tightening, and between tightenings. */
  withinEvent: z.number().nullable(),
  betweenEvents: z.number().nullable(),
  /** 95 % interval of the mean, from the means of the tightenings. */
  meanInterval: range.nullable(),
  /** Holds 95 % of bolts with 95 % confidence. */
  tolerance: range.nullable(),
  /** Relative change a year with its 95 % interval; null while too few or all of one day. */
  trend: z.strictObject({ perYear: z.number(), low: z.number(), high: z.number() }).nullable(),
  points: z.array(frictionPoint),
});
export type MeasuredFriction = z.infer<typeof measuredFriction>;

export const frictionRow = z.strictObject({
  lubricant: z.string().nullable(),
  batch: z.string().nullable(),
  size: z.string().nullable(),
  grade: z.string().nullable(),
  uses: z.int().nullable(),
  /** Nut factors the joints' data state, with how many tightenings rested on each. */
  stated: z.array(
    z.strictObject({
      nutFactor: z.number(),
      evidence: z.enum(['published', 'measured', 'assumed']),
      tightenings: z.int(),
    }),
  ),
  tightenings: z.int(),
  measured: measuredFriction.nullable(),
  /** What the loads were if the measured nut factor holds and another was set with: F_real/F_meant. */
  effect: z
    .strictObject({ assumed: z.number(), loadRatio: z.number(), range: range.nullable(), words: z.string() })
    .nullable(),
  /** What can't be said and what it would need. */
  notSaid: z.array(z.string()),
});
export type FrictionRow = z.infer<typeof frictionRow>;

export const frictionEvidence = z.strictObject({ finding: z.string(), rows: z.array(frictionRow) });
export type FrictionEvidence = z.infer<typeof frictionEvidence>;
