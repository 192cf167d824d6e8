import * as z from 'zod';
import { id, instant, optionalText } from './values.ts';

/** What measured nut factors are put together by. */
export const frictionGrouping = z.enum(['lubricant', 'batch', 'size', 'material', 'stud uses']);
export type FrictionGrouping = z.infer<typeof frictionGrouping>;

/** Empty text and null take all. */
export const frictionInput = z.strictObject({
  groupBy: frictionGrouping.default('lubricant'),
  lubricant: optionalText(120).default(''),
  batch: optionalText(80).default(''),
  size: optionalText(40).default(''),
  material: optionalText(60).default(''),
  studUses: z.int('a whole number').min(0, 'at least 0').max(1000).nullable().default(null),
});

/** One bolt whose load was measured beside the torque: K = T/(F·d). Torque N·m, load N. */
export const frictionReading = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  bolt: z.int(),
  torque: z.number(),
  load: z.number(),
  nutFactor: z.number(),
  /** Nut factor the joint’s data had; null where they had none. */
  assumed: z.number().nullable(),
  lubricant: z.string(),
  batch: z.string(),
  size: z.string(),
  material: z.string(),
  studUses: z.int(),
  method: z.string(),
});
export type FrictionReading = z.infer<typeof frictionReading>;

const ends = z.strictObject({ low: z.number(), high: z.number() });

export const frictionGroup = z.strictObject({
  name: z.string(),
  /** Tightenings with measured loads; their means are what the intervals rest on. */
  events: z.int(),
  joints: z.int(),
  bolts: z.int(),
  mean: z.number(),
  /** From bolt to bolt within a tightening, and from tightening to tightening; null where there are too few. */
  within: z.number().nullable(),
  between: z.number().nullable(),
  lowest: z.number(),
  highest: z.number(),
  /** 90 % intervals of the group’s mean and of one bolt of the next tightening. */
  meanInterval: ends.nullable(),
  nextBolt: ends.nullable(),
  /** Mean of what the joints’ data had for these bolts. */
  assumed: z.number().nullable(),
  /** Load that was there over the load that the assumed nut factor promised, in the middle and over the interval of the mean. */
  loadShare: z.strictObject({ middle: z.number(), low: z.number(), high: z.number() }).nullable(),
  /** Change a year, part of the mean, with its 90 % interval; null while too few to say. */
  trend: z.strictObject({ slope: z.number(), low: z.number(), high: z.number() }).nullable(),
  words: z.string(),
});
export type FrictionGroup = z.infer<typeof frictionGroup>;

export const frictionEvidence = z.strictObject({
  finding: z.string(),
  groups: z.array(frictionGroup),
  readings: z.array(frictionReading),
  shown: z.int(),
  total: z.int(),
  /** Tightenings with measured loads that give no nut factor, with the reason. */
  leftOut: z.array(z.strictObject({ eventId: id, tag: z.string(), happenedAt: instant, why: z.string() })),
});
export type FrictionEvidence = z.infer<typeof frictionEvidence>;
