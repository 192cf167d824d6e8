import * as z from 'zod';
import { toolSetInput } from './setting.ts';
import { date, id, instant, optionalText } from './values.ts';

/*
 * R is breakout torque over installed torque. Ratios are plain numbers, torques N·m, loads N. Where a number can't be
 * had it is null, and a sentence beside it says why.
 */

const boltSet = z.int().min(0).max(8, 'allowed 0 to 8').default(0);
const probability = z.number().min(0).max(1);

/** Temperature of the service, in the bands breakout is looked at by. */
export const temperatureBand = z.enum(['to 120 °C', '120 to 300 °C', 'above 300 °C', 'not known']);
export type TemperatureBand = z.infer<typeof temperatureBand>;

/** What openings are looked at together by; null asks for all. */
const openingClass = z.strictObject({
  kind: z.literal('class'),
  service: optionalText(120).nullable().default(null),
  band: temperatureBand.nullable().default(null),
  lubricant: optionalText(120).nullable().default(null),
  batch: optionalText(80).nullable().default(null),
  /** Tightenings of the studs the register knew when they were installed. */
  studUses: z.int('a whole number').min(0, 'at least 0').max(1000).nullable().default(null),
});

export const historyInput = z.strictObject({
  of: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('joint'), jointId: id, boltSet }),
    openingClass,
  ]),
});

export const openingReading = z.strictObject({
  bolt: z.int(),
  outcome: z.enum(['turned', 'would not turn', 'cut']),
  torque: z.number().nullable(),
  /** Of a stud that would not turn it is the least. */
  ratio: z.number().nullable(),
  /** Why it stands apart from the others; null where it does not. */
  outlier: z.string().nullable(),
});

/** What a ratio says of the load and the friction, against the clean value of this very joint. */
export const ratioStanding = z.enum(['below the clean value', 'near it', 'above it', 'not known']);
export type RatioStanding = z.infer<typeof ratioStanding>;

/** Bolt load that may have been left, from one torque; wide because one torque can't tell friction from load. */
export const residualLoad = z.strictObject({
  low: z.number(),
  high: z.number(),
  installed: z.number(),
  basis: z.string(),
});

export const opening = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  installed: z.strictObject({ eventId: id, happenedAt: instant, torque: z.number() }).nullable(),
  /** Why there is no ratio; null where there is one. */
  whyNoRatio: z.string().nullable(),
  /** From the tightening to the opening. */
  years: z.number().nullable(),
  service: z.string(),
  band: temperatureBand,
  lubricant: z.string().nullable(),
  batch: z.string().nullable(),
  studUses: z.int(),
  readings: z.array(openingReading),
  /** Of the studs that turned. */
  median: z.number().nullable(),
  lowest: z.number().nullable(),
  highest: z.number().nullable(),
  turned: z.int(),
  notTurned: z.int(),
  cleanRatio: z.number().nullable(),
  standing: ratioStanding,
  meaning: z.string(),
  residual: residualLoad.nullable(),
  /** Whether the load may have been under the least one that the joint's data ask for. */
  belowLeast: z.enum(['yes', 'possible', 'no', 'not known']),
  belowLeastBasis: z.string(),
  /** Why the whole opening stands apart from the ones like it; null where it does not. */
  outlier: z.string().nullable(),
});
export type Opening = z.infer<typeof opening>;

export const breakoutHistory = z.strictObject({
  /** The chart in one sentence. */
  finding: z.string(),
  /** In order of time. */
  openings: z.array(opening),
  shown: z.int(),
  total: z.int(),
  /** Breakout by common practice over the installed torque; no published source is known. */
  commonRatio: z.number(),
  /** Least torque a set used in these openings could give; null where none is known. */
  capacity: z.number().nullable(),
});
export type BreakoutHistory = z.infer<typeof breakoutHistory>;

export const forecastInput = z.strictObject({
  jointId: id,
  boltSet,
  /** Day of the opening; null is today at the site. */
  on: date.nullable().default(null),
  /** Set it is to be opened with. */
  tools: toolSetInput.nullable().default(null),
});

/** 5 %, 50 % and 95 % points. */
export const spread = z.strictObject({ low: z.number(), median: z.number(), high: z.number() });
export type Spread = z.infer<typeof spread>;

const spreads = z.strictObject({
  /** Any one bolt that turns. */
  oneBolt: spread,
  /** The hardest of the bolts that turn. */
  worstBolt: spread,
  /** Middle of all bolts of the joint: how well its level is known. */
  middle: spread,
});

export const sufficiency = z.enum(['enough', 'few', 'too few to say']);
export type Sufficiency = z.infer<typeof sufficiency>;

const evidence = z.strictObject({
  sufficiency,
  words: z.string(),
  ownOpenings: z.int(),
  ownReadings: z.int(),
  className: z.string(),
  classJoints: z.int(),
  classOpenings: z.int(),
  classReadings: z.int(),
  /** Independent readings that all of these are worth, since readings of one joint go together. */
  effective: z.number(),
  prior: z.string(),
});

export const forecastSet = z.strictObject({
  driveId: id,
  drive: z.string(),
  headId: id,
  head: z.string(),
  reducers: z.array(z.string()),
  capacity: z.number(),
  /** True pressure that the 95 % torque of the worst bolt needs, Pa. */
  pressure: z.number().nullable(),
  governs: z.string(),
});
export type ForecastSet = z.infer<typeof forecastSet>;

export const forecast = z.strictObject({
  jointId: id,
  tag: z.string(),
  boltSet: z.string().nullable(),
  boltCount: z.int().nullable(),
  on: date,
  finding: z.string(),
  evidence,
  ratio: spreads.nullable(),
  /** The same in N·m; null while the installed torque is not known. */
  torque: spreads.nullable(),
  installed: z
    .strictObject({ torque: z.number(), happenedAt: instant.nullable(), source: z.string() })
    .nullable(),
  /** Standard deviation of ln R from bolt to bolt, and how much bolts of one joint go together. */
  boltDeviation: z.number().nullable(),
  correlation: z.number().nullable(),
  cleanRatio: z.number().nullable(),
  commonRatio: z.number(),
  wrench: z
    .strictObject({ capacity: z.number(), governs: z.string(), tooSmall: probability.nullable() })
    .nullable(),
  smallestSet: forecastSet.nullable(),
  smallestSetWhy: z.string(),
  seized: z
    .strictObject({ expected: z.number(), low: z.number(), high: z.number(), basis: z.string() })
    .nullable(),
  /** Torque at which a stud seized in its thread yields, and the chance that the worst bolt asks for more. */
  ceiling: z
    .strictObject({ elastic: z.number(), plastic: z.number(), beyond: probability.nullable() })
    .nullable(),
  advice: z.array(z.string()),
  missing: z.array(z.string()),
  /** Chance of staying at or under each ratio, for the drawing. */
  curve: z.array(z.strictObject({ ratio: z.number(), oneBolt: probability, worstBolt: probability })),
});
export type Forecast = z.infer<typeof forecast>;
