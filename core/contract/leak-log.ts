import * as z from 'zod';
import { criticality } from './assembly.ts';
import { evidenceLevel, leakCause } from './leak.ts';
import { date, id, instant, optionalText, page, text } from './values.ts';

const phase = z.enum(['leak test', 'start-up', 'in service', 'not known']);

const causeSaid = z.strictObject({ cause: leakCause, level: evidenceLevel, why: z.string() });

export const leakRow = z.strictObject({
  /** Event that reported it: the report, or the test that failed. */
  id,
  origin: z.enum(['report', 'failed test']),
  jointId: id,
  tag: z.string(),
  unitName: z.string(),
  happenedAt: instant,
  phase,
  /** Hour on a clock's face. */
  clock: z.int().nullable(),
  seenFrom: z.string(),
  nearBolts: z.array(z.int()).nullable(),
  boltCount: z.int().nullable(),
  medium: z.string(),
  /** Measured rate with its unit as typed, else in words; null when nobody said. */
  rate: z.string().nullable(),
  /** As first reported. */
  firstCauses: z.array(causeSaid),
  /** As found later; null where nothing else was said. */
  foundCauses: z.array(causeSaid).nullable(),
  action: z.string(),
  by: z.string(),
  closed: z.strictObject({ eventId: id, happenedAt: instant, how: z.string(), done: z.string() }).nullable(),
  /** Open, or until it was closed, s. */
  openFor: z.number(),
  /** At least two leaks within the present make-up of the joint and the one before. */
  repeated: z.boolean(),
});
export type LeakRow = z.infer<typeof leakRow>;

export const leakListInput = z.strictObject({
  state: z.enum(['open', 'closed']).nullable(),
  unitId: id.nullable(),
  phase: phase.nullable(),
  cause: leakCause.nullable(),
  repeatedOnly: z.boolean(),
  /** Only leaks open, or open until closed, for longer, days. */
  longerThan: z.int().min(0, 'at least 0').max(10_000, 'at most 10000').nullable(),
  ...page,
});

export const leakList = z.strictObject({
  rows: z.array(leakRow),
  total: z.int(),
  /** Of every row that the filter lets through. */
  finding: z.string(),
  /** How often each cause stands, as it is known now, the most frequent first. */
  causes: z.array(z.strictObject({ cause: leakCause, count: z.int() })),
});

export const cyclesData = z.strictObject({
  /** Joints that went through them together. */
  jointIds: z.array(id).min(1, 'at least one joint').max(200, 'at most 200 joints'),
  from: date,
  /** Last day that is counted. */
  until: date,
  cycles: z.int('a whole number').min(0, 'at least 0').max(100_000, 'at most 100000'),
  /** What counted them: "trend of TI-310, swings above 100 K". */
  basis: text(300),
  personId: id,
  happenedAt: instant,
  remarks: optionalText(1000).default(''),
});
export type CyclesData = z.output<typeof cyclesData>;

const cycleRow = z.strictObject({
  eventId: id,
  from: date,
  until: date,
  cycles: z.int(),
  basis: z.string(),
  by: z.string(),
});

export const jointLeaks = z.strictObject({
  rows: z.array(leakRow),
  finding: z.string(),
  madeUpAt: instant.nullable(),
  /** Null where the register knows no make-up. */
  sinceMakeUp: z.strictObject({ cycles: z.int(), partly: z.int(), covered: z.number() }).nullable(),
  counts: z.array(cycleRow),
});
export type JointLeaks = z.infer<typeof jointLeaks>;

const share = z.number().min(0, 'allowed 0 to 1').max(1, 'allowed 0 to 1');
const weight = z.number().min(0, 'allowed 0 to 1000000').max(1e6, 'allowed 0 to 1000000');

export const verifyFirstInput = z.strictObject({
  unitId: id.nullable(),
  days: z.int('a whole number of days').min(1, 'allowed 1 to 3650').max(3650, 'allowed 1 to 3650'),
  weights: z.strictObject({ mild: weight, intermediate: weight, critical: weight }),
  effect: share,
  cost: weight,
  /** Thermal cycles since make-up above which a joint is in doubt; null asks for none. */
  cyclesLimit: z.int().min(1, 'at least 1').max(100_000, 'at most 100000').nullable(),
  ...page,
});

export const verifyRow = z.strictObject({
  jointId: id,
  tag: z.string(),
  unitName: z.string(),
  flange: z.string(),
  class: criticality.nullable(),
  weighedAs: criticality,
  leaks: z.int(),
  years: z.number(),
  factor: z.number(),
  /** Null while too little is on record. */
  probability: z.number().nullable(),
  worth: z.number().nullable(),
  reasons: z.array(z.string()),
});
export type VerifyRow = z.infer<typeof verifyRow>;

export const verifyList = z.strictObject({
  rows: z.array(verifyRow),
  total: z.int(),
  /** Joints whose check is worth more than it costs; null while too little is on record. */
  worthwhile: z.int().nullable(),
  leaking: z.int(),
  rates: z.array(
    z.strictObject({
      /** Null: all joints, for the classes with too few years of their own. */
      class: criticality.nullable(),
      mean: z.number(),
      /** How far single joints depart from it: coefficient of variation of their rates; null where they do not. */
      variation: z.number().nullable(),
      joints: z.int(),
      leaks: z.int(),
      years: z.number(),
    }),
  ),
  basis: z.array(z.string()),
});
