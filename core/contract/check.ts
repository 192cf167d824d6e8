import * as z from 'zod';
import { UNITS, type Unit, unitsOf } from '../units/units.ts';
import { toolClass } from './tool.ts';
import { date, entered, enteredAs, id, instant, optionalText, page, text } from './values.ts';

/** What is looked at on a tool between calibrations. */
export const checkKind = z.enum([
  'comparison',
  'zero of the gauge',
  'function',
  'visual',
  'seal inspection',
  'leak test',
  'pressure test',
  'fasteners',
  'cleaning and lubrication',
  'repair',
]);
export type CheckKind = z.infer<typeof checkKind>;

const askedIn = [...unitsOf('pressure'), ...unitsOf('torque')] as [Unit, ...Unit[]];

const question = z.strictObject({
  text: text(300),
  /** Yes means as it should be. */
  answer: z.enum(['yes or no', 'pressure', 'torque', 'number']),
  /** Allowed range of a measured answer, in SI for a quantity; null for an open end. */
  least: z.number().nullable().default(null),
  most: z.number().nullable().default(null),
  /** Unit it is asked in; null for yes or no, for a plain number, and where a list was entered without one. */
  unit: z.enum(askedIn).nullable().default(null),
});
export type CheckQuestion = z.output<typeof question>;

/** Steps of a check as the site takes them from the tool's own instructions. */
export const checklistData = z
  .strictObject({
    name: text(80),
    kind: checkKind,
    classes: z.array(toolClass).min(1, 'at least one class of tool'),
    questions: z.array(question).min(1, 'at least one question').max(40, 'at most 40 questions'),
    /** Title, edition and page of the tool's own instructions, or the site's procedure. */
    source: text(300),
    /** Due again after so many days, or so many uses; null for neither. */
    everyDays: z.int('a whole number').min(1, 'allowed 1 to 4000').max(4000, 'allowed 1 to 4000').nullable(),
    everyUses: z
      .int('a whole number')
      .min(1, 'allowed 1 to 100000')
      .max(100_000, 'allowed 1 to 100000')
      .nullable(),
    /** A setting with a tool whose check is overdue: refused, or warned of. */
    overdue: z.enum(['refuse', 'warn']).default('warn'),
    retired: z.boolean().default(false),
  })
  .superRefine(({ questions }, context) => {
    questions.forEach(({ answer, least, most, unit }, index) => {
      const fault = (field: string, message: string) =>
        context.addIssue({ code: 'custom', path: ['questions', index, field], message });
      if (least !== null && most !== null && most < least) fault('most', 'no less than the least');
      if (unit !== null && UNITS[unit].quantity !== answer) fault('unit', `none of ${UNITS[unit].quantity}`);
    });
  });
export type ChecklistInput = z.input<typeof checklistData>;
export type ChecklistData = z.output<typeof checklistData>;

export const checklistRow = z.strictObject({
  id,
  version: z.int(),
  data: z.custom<ChecklistData>((value) => typeof value === 'object' && value !== null),
});
export type ChecklistRow = z.infer<typeof checklistRow>;

/** Torque of a wrench, or pressure behind a gauge. */
const compared = enteredAs({ torque: { min: 0, max: 2e5 }, pressure: { min: 0, max: 4e8 } });

/** One comparison of what the tool delivered with what it should have. */
const comparison = z.strictObject({
  /** Where it was dialled, on the gauge; null for a hand torque wrench. */
  pressure: entered('pressure', { min: 0, max: 4e8 }).nullable(),
  /** Reference value, torque of a wrench or true pressure behind a gauge. */
  reference: compared,
  /** What the certificate or the scale says for it. */
  intended: compared,
});

export const checkData = z.strictObject({
  toolId: id,
  kind: checkKind,
  happenedAt: instant,
  personId: id,
  /** The site's list it followed, with the version that was in force; null without one. */
  checklist: z.strictObject({ id, version: z.int().min(1) }).nullable(),
  /** In the order of the list's questions; null where a question was not answered. */
  answers: z
    .array(
      z.union([z.boolean(), z.number()], 'yes, no, or a number with a point as its decimal sign').nullable(),
    )
    .max(40)
    .default([]),
  comparisons: z.array(comparison).max(20).default([]),
  /** Largest permissible error of a comparison as a fraction; needed with comparisons. */
  limit: entered('ratio', { min: 0.0005, max: 0.2 }).nullable().default(null),
  /** Leak test: pressure held, and what it fell by, on the advance and the retract side. */
  leak: z
    .strictObject({
      pressure: entered('pressure', { min: 1e5, max: 4e8 }),
      minutes: z.number().min(0.1, 'allowed 0.1 to 240 minutes').max(240, 'allowed 0.1 to 240 minutes'),
      fallAdvance: entered('pressure', { min: 0, max: 4e8 }).nullable(),
      fallRetract: entered('pressure', { min: 0, max: 4e8 }).nullable(),
    })
    .nullable()
    .default(null),
  result: z.enum(['passed', 'failed']),
  remarks: optionalText(2000),
});
export type CheckInput = z.input<typeof checkData>;
export type CheckData = z.output<typeof checkData>;

