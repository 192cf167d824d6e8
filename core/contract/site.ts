import * as z from 'zod';
import { gasketData } from './gasket.ts';
import { lubricantData } from './joint.ts';
import { entered, id, optionalText, text } from './values.ts';

export const siteRowKind = z.enum(['flange', 'stud grade', 'gasket', 'lubricant']);
export type SiteRowKind = z.infer<typeof siteRowKind>;

const common = {
  /** What the row is called, once per kind. Joints name it, so it stays as it is; a retired row keeps it. */
  key: text(60),
  /** Drawing, data sheet, approved procedure: a row without one can't be checked by the next reader. */
  source: text(300),
  /** No longer offered; joints that name it keep it. */
  retired: z.boolean().default(false),
};

const strength = entered('stress', { min: 50e6, max: 3000e6 });

/** One diameter range of a grade; ranges may be as many as the specification prints. */
const strengthBand = z.strictObject({
  over: entered('length', { min: 0, max: 1 }),
  upTo: entered('length', { min: 0.001, max: 1 }),
  yieldStrength: strength,
  tensileStrength: strength.nullable().default(null),
});

/** A row of the site's own tables. Nothing shipped is edited: a site's row has a name of its own. */
export const siteRowData = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('flange'),
      ...common,
      count: z.int('a whole number').min(1, 'allowed 1 to 400').max(400, 'allowed 1 to 400').nullable(),
      thread: text(30).nullable(),
      circle: entered('length', { min: 0.02, max: 20 }).nullable(),
      studLength: entered('length', { min: 0.02, max: 5 }).nullable(),
      grip: entered('length', { min: 0.005, max: 5 }).nullable(),
    }),
    z.strictObject({
      kind: z.literal('stud grade'),
      ...common,
      bands: z.array(strengthBand).min(1, 'at least one range').max(20, 'at most 20 ranges'),
    }),
    z.strictObject({
      kind: z.literal('gasket'),
      ...common,
      values: gasketData.omit({ type: true, batch: true, source: true }),
    }),
    z.strictObject({
      kind: z.literal('lubricant'),
      ...common,
      values: lubricantData.omit({ name: true, batch: true, source: true }),
    }),
  ])
  .superRefine((row, context) => {
    if (row.kind === 'stud grade') checkBands(row.bands, context);
  });
export type SiteRowInput = z.input<typeof siteRowData>;
export type SiteRowData = z.output<typeof siteRowData>;
export type SiteFlange = Extract<SiteRowData, { kind: 'flange' }>;
export type SiteGrade = Extract<SiteRowData, { kind: 'stud grade' }>;

type Band = z.output<typeof strengthBand>;

function checkBands(bands: readonly Band[], context: z.core.$RefinementCtx): void {
  bands.forEach((band, index) => {
    const before = bands[index - 1];
    if (band.upTo.si <= band.over.si) {
      const message = 'larger than the diameter the range begins at';
      context.addIssue({ code: 'custom', path: ['bands', index, 'upTo'], message });
    }
    if (before !== undefined && band.over.si < before.upTo.si) {
      const message = 'at or above the end of the range before it';
      context.addIssue({ code: 'custom', path: ['bands', index, 'over'], message });
    }
    if (band.tensileStrength !== null && band.tensileStrength.si < band.yieldStrength.si) {
      const message = 'at least the yield strength';
      context.addIssue({ code: 'custom', path: ['bands', index, 'tensileStrength'], message });
    }
  });
}

const storedRow = z.custom<SiteRowData>((value) => typeof value === 'object' && value !== null);

export const siteRow = z.strictObject({
  id,
  version: z.int(),
  origin: z.literal('site'),
  data: storedRow,
});
export type SiteRow = z.infer<typeof siteRow>;

export const planOrder = z.enum(['star', 'circular', 'groups']);
export const planTools = z.union([z.literal(1), z.literal(2), z.literal(4)], { error: 'allowed 1, 2 or 4' });

