import * as z from 'zod';
import { caseName, gasketKind } from './gasket.ts';
import { originMark, stressArea } from './joint.ts';

/** One limit the bolt load is held against. "Not known" is never a pass; `needs` says what would make it known. */
export const limitRow = z.strictObject({
  name: z.string(),
  /** Step of the component approach; null for the site's own limits. */
  step: z.int().nullable(),
  case: caseName.nullable(),
  /** Gasket it is about where the joint has several. */
  gasket: z.string().nullable(),
  side: z.enum(['at least', 'at most']),
  area: stressArea,
  /** Pa */
  value: z.number().nullable(),
  limit: z.number().nullable(),
  state: z.enum(['met', 'not met', 'not known']),
  needs: z.array(z.string()),
  source: z.string(),
});
export type LimitRow = z.infer<typeof limitRow>;

/** How the target modes "gasket stress" and "component limits" came to a bolt stress, Pa on the root area. */
export const selectionView = z.strictObject({
  asked: z.number(),
  /** Gasket that asks for most. */
  gasket: z.string(),
  selected: z.number().nullable(),
  governing: z.string().nullable(),
  targetReached: z.boolean().nullable(),
  steps: z.array(
    z.strictObject({
      step: z.int(),
      relation: z.string(),
      limit: z.number().nullable(),
      selected: z.number(),
      changed: z.boolean(),
    }),
  ),
});

/** One gasket under the load of the card; the gaskets of a series each carry the whole of it. */
export const gasketView = z.strictObject({
  name: z.string(),
  kind: gasketKind.nullable(),
  /** Sealing area with the counted part of pass-partition bars, m². */
  area: z.number().nullable(),
  /** At the end of tightening, Pa. */
  stress: z.number().nullable(),
  /** Left under pressure and after relaxation, by case; Pa, N. */
  cases: z.array(
    z.strictObject({
      case: caseName,
      pressure: z.number(),
      temperature: z.number().nullable(),
      retained: z.number().nullable(),
      /** Whole hydrostatic end force on the gasket's inside diameter, and its part per bolt. */
      endForce: z.number().nullable(),
      endForcePerBolt: z.number().nullable(),
      /** Load of one bolt after relaxation. */
      residualLoad: z.number().nullable(),
      stressLeft: z.number().nullable(),
    }),
  ),
  /** Loads of the design code: a floor and a cross-check, never a target. N, m. */
  codeMinimum: z
    .strictObject({
      use: z.string(),
      contactWidth: z.number(),
      basicWidth: z.number(),
      effectiveWidth: z.number(),
      reactionDiameter: z.number(),
      endForce: z.number(),
      gasketForce: z.number(),
      Wm1: z.number(),
      Wm2: z.number(),
      larger: z.enum(['Wm1', 'Wm2']),
      perBolt: z.number(),
    })
    .nullable(),
});
export type GasketView = z.infer<typeof gasketView>;

/** Torque in its three parts, N·m. */
export const splitView = z.strictObject({
  stretch: z.number(),
  thread: z.number(),
  bearing: z.number(),
  /** Rule that gave the pair of coefficients. */
  rule: z.string(),
});
export type SplitView = z.infer<typeof splitView>;

/** Strength of the stud in a state, Pa. */
export const strengthRow = z.strictObject({
  state: z.enum(['assembly', 'operating']),
  temperature: z.number().nullable(),
  yield: z.number().nullable(),
  axialOfYield: z.number().nullable(),
  origin: originMark,
  source: z.string(),
});
export type StrengthRow = z.infer<typeof strengthRow>;

/** Bolt load hot, N; `hotLoad` is null while the joint's stiffness is not known, `range` bounds it then. */
export const hotView = z.strictObject({
  difference: z.number(),
  change: z.number().nullable(),
  bound: z.number(),
  hotLoad: z.number().nullable(),
  range: z.tuple([z.number(), z.number()]),
  mayVanish: z.boolean(),
  basis: z.string(),
});
export type HotView = z.infer<typeof hotView>;

export const stretchView = z.strictObject({
  /** m, N/m */
  elongation: z.number(),
  stiffness: z.number(),
  basis: z.string(),
});
export type StretchView = z.infer<typeof stretchView>;

/** Loads that strip stud and nut thread, N; the nut's by its tensile strength, or its proof load where only that is known. */
export const stripView = z.strictObject({
  studLoad: z.number(),
  nutLoad: z.number(),
  weaker: z.enum(['stud thread', 'nut thread']),
  /** Load of the weaker thread over the bolt load. */
  margin: z.number(),
  basis: z.string(),
});
export type StripView = z.infer<typeof stripView>;

/** Pressure a flange of a standard is rated for in a case, Pa. */
export const ratingRow = z.strictObject({
  case: caseName,
  pressure: z.number(),
  temperature: z.number().nullable(),
  rated: z.number().nullable(),
  state: z.enum(['met', 'not met', 'not known']),
  source: z.string(),
});
export type RatingRow = z.infer<typeof ratingRow>;

/** Nothing here allows a retightening: an empty list says only that no reason against it is known. */
export const retighteningView = z.strictObject({
  text: z.string(),
  from: z.number(),
  to: z.number(),
  source: z.string(),
  reasons: z.array(z.string()),
  deferral: z.string(),
});
export type RetighteningView = z.infer<typeof retighteningView>;

/** Order for two or four tools; a null waits. */
export const toolOrderView = z.strictObject({
  tools: z.int(),
  steps: z.array(z.array(z.int().nullable())),
  exact: z.boolean(),
  source: z.string(),
});
export type ToolOrderView = z.infer<typeof toolOrderView>;

/** A rule for the people at the joint. */
export const rule = z.strictObject({
  kind: z.enum(['stop', 'dwell', 'no turn', 'plan check']),
  text: z.string(),
  source: z.string(),
});
export type Rule = z.infer<typeof rule>;

/** Spread of the load by simulation, N. */
export const simulationView = z.strictObject({
  draws: z.int(),
  seed: z.int(),
  generator: z.string(),
  mean: z.number(),
  median: z.number(),
  /** 95 % of single bolts lie between. */
  interval: z.tuple([z.number(), z.number()]),
  relativeInterval: z.tuple([z.number(), z.number()]),
  skewness: z.number(),
  /** Standard uncertainty over the value: common to all bolts, and drawn anew for each. */
  common: z.number(),
  perBolt: z.number(),
  probabilities: z.array(
    z.strictObject({
      limit: z.string(),
      subject: z.enum(['single bolt', 'joint mean']),
      side: z.enum(['at least', 'at most']),
      /** Limit as a bolt load, N. */
      load: z.number(),
      probability: z.number(),
      basis: z.string(),
    }),
  ),
});
export type SimulationView = z.infer<typeof simulationView>;

/** Force where the reaction member bears, at the largest torque of the card. */
export const reactionView = z.strictObject({
  /** N·m */
  torque: z.number().nullable(),
  /** From the nut's axis to the reaction point, m. */
  arm: z.number().nullable(),
  /** N; null while arm or torque is not known. */
  force: z.number().nullable(),
  /** Number of the part the arm belongs to. */
  tool: z.string().nullable(),
  /** What to measure while the arm is not known. */
  needs: z.string().nullable(),
  cautions: z.array(z.strictObject({ text: z.string(), source: z.string() })),
});
export type ReactionView = z.infer<typeof reactionView>;
