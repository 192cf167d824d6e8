import * as z from 'zod';
import { sufficiency } from './forecast.ts';
import { id, instant, optionalText, page } from './values.ts';

/** Which joints are looked at, and the drive unit that is held against them. */
export const forecastsInput = z.strictObject({
  unitId: id.nullable().default(null),
  /** Words that tag, place or service have; empty takes every joint. */
  text: optionalText(200).default(''),
  driveId: id.nullable().default(null),
});

/** A run over many joints, as it stands. Nothing of it is recorded; it ends with the program. */
export const forecastRun = z.strictObject({
  id,
  state: z.enum(['running', 'done', 'cancelled', 'failed']),
  startedAt: instant,
  seconds: z.number(),
  /** Bolt sets looked at, and in all. */
  done: z.int(),
  total: z.int(),
  drive: z.strictObject({ number: z.string(), capacity: z.number().nullable() }).nullable(),
  /** The list in one sentence. */
  finding: z.string(),
  problem: z.string().nullable(),
});
export type ForecastRun = z.infer<typeof forecastRun>;

/** The next opening of one bolt set, short. Ratios are to the installed torque; torques N·m. */
export const forecastRow = z.strictObject({
  jointId: id,
  boltSet: z.int(),
  tag: z.string(),
  /** Name of a further bolt set; null for the joint's own. */
  setName: z.string().nullable(),
  unit: z.string(),
  bolts: z.int().nullable(),
  installed: z.number().nullable(),
  /** Where the installed torque is known from; says so where it is assumed. */
  installedSource: z.string(),
  sufficiency,
  ownOpenings: z.int(),
  classJoints: z.int(),
  className: z.string(),
  /** Half of the bolts that turn. */
  median: z.number().nullable(),
  /** In 95 of 100 openings the hardest bolt takes no more. */
  worst: z.number().nullable(),
  worstTorque: z.number().nullable(),
  /** Chance that the worst bolt asks for more than the drive unit gives. */
  tooSmall: z.number().min(0).max(1).nullable(),
  seized: z.number().nullable(),
  /** What is not known and stands in the way. */
  missing: z.array(z.string()),
});
export type ForecastRow = z.infer<typeof forecastRow>;

export const forecastSort = z.enum(['tag', 'worst', 'worstTorque', 'tooSmall', 'seized']);
export type ForecastSort = z.infer<typeof forecastSort>;

export const forecastRowsInput = z.strictObject({
  id,
  text: optionalText(200).default(''),
  sort: forecastSort,
  direction: z.enum(['asc', 'desc']),
  ...page,
});
