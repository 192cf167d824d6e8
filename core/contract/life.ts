import * as z from 'zod';
import { RECORD_FIELDS } from '../record/field-names.ts';
import {
  assessEvidence,
  breakEvidence,
  clearHoldEvidence,
  closeLeakEvidence,
  criticality,
  holdEvidence,
  inspectionEvidence,
  isolationEvidence,
  leakEvidence,
  makeUpEvidence,
  reinstateEvidence,
  relaxationEvidence,
  releaseEvidence,
  testEvidence,
  witnessEvidence,
} from './assembly.ts';
import { common, moment, words } from './evidence-fields.ts';
import { role } from './roles.ts';
import { date, id, instant, optionalText, page, text } from './values.ts';

/** States and steps: docs/joint-states.md. Names are kept in events and never change. */
export const jointState = z.enum([
  'unassessed',
  'assessed',
  'scheduled',
  'isolated',
  'released to break',
  'broken',
  'inspected',
  'held',
  'made up',
  'tightening',
  'tightened',
  'witnessed',
  'tested',
  'test failed',
  'reinstated',
  'in service',
  'leak watch',
]);
export type JointState = z.infer<typeof jointState>;

/** What a person takes by asking for it. Tightening comes by records, deviations are decided by their own request. */
export const jointStep = z.enum([
  'assess',
  'declare in service',
  'schedule',
  'unschedule',
  'isolate',
  'lift isolation',
  'release',
  'break',
  'inspect',
  'hold',
  'clear hold',
  'make up',
  'witness',
  'relaxation pass',
  'test',
  'reinstate',
  'enter service',
  'report leak',
  'close leak watch',
]);
export type JointStep = z.infer<typeof jointStep>;

const declareEvidence = z.strictObject({
  /** What says that the joint is in service: survey, earlier register, handover. */
  basis: words(500),
  /** Day it went into service, where that is known. */
  since: date.nullable().default(null),
  ...common,
});
const scheduleEvidence = z.strictObject({
  workOrder: words(120),
  plannedFor: date.nullable().default(null),
  reason: words(500),
  ...common,
});
const unscheduleEvidence = z.strictObject({ reason: words(500), ...common });
const liftEvidence = z.strictObject({ isolationRef: words(120), liftedBy: words(200), ...common });
const enterServiceEvidence = z.strictObject({
  /** When the joint saw pressure again. */
  pressurisedAt: moment,
  ...common,
});

const base = {
  jointId: id,
  /** Who takes the step and answers for it. */
  by: id,
  /** Who did the work beside them. */
  personIds: z.array(id).max(12).default([]),
  happenedAt: instant,
  /** Said of work that was done although the step is refused: why. The record is kept and opens a deviation. */
  reallyDone: z
    .strictObject({ reason: text(500) })
    .nullable()
    .default(null),
};

const step = <S extends JointStep, E extends z.ZodType>(name: S, evidence: E) =>
  z.strictObject({ step: z.literal(name), ...base, evidence });

export const stepData = z.discriminatedUnion('step', [
  z.strictObject({
    step: z.literal('assess'),
    ...base,
    /** The site's class; null takes the one that comes with the program for the level. */
    classRuleId: id.nullable().default(null),
    evidence: assessEvidence,
  }),
  step('declare in service', declareEvidence),
  step('schedule', scheduleEvidence),
  step('unschedule', unscheduleEvidence),
  step('isolate', isolationEvidence),
  step('lift isolation', liftEvidence),
  step('release', releaseEvidence),
  step('break', breakEvidence),
  step('inspect', inspectionEvidence),
  step('hold', holdEvidence),
  step('clear hold', clearHoldEvidence),
  step('make up', makeUpEvidence),
  step('witness', witnessEvidence),
  step('relaxation pass', relaxationEvidence),
  step('test', testEvidence),
  step('reinstate', reinstateEvidence),
  step('enter service', enterServiceEvidence),
  step('report leak', leakEvidence),
  step('close leak watch', closeLeakEvidence),
]);
export type StepInput = z.input<typeof stepData>;
export type StepData = z.output<typeof stepData>;

export const stepInput = {
  /** Newest event of this joint that the window knows; null for none. */
  seen: id.nullable(),
  data: stepData,
};

/** State of the joint after the step, and why it was out of order where it was. */
export const stepTakenAnswer = { state: jointState, outOfOrder: z.array(z.string()) };

const percent = z.int('a whole number').min(0, 'allowed 0 to 100').max(100, 'allowed 0 to 100');
const testMethod = testEvidence.shape.method.unwrap().exclude(['not known']);

/** What follows from a class at this site. */
export const classRuleData = z
  .strictObject({
    name: text(40),
    /** The common class it rests on. */
    level: criticality,
    /** Fields that a record of this class has to carry; null for the program's own list of the level. */
    fields: z.array(z.enum(RECORD_FIELDS)).max(RECORD_FIELDS.length).nullable(),
    /** A joint is not reinstated while one of them is missing. */
    completeRecord: z.boolean(),
    witnessPercent: percent,
    loadCheckPercent: percent,
    leakTest: z.strictObject({
      needed: z.boolean(),
      /** Methods that count; empty for any. */
      methods: z.array(testMethod).max(testMethod.options.length),
      words: optionalText(300),
    }),
    retightening: z.strictObject({
      afterDwell: z.boolean(),
      /** Hours between the last full pass and the pass after the dwell. */
      dwell: z.number().min(4, 'allowed 4 to 168').max(168, 'allowed 4 to 168'),
      duringStartUp: z.boolean(),
      words: optionalText(300),
    }),
    technicianLevel: optionalText(200),
    /** Steps that need other roles than usual. */
    signs: z
      .array(z.strictObject({ step: jointStep, roles: z.array(role).min(1, 'at least one role').max(5) }))
      .max(jointStep.options.length),
    source: text(300),
    /** No longer given to joints; those that have it keep it. */
    retired: z.boolean().default(false),
  })
  .superRefine(({ signs }, context) => {
    signs.forEach((one, index) => {
      if (signs.findIndex((other) => other.step === one.step) === index) return;
      context.addIssue({ code: 'custom', path: ['signs', index, 'step'], message: 'each step once' });
    });
  });
