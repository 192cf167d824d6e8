import * as z from 'zod';
import { originMark } from './joint.ts';
import { entered, id, text } from './values.ts';

const length = (max: number) => entered('length', { min: 1e-4, max }).nullable().default(null);

/** One flange's ring; blank is taken from the joint's data where they have it, else it is not known. */
export const scatterRing = z
  .strictObject({
    /** Radial width and thickness of the rectangular section that stands for the flange. */
    width: length(2),
    thickness: length(2),
    modulus: entered('stress', { min: 1e9, max: 1e12 }).nullable().default(null),
    /** Radius of the section's centroid. */
    radius: length(20),
  })
  .prefault({});

export const scatterInput = z.strictObject({
  jointId: id,
  boltSet: z.int().min(0).max(8, 'allowed 0 to 8').default(0),
  ring: scatterRing,
  /** The other flange where it is unlike the first. */
  otherRing: scatterRing.nullable().default(null),
  boltRadius: length(20),
  boltStiffness: entered('stiffness', { min: 1e5, max: 1e12 }).nullable().default(null),
  gasketRadius: length(20),
  gasketWidth: length(1),
  /** Stiffness of the whole gasket per length of its circumference; 1 MPa is 1 N/mm per mm. */
  gasketStiffness: entered('stress', { min: 1e6, max: 1e13 }).nullable().default(null),
  /** N per bolt; blank is the joint's target. */
  target: entered('force', { min: 100, max: 2e7 }).nullable().default(null),
  /** Largest load of one bolt at any moment; blank is the joint's bolt limit. */
  limit: entered('force', { min: 100, max: 4e7 }).nullable().default(null),
  /** Scatter of one bolt's load that is added before it is held against the limit, as a part of it. */
  scatter: entered('ratio', { min: 0, max: 1 }).nullable().default(null),
  planIds: z.array(text(60)).min(1, 'at least one plan').max(2, 'at most 2 plans side by side'),
  /** Rest is reached when no load moves by more than this part of the target in a pass. */
  tolerance: entered('ratio', { min: 0.0005, max: 0.5 }).nullable().default(null),
  /** Looks for loads to set that end even within the tolerance. */
  even: z
    .strictObject({ trips: z.int().min(1).max(20, 'allowed 1 to 20') })
    .nullable()
    .default(null),
  /** Gasket stiffness times each of these. */
  sensitivity: z
    .array(z.number().min(0.01, 'allowed 0.01 to 100').max(100, 'allowed 0.01 to 100'))
    .max(8, 'at most 8')
    .default([]),
  /** Loads that were measured while the first plan was followed; the gasket's stiffness is fitted to them. */
  measured: z
    .array(
      z.strictObject({
        /** Pass of the plan after which they were measured, from 1. */
        afterPass: z.int().min(1).max(40),
        loads: z
          .array(
            z.strictObject({
              bolt: z.int().min(1).max(400),
              load: entered('force', { min: 0, max: 2e7 }),
            }),
          )
          .min(1)
          .max(400),
      }),
    )
    .max(20)
    .default([]),
});
export type ScatterData = z.output<typeof scatterInput>;

/** A value the model was run with, in SI, and where it came from. */
export const scatterValue = z.strictObject({
  name: z.string(),
  si: z.number().nullable(),
  quantity: z.enum(['length', 'stress', 'stiffness', 'force', 'ratio', 'count']),
  origin: originMark,
  source: z.string(),
});
export type ScatterValue = z.infer<typeof scatterValue>;

const even = z.strictObject({
  mean: z.number(),
  least: z.number(),
  most: z.number(),
  /** Standard deviation over the mean; null when nothing carries. */
  variation: z.number().nullable(),
});

export const simulatedStep = z.strictObject({
  /** Pass it belongs to, from 1. */
  pass: z.int(),
  bolts: z.array(z.int()),
  set: z.number(),
  /** False where every nut stood at its load already. */
  turned: z.boolean(),
  /** N, bolt 1 first. */
  loads: z.array(z.number()),
});

const simulated = z.strictObject({
  steps: z.array(simulatedStep),
  loads: z.array(z.number()),
  evenness: even,
  /** After each pass, in order. */
  passes: z.array(z.strictObject({ pass: z.int(), set: z.number(), evenness: even })),
  peak: z.strictObject({ bolt: z.int(), load: z.number(), step: z.int() }).nullable(),
  /** Peak with the scatter of one bolt against the limit. */
  overLimit: z.enum(['no', 'yes', 'with scatter', 'not known']),
});

export const simulatedPlan = z.strictObject({
  planId: z.string(),
  name: z.string(),
  /** Null where the plan has an order that this number of bolts does not allow. */
  result: simulated.nullable(),
  /** Circular passes at the target after the plan until it is at rest; null when it had not come to rest. */
  passesUntilQuiet: z.int().nullable(),
  words: z.string(),
});
export type SimulatedPlan = z.infer<typeof simulatedPlan>;

export const scatterView = z.strictObject({
  tag: z.string(),
  /** What it is: a model with these inputs, not a measurement. */
  caveat: z.string(),
  finding: z.string(),
  inputs: z.array(scatterValue),
  /** What has to be entered before anything can be said. */
  missing: z.array(z.string()),
  target: z.number().nullable(),
  limit: z.number().nullable(),
  plans: z.array(simulatedPlan),
  even: z
    .strictObject({
      reached: z.boolean(),
      deviation: z.number(),
      result: simulated,
      words: z.string(),
    })
    .nullable(),
  sensitivity: z.array(
    z.strictObject({
      factor: z.number(),
      gasketStiffness: z.number(),
      plans: z.array(z.strictObject({ planId: z.string(), evenness: even.nullable() })),
    }),
  ),
  /** One finding on it; null where no other stiffness was tried. */
  sensitivityWords: z.string().nullable(),
  fit: z
    .strictObject({
      gasketStiffness: z.number(),
      low: z.number(),
      high: z.number(),
      openLow: z.boolean(),
      openHigh: z.boolean(),
      /** Standard deviation of measured less modelled, N. */
      residual: z.number(),
      measurements: z.int(),
      words: z.string(),
    })
    .nullable(),
  fitWhy: z.string().nullable(),
});
export type ScatterView = z.infer<typeof scatterView>;
