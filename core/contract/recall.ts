import * as z from 'zod';
import { date, entered, id, instant, optionalText, text } from './values.ts';

/** What turned out wrong. */
export const caseSubject = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('tool'), toolId: id }),
  z.strictObject({ kind: z.literal('batch'), batchId: id }),
]);
export type CaseSubject = z.infer<typeof caseSubject>;

/** What says so. */
export const caseBasis = z.discriminatedUnion('kind', [
  /** Points as found on a certificate, or a certificate outside its limits. */
  z.strictObject({ kind: z.literal('certificate'), certificateId: id }),
  z.strictObject({ kind: z.literal('check'), checkId: id }),
  /** No numbers, or numbers of another kind: a lubricant's real nut factor, a stud batch of another strength. */
  z.strictObject({
    kind: z.literal('statement'),
    text: text(500),
    /** Real bolt load over intended, less one; null is not known, and every load then says so. */
    error: z.number().gt(-1, 'above −1').max(5, 'at most 5').nullable(),
    /** Nut factor the batch really has; its error follows for each event from the one it was set with. */
    nutFactor: entered('ratio', { min: 0.03, max: 1 }).nullable().default(null),
  }),
]);
export type CaseBasis = z.infer<typeof caseBasis>;

export const caseData = z.strictObject({
  subject: caseSubject,
  basis: caseBasis,
  /** The first day that is still suspect; null takes it from the last good certificate or check. */
  since: date.nullable().default(null),
  happenedAt: instant,
  personId: id,
  /** Bars the tool at once. */
  quarantine: z.boolean().default(true),
  remarks: optionalText(2000),
});
export type CaseInput = z.input<typeof caseData>;
export type CaseData = z.output<typeof caseData>;

export const caseDecision = z.enum(['accept', 'retighten', 'monitor', 'replace the gasket']);
export type CaseDecision = z.infer<typeof caseDecision>;

export const decisionData = z.strictObject({
  caseId: id,
  /** Tightening it is about. */
  eventIds: z.array(id).min(1, 'at least one record').max(500),
  decision: caseDecision,
  reason: text(500),
  personId: id,
  happenedAt: instant,
});
export type DecisionInput = z.input<typeof decisionData>;
export type DecisionData = z.output<typeof decisionData>;

export const closeData = z.strictObject({
  caseId: id,
  /** Approves; nobody approves what they alone decided. */
  personId: id,
  happenedAt: instant,
  conclusion: text(1000),
  /** What was changed so that it does not come back: interval, repair, procedure. */
  measures: optionalText(1000),
});
export type CloseInput = z.input<typeof closeData>;
export type CloseData = z.output<typeof closeData>;

/** The days in which the subject may have been wrong, and what bounds them. */
export const suspectWindow = z.strictObject({
  /** Moment of the last good certificate or check; null when none is known, and every use counts. */
  from: instant.nullable(),
  fromBasis: z.string(),
  to: instant,
  toBasis: z.string(),
});
export type SuspectWindow = z.infer<typeof suspectWindow>;

const interval = z.strictObject({ low: z.number(), high: z.number() });

/** How the load that was really there stands against one limit of the joint. */
export const limitStanding = z.strictObject({
  /** "Least bolt stress by site", "Gasket stress, ceiling": the limit and its basis. */
  name: z.string(),
  side: z.enum(['least', 'most']),
  /** N per bolt. */
  limit: z.number(),
  /** "kept" only where the whole interval keeps it. */
  standing: z.enum(['kept', 'not sure', 'broken']),
});

export const affectedEvent = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  /** Part the tool had in it: drive unit, gauge, pump; null for a batch. */
  role: z.string().nullable(),
  /** Pressure that was dialled, Pa; null where none was recorded. */
  pressure: z.number().nullable(),
  /** N·m by the certificate the setting rested on. */
  intendedTorque: z.number().nullable(),
  deliveredTorque: z.number().nullable(),
  /** Delivered over intended, less one; null is not known, `basis` says why. */
  error: z.number().nullable(),
  /** Standard uncertainty of the error. */
  errorUncertainty: z.number().nullable(),
  intendedLoad: z.number().nullable(),
  realLoad: z.number().nullable(),
  /** 95 % interval of the real load, N per bolt. */
  interval: interval.nullable(),
  limits: z.array(limitStanding),
  worst: z.enum(['broken', 'not sure', 'kept', 'not known']),
  basis: z.string(),
  /** A later breakout of all studs, or a later tightening of them that is not suspect: this load is no longer there. */
  redoneAt: instant.nullable(),
  decision: z
    .strictObject({ decision: caseDecision, reason: z.string(), person: z.string(), happenedAt: instant })
    .nullable(),
});
export type AffectedEvent = z.infer<typeof affectedEvent>;

export const caseState = z.enum(['open', 'closed']);

export const caseSummary = z.strictObject({
  id,
  number: z.string(),
  openedAt: instant,
  openedBy: z.string(),
  subject: z.string(),
  toolId: id.nullable(),
  basis: z.string(),
  state: caseState,
  /** Tightenings in its window, and how many of them are decided on. */
  affected: z.int(),
  decided: z.int(),
});
export type CaseSummary = z.infer<typeof caseSummary>;

export const recallView = z.strictObject({
  subject: z.string(),
  basis: z.string(),
  window: suspectWindow,
  /** Worst first. */
  affected: z.array(affectedEvent),
  /** Uses in the window that are no tightening: told, not judged. */
  otherUses: z.array(z.strictObject({ eventId: id, tag: z.string(), happenedAt: instant, what: z.string() })),
});
export type RecallView = z.infer<typeof recallView>;

export const caseDetail = z.strictObject({
  summary: caseSummary,
  data: z.custom<CaseData>((value) => typeof value === 'object' && value !== null),
  recall: recallView,
  closed: z
    .strictObject({
      person: z.string(),
      happenedAt: instant,
      conclusion: z.string(),
      measures: z.string(),
      /** The list as it stood on closing is frozen in the event; what has been added since is told here. */
      since: z.array(z.string()),
    })
    .nullable(),
  hash: z.string(),
});
export type CaseDetail = z.infer<typeof caseDetail>;

export const batchRow = z.strictObject({
  id,
  kind: z.enum(['lubricant', 'gasket', 'stud', 'nut']),
  name: z.string(),
  number: z.string(),
  /** Recorded events it went into. */
  uses: z.int(),
});
export type BatchRow = z.infer<typeof batchRow>;