export type ClassRuleInput = z.input<typeof classRuleData>;
export type ClassRuleData = z.output<typeof classRuleData>;

const storedRule = z.custom<ClassRuleData>((value) => typeof value === 'object' && value !== null);

export const classRuleRow = z.discriminatedUnion('origin', [
  z.strictObject({ origin: z.literal('shipped'), id: z.null(), data: storedRule }),
  z.strictObject({
    origin: z.literal('site'),
    id,
    version: z.int(),
    data: storedRule,
    /** Joints that have this class now. */
    joints: z.int(),
  }),
]);
export type ClassRuleRow = z.infer<typeof classRuleRow>;

/** Something a step needs, and how it stands: met or not by what is known of the joint, or asked for with the step. */
export const guardView = z.strictObject({
  says: z.string(),
  standing: z.enum(['met', 'not met', 'asked']),
  /** Why it is not met. */
  reason: z.string().nullable(),
});
export type GuardView = z.infer<typeof guardView>;

export const openStep = z.strictObject({
  step: jointStep,
  /** State it leads to where that does not hang on the result; null where it does. */
  leadsTo: jointState.nullable(),
  roles: z.array(role),
  guards: z.array(guardView),
  /** Nothing that is known of the joint stands against it. */
  open: z.boolean(),
});
export type OpenStep = z.infer<typeof openStep>;

export const deviationDecision = z.enum(['accept as done', 'to be done again', 'hold']);
export type DeviationDecision = z.infer<typeof deviationDecision>;

const deviationWork = z.strictObject({
  eventId: id,
  what: z.string(),
  happenedAt: instant,
  reasons: z.array(z.string()),
});

export const deviationRow = z.strictObject({
  id,
  jointId: id,
  tag: z.string(),
  unitName: z.string(),
  openedAt: instant,
  /** State the joint has kept, and the one the work would make it. */
  state: jointState,
  ifAccepted: jointState,
  works: z.array(deviationWork),
  /** Newest event of the joint, for the decision. */
  seen: id.nullable(),
  decided: z
    .strictObject({
      decision: deviationDecision,
      reason: z.string(),
      person: z.string(),
      happenedAt: instant,
    })
    .nullable(),
});
export type DeviationRow = z.infer<typeof deviationRow>;

export const deviationListInput = z.strictObject({
  state: z.enum(['open', 'decided']).nullable(),
  jointId: id.nullable().default(null),
  ...page,
});

export const deviationDecisionData = z.strictObject({
  jointId: id,
  /** Record that opened it. */
  deviationId: id,
  decision: deviationDecision,
  reason: text(1000),
  personId: id,
  happenedAt: instant,
});
export type DeviationDecisionData = z.output<typeof deviationDecisionData>;

export const deviationDecisionInput = {
  /** Newest event of the joint that the window knows; null for none. */
  seen: id.nullable(),
  data: deviationDecisionData,
};

/** A joint's state with what stands open on it. */
export const jointStanding = z.strictObject({
  jointId: id,
  tag: z.string(),
  /** Newest event of the joint; a step names it. */
  seen: id.nullable(),
  state: jointState,
  /** Null for a joint nobody has assessed. */
  since: instant.nullable(),
  containment: z.enum(['open', 'closed', 'not followed']),
  class: z.strictObject({ name: z.string(), level: criticality, ruleId: id.nullable() }).nullable(),
  /** Rule of the class in force now. */
  rule: storedRule.nullable(),
  heldFrom: jointState.nullable(),
  heldBecause: z.string().nullable(),
  isolationRef: z.string().nullable(),
  permitRef: z.string().nullable(),
  permitUntil: instant.nullable(),
  lastBreakAt: instant.nullable(),
  /** Work between first pass and last. */
  pass: z
    .strictObject({
      boltSet: z.int(),
      number: z.int(),
      of: z.int(),
      lastBolt: z.int().nullable(),
      stopped: z.string().nullable(),
    })
    .nullable(),
  /** What is open or due, in words, with the moment it is due where there is one. */
  dues: z.array(z.strictObject({ text: z.string(), dueAt: instant.nullable() })),
  deviation: deviationRow
    .omit({ tag: true, unitName: true, decided: true, jointId: true, seen: true })
    .nullable(),
  /** Steps that lead on from this state. */
  steps: z.array(openStep),
});
export type JointStandingView = z.infer<typeof jointStanding>;

/** Joints of a plant unit by containment. */
export const containmentCount = z.strictObject({
  unitId: id,
  unitName: z.string(),
  open: z.int(),
  closed: z.int(),
  notFollowed: z.int(),
  held: z.int(),
  deviations: z.int(),
});
