import * as z from 'zod';
import { certificateAnalysis } from './certificate-view.ts';
import { date, entered, id, optionalText, page, text } from './values.ts';

const pressureRange = { min: 1e5, max: 4e8 };
const torqueRange = { min: 1, max: 2e5 };
const openingRange = { min: 0.005, max: 0.3 };
const sizeRange = { min: 0.001, max: 3 };

export const toolClass = z.enum([
  'drive unit',
  'cassette',
  'square-drive head',
  'reducer',
  'pump',
  'gauge',
  'hose',
  'coupler',
  'counterhold wrench',
  'hand torque wrench',
]);
export type ToolClass = z.infer<typeof toolClass>;

/**
 * Size marked on a hex opening and how far above nominal the opening may be.
 * `looseness` null means not known: a loose opening rounds corners, so the card says so.
 */
const opening = {
  acrossFlats: entered('length', openingRange),
  looseness: entered('length', { min: 0, max: 0.005 }).nullable(),
};

const size = entered('length', sizeRange).nullable().default(null);

/** Room the head needs along the stud, and leaves for it; null is not known. */
const head = {
  /** From the opening's centre to the outside of the head on the neighbour's side. */
  headRadius: entered('length', { min: 0.005, max: 0.5 }).nullable(),
  /** From the flange side of the head to its outer side, along the stud. */
  height: size,
  /** Diameter of the hole in which the stud's end stands. */
  bore: size,
  /** How far the stud may stand out of the nut inside the head; a head that is open through the back has no end. */
  studRoom: size,
  openThrough: z.boolean().default(false),
};

/** Coupling of the hydraulic lines, as the site names it; lines of two names don't go together. Empty is not known. */
const coupling = optionalText(40).default('');

const properties = z.discriminatedUnion('class', [
  z.strictObject({
    class: z.literal('drive unit'),
    ratedTorque: entered('torque', torqueRange),
    ratedPressure: entered('pressure', pressureRange),
    /** Family as the site defines it; parts of one family fit each other. */
    family: text(40),
    headRadius: entered('length', { min: 0.005, max: 0.5 }).nullable(),
    /** From the nut's axis to where the reaction member bears; the force there is the torque over it. */
    reactionArm: size,
    coupling,
  }),
  z.strictObject({
    class: z.literal('cassette'),
    ...opening,
    ...head,
    ratedTorque: entered('torque', torqueRange).nullable(),
    family: text(40),
    reactionArm: size,
  }),
  /** Turns a socket, which is entered with it; in a set it stands in the cassette's place. */
  z.strictObject({
    class: z.literal('square-drive head'),
    /** Side of the square. */
    square: entered('length', openingRange),
    ...opening,
    ...head,
    ratedTorque: entered('torque', torqueRange).nullable(),
    family: text(40),
    reactionArm: size,
  }),
  z.strictObject({
    class: z.literal('reducer'),
    /** Hex that goes into the cassette. */
    outerAcrossFlats: entered('length', openingRange),
    ...opening,
    ratedTorque: entered('torque', torqueRange).nullable(),
  }),
  z.strictObject({
    class: z.literal('pump'),
    ratedPressure: entered('pressure', pressureRange),
    /** Wrenches that can be connected at once. */
    connections: z.int('a whole number').min(1, 'allowed 1 to 8').max(8, 'allowed 1 to 8').default(1),
    coupling,
  }),
  z.strictObject({
    class: z.literal('gauge'),
    scaleMax: entered('pressure', pressureRange),
    graduation: entered('pressure', { min: 1e3, max: 1e8 }),
    /** Largest error as a fraction of the full scale (EN 837-1 class 1.0 = 1 %). */
    accuracy: entered('ratio', { min: 0.0001, max: 0.1 }),
    /** Another pressure unit on the same face: a known cause of a wrong setting. */
    alsoPrinted: z.enum(['bar', 'psi', 'MPa_pressure']).nullable().default(null),
  }),
  z.strictObject({
    class: z.literal('hose'),
    ratedPressure: entered('pressure', pressureRange),
    madeOn: date.nullable(),
    firstUsedOn: date.nullable().default(null),
    coupling,
  }),
  z.strictObject({
    class: z.literal('coupler'),
    ratedPressure: entered('pressure', pressureRange),
    coupling: text(40),
  }),
  z.strictObject({
    class: z.literal('counterhold wrench'),
    ...opening,
    ratedTorque: entered('torque', torqueRange).nullable(),
  }),
  z.strictObject({
    class: z.literal('hand torque wrench'),
    least: entered('torque', { min: 0.1, max: 2e5 }),
    most: entered('torque', { min: 0.1, max: 2e5 }),
    torqueGraduation: entered('torque', { min: 0.01, max: 2e4 }),
    square: entered('length', openingRange).nullable().default(null),
  }),
]);