const planStep = z.strictObject({
  name: text(60),
  /** Share of the target. */
  fraction: entered('ratio', { min: 0.01, max: 1 }),
  order: planOrder,
  tools: planTools,
  stopWhen: text(200),
});

/** A site's pass plan. The nuts are made snug by hand before its first step; that step is the program's. */
export const passPlanData = z
  .strictObject({
    name: text(80),
    steps: z.array(planStep).min(1, 'at least one step').max(12, 'at most 12 steps'),
    /** Neighbouring studs of a group, for steps in groups. */
    groupSize: z.int('a whole number').min(2, 'allowed 2 to 50').max(50, 'allowed 2 to 50').nullable(),
    /** What is looked at between or after the steps. */
    checks: z.array(text(200)).max(12, 'at most 12 checks'),
    source: text(300),
    /** No longer offered; settings issued with it keep it. */
    retired: z.boolean().default(false),
  })
  .superRefine(({ steps, groupSize }, context) => {
    steps.forEach((step, index) => {
      const before = steps[index - 1];
      if (before !== undefined && step.fraction.si < before.fraction.si) {
        const message = 'no smaller than in the step before it';
        context.addIssue({ code: 'custom', path: ['steps', index, 'fraction'], message });
      }
    });
    if (steps.at(-1)?.fraction.si !== 1) {
      const message = 'the last step has to reach the whole target, 100 %';
      context.addIssue({ code: 'custom', path: ['steps', steps.length - 1, 'fraction'], message });
    }
    if (groupSize === null && steps.some(({ order }) => order === 'groups')) {
      context.addIssue({ code: 'custom', path: ['groupSize'], message: 'needed for a step in groups' });
    }
  });
export type PassPlanInput = z.input<typeof passPlanData>;
export type PassPlanData = z.output<typeof passPlanData>;

const storedPlan = z.custom<PassPlanData>((value) => typeof value === 'object' && value !== null);

export const approval = z.strictObject({ personId: id, person: z.string(), at: z.string() });

const planView = {
  name: z.string(),
  source: z.string(),
  steps: z.array(
    z.strictObject({
      name: z.string(),
      /** Null for the step by hand. */
      fraction: z.number().nullable(),
      order: z.enum(['by hand', ...planOrder.options]),
      tools: z.int(),
      stopWhen: z.string(),
    }),
  ),
  checks: z.array(z.string()),
};

/** A plan on the list: shipped with the program, or the site's own, which needs an approval before it is used. */
export const planRow = z.discriminatedUnion('origin', [
  z.strictObject({ origin: z.literal('shipped'), id: z.string(), ...planView }),
  z.strictObject({
    origin: z.literal('site'),
    id,
    version: z.int(),
    data: storedPlan,
    /** Null until somebody approves this version. */
    approved: approval.nullable(),
    ...planView,
  }),
]);
export type PlanRow = z.infer<typeof planRow>;

/** Cells of one table row that a person held against a source. The value is kept: if a later table prints another, it is not confirmed. */
export const tableCells = z.strictObject({
  table: text(60),
  key: text(80),
  values: z
    .array(z.strictObject({ field: text(40), value: text(80) }))
    .min(1, 'at least one value')
    .max(20, 'at most 20 values'),
});

export type TableCells = z.output<typeof tableCells>;

export const confirmData = z.strictObject({
  ...tableCells.shape,
  personId: id,
  /** The document the value was compared with: "own copy of the standard, table 8". */
  sourceSeen: text(300),
});
export type ConfirmData = z.output<typeof confirmData>;

export const confirmation = z.strictObject({
  table: z.string(),
  key: z.string(),
  field: z.string(),
  value: z.string(),
  person: z.string(),
  sourceSeen: z.string(),
  at: z.string(),
});
export type Confirmation = z.infer<typeof confirmation>;

export const siteRowListInput = z.strictObject({ kind: siteRowKind.nullable(), text: optionalText(100) });
