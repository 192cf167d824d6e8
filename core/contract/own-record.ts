import * as z from 'zod';
import { instant } from './values.ts';

/** Forecasts made from earlier openings alone, held against what then happened. */
const coverage = z.strictObject({
  /** Openings that were forecast; the first ones have nothing before them. */
  openings: z.int(),
  inside: z.int(),
  below: z.int(),
  above: z.int(),
  /** Part that lay inside the 90 % interval of the worst bolt; null while too few to say. */
  share: z.number().min(0).max(1).nullable(),
  /** Middle width of that interval: upper end over lower end. */
  width: z.number().nullable(),
  finding: z.string(),
});
export type OwnCoverage = z.infer<typeof coverage>;

const serviceTrend = z.strictObject({
  service: z.string(),
  openings: z.int(),
  joints: z.int(),
  state: z.enum(['rising', 'falling', 'steady', 'too few to say']),
  /** First opening that belongs to the move, and the one that told of it. */
  since: instant.nullable(),
  seenAt: instant.nullable(),
  /** Middle of the middles, as a ratio to the installed torque, before the move and since; all of them without one. */
  before: z.number().nullable(),
  after: z.number().nullable(),
  words: z.string(),
});
export type ServiceTrend = z.infer<typeof serviceTrend>;

export const ownRecord = z.strictObject({ coverage, trends: z.array(serviceTrend) });