/** Whose tool it is. A hired tool keeps the same rules and has a day to go back. */
const owner = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('own') }),
  z.strictObject({ kind: z.literal('hired'), from: text(120), returnBy: date.nullable() }),
]);

export const toolData = z.strictObject({
  /** The site's own number, on the tool's label. */
  number: text(40),
  serial: optionalText(80),
  status: z.enum(['available', 'issued', 'at the laboratory', 'quarantined', 'scrapped']),
  place: optionalText(120),
  owner: owner.default({ kind: 'own' }),
  weight: entered('mass', { min: 0.01, max: 1000 }).nullable().default(null),
  properties,
  remarks: optionalText(2000),
});
export type ToolInput = z.input<typeof toolData>;
export type ToolData = z.output<typeof toolData>;
export type ToolProperties = ToolData['properties'];

const storedTool = z.custom<ToolData>((value) => typeof value === 'object' && value !== null);

const torquePoint = z.strictObject({
  pressure: entered('pressure', { min: 0, max: 4e8 }),
  torque: entered('torque', { min: 0, max: 2e5 }),
  direction: z.enum(['up', 'down']),
  /** Expanded uncertainty of this point alone, without what is common to all points; null means not stated. */
  uncertainty: entered('torque', { min: 0, max: 2e4 }).nullable().default(null),
});
const gaugePoint = z.strictObject({
  indicated: entered('pressure', { min: 0, max: 4e8 }),
  reference: entered('pressure', { min: 0, max: 4e8 }),
});

const handPoint = z.strictObject({
  set: entered('torque', { min: 0, max: 2e5 }),
  reference: entered('torque', { min: 0, max: 2e5 }),
});

const measured = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('pressure-torque'),
    points: z.array(torquePoint).min(3, 'at least 3 points').max(200),
    /** Expanded uncertainty of the reference as a fraction of torque, common to all points; null means not stated. */
    expandedUncertainty: entered('ratio', { min: 0, max: 0.2 }).nullable(),
    coverageFactor: z.number().min(1).max(4),
  }),
  z.strictObject({ kind: z.literal('gauge'), points: z.array(gaugePoint).max(100) }),
  z.strictObject({ kind: z.literal('hand torque'), points: z.array(handPoint).max(100) }),
]);
export type Measured = z.output<typeof measured>;

/** Surroundings of the calibration, as stated. */
const environment = z.strictObject({
  temperature: entered('temperature', { min: -30, max: 60 }).nullable(),
  humidity: entered('ratio', { min: 0, max: 1 }).nullable(),
});

/** How the laboratory or the site decides whether a result keeps its limit. */
const decisionRule = z.strictObject({
  /** Largest permissible error as a fraction of the reading. */
  limit: entered('ratio', { min: 0.0005, max: 0.2 }),
  /** With a guard band a result is accepted only when its error and its expanded uncertainty together keep the limit. */
  guardBand: z.boolean(),
});