/** What of a check is known while it is being entered; a comparison may still lack its values. */
export const checkDraft = checkData
  .pick({ toolId: true, checklist: true, answers: true, limit: true })
  .extend({
    /** Day it is done, by which the certificate in force is found. */
    on: date,
    comparisons: z
      .array(
        comparison.extend({
          reference: comparison.shape.reference.nullable(),
          intended: comparison.shape.intended.nullable(),
        }),
      )
      .max(20),
  });
export type CheckDraft = z.output<typeof checkDraft>;

/** What the numbers and answers of a check say, before it is recorded. */
export const checkAssessment = z.strictObject({
  /** In the order they were entered. */
  comparisons: z.array(
    z.strictObject({
      /** Delivered over intended less one; null while a value is missing. */
      error: z.number().nullable(),
      withinLimit: z.boolean().nullable(),
      /** Torque of a wrench by its certificate's line at this pressure, N·m; null where there is none. */
      byCertificate: z.number().nullable(),
    }),
  ),
  /** Certificate the line is from. */
  certificate: z.string().nullable(),
  /** What keeps it from passing, in words; empty when nothing does. */
  against: z.array(z.string()),
});
export type CheckAssessment = z.infer<typeof checkAssessment>;

export const checkRow = z.strictObject({
  id,
  toolId: id,
  number: z.string(),
  kind: checkKind,
  happenedAt: instant,
  person: z.string(),
  checklist: z.string().nullable(),
  result: z.enum(['passed', 'failed']),
  /** Largest error of its comparisons as a fraction, delivered over intended less one; null without comparisons. */
  error: z.number().nullable(),
  remarks: z.string(),
});
export type CheckRow = z.infer<typeof checkRow>;

const whole = (most: number) =>
  z.int('a whole number').min(1, `allowed 1 to ${most}`).max(most, `allowed 1 to ${most}`).nullable();

/** What the site asks of a class of tool. A value left open asks nothing and is said to be open. */
export const toolRuleData = z.strictObject({
  class: toolClass,
  /** Days from calibration or the certificate's own last day, whichever comes first. */
  certificateDays: whole(4000),
  /** Recorded uses since the certificate. */
  certificateUses: whole(100_000),
  /** A due date counts to the day, or to the end of its month. */
  dueAt: z.enum(['exact day', 'end of month']),
  /** Days ahead in which a thing counts as due soon. */
  noticeDays: z.int().min(0, 'allowed 0 to 365').max(365, 'allowed 0 to 365').default(30),
  /** Hoses: months in use, and months from the day made, storage included. */
  hoseUseMonths: whole(240).default(null),
  hoseAgeMonths: whole(240).default(null),
  /** Hoses: months between pressure tests, and the test pressure over the rating. */
  hoseTestMonths: whole(240).default(null),
  hoseTestFactor: z.number().min(1, 'allowed 1 to 2').max(2, 'allowed 1 to 2').nullable().default(null),
  /** How far lines of several tools on one pump may lie apart, as a fraction of torque. */
  lineAgreement: entered('ratio', { min: 0.001, max: 0.2 }).nullable().default(null),
  /** Where the rule comes from: procedure with its edition, standard. */
  source: text(300),
});
export type ToolRuleInput = z.input<typeof toolRuleData>;
export type ToolRuleData = z.output<typeof toolRuleData>;

export const toolRuleRow = z.strictObject({
  id,
  version: z.int(),
  data: z.custom<ToolRuleData>((value) => typeof value === 'object' && value !== null),
});
export type ToolRuleRow = z.infer<typeof toolRuleRow>;

/** How a thing that is due stands on a day. "Not known" is never "in date". */
export const dueState = z.enum(['overdue', 'due before it is needed', 'due soon', 'in date', 'not known']);
export type DueState = z.infer<typeof dueState>;

export const dueRow = z.strictObject({
  toolId: id,
  number: z.string(),
  class: toolClass,
  status: z.string(),
  /** "Certificate", "Seal inspection", "Hose, age": what is due. */
  what: z.string(),
  state: dueState,
  /** Last good day; null when it is counted by use alone or not known. */
  on: date.nullable(),
  /** Uses left; null when it is not counted by use. */
  usesLeft: z.number().nullable(),
  /** Which rule makes it due, and what is missing when it is not known. */
  reason: z.string(),
  /** First kit that needs the tool after it lapses. */
  neededFor: z.strictObject({ kitId: id, kit: z.string(), from: date, to: date }).nullable(),
});
export type DueRow = z.infer<typeof dueRow>;

export const dueInput = z.strictObject({
  /** Day it is asked for; null is today at the site. */
  on: date.nullable(),
  /** Days ahead that are looked at. */
  withinDays: z.int().min(0, 'allowed 0 to 3660').max(3660, 'allowed 0 to 3660'),
  text: optionalText(100),
  class: toolClass.nullable(),
  /** Shows what is in date as well. */
  all: z.boolean(),
  ...page,
});