export const certificateData = z.strictObject({
  number: text(60),
  /** The tool it hangs on: the drive unit of a wrench, a gauge, or a hand torque wrench. */
  toolId: id,
  /** The other parts it was calibrated with (cassette, reducers); empty when the certificate names none. */
  withToolIds: z.array(id).max(6),
  laboratory: text(160),
  calibratedOn: date,
  validUntil: date,
  /** Whose rule sets the validity: the laboratory's, the site's. */
  validityBasis: text(200),
  result: z.enum(['within limits', 'outside limits', 'no limits stated']),
  condition: z.enum(['as found', 'as left']),
  measured,
  /** What it did on arrival, where it was adjusted before `measured` was taken; null where nothing was adjusted. */
  asFound: measured.nullable().default(null),
  method: optionalText(200).default(''),
  environment: environment.nullable().default(null),
  decisionRule: decisionRule.nullable().default(null),
  /** Answers to what looks wrong in the points but can be right; each names what was confirmed. */
  confirmed: z.array(text(40)).max(20).default([]),
  remarks: optionalText(2000),
});
export type CertificateInput = z.input<typeof certificateData>;
export type CertificateData = z.output<typeof certificateData>;

const storedCertificate = z.custom<CertificateData>((value) => typeof value === 'object' && value !== null);

export const toolSummary = z.strictObject({
  id,
  number: z.string(),
  serial: z.string(),
  class: toolClass,
  status: toolData.shape.status,
  /** Who has it; null in the tool room and where no holder was recorded. */
  holder: z.string().nullable(),
  owner: z.enum(['own', 'hired']),
  place: z.string(),
  /** "690 bar, 5 400 N·m", "1-7/16 in opening", "0–1000 bar, marks every 10 bar". */
  ratings: z.string(),
  /** Last day the newest certificate is valid; null when the tool has none. */
  validUntil: date.nullable(),
  /** Whether tools of this class are expected to hold a certificate. */
  needsCertificate: z.boolean(),
});
export type ToolSummary = z.infer<typeof toolSummary>;

/** Straight line through a certificate's points, in SI (N·m over Pa). */
export const certificateLine = z.strictObject({
  intercept: z.number(),
  slope: z.number(),
  interceptUncertainty: z.number(),
  slopeUncertainty: z.number(),
  covariance: z.number(),
  residualDeviation: z.number(),
  largestResidual: z.number(),
  throughOrigin: z.boolean(),
  points: z.array(
    z.strictObject({
      pressure: z.number(),
      torque: z.number(),
      direction: z.enum(['up', 'down']),
      residual: z.number(),
    }),
  ),
});
export type CertificateLineView = z.infer<typeof certificateLine>;

/** What `certificate.assess` answers: the analysis, and the lines its residuals are drawn from. */
export const certificateAssessment = certificateAnalysis.extend({
  line: certificateLine.nullable(),
  asFoundLine: certificateLine.nullable(),
});
export type CertificateAssessment = z.infer<typeof certificateAssessment>;

export const certificateDetail = z.strictObject({
  id,
  data: storedCertificate,
  recordedAt: z.string(),
  line: certificateLine.nullable(),
  /** Line of what it did on arrival; null where nothing was adjusted, and for a gauge or hand torque wrench. */
  asFoundLine: certificateLine.nullable(),
  analysis: certificateAnalysis,
  withTools: z.array(z.string()),
});
export type CertificateDetail = z.infer<typeof certificateDetail>;

export const toolDetail = z.strictObject({
  id,
  version: z.int(),
  data: storedTool,
  certificates: z.array(certificateDetail),
  uses: z.int(),
});
export type ToolDetail = z.infer<typeof toolDetail>;

export const toolFound = z.strictObject({ id, number: z.string() }).nullable();

export const toolListInput = z.strictObject({
  text: optionalText(100),
  class: toolClass.nullable(),
  status: toolData.shape.status.nullable().default(null),
  owner: z.enum(['own', 'hired']).nullable().default(null),
  sort: z.enum(['number', 'class', 'status', 'validUntil']),
  direction: z.enum(['asc', 'desc']),
  ...page,
});
