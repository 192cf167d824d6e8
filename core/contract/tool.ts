import * as z from 'zod';
import { date, entered, id, optionalText, page, text } from './values.ts';

const pressureRange = { min: 1e5, max: 4e8 };
const torqueRange = { min: 1, max: 2e5 };
const openingRange = { min: 0.005, max: 0.3 };

export const toolClass = z.enum(['drive unit', 'cassette', 'reducer', 'pump', 'gauge', 'hose']);
export type ToolClass = z.infer<typeof toolClass>;

/**
 * Size marked on a hex opening and how far above nominal the opening may be.
 * `looseness` null means not known: a loose opening rounds corners, so the card says so.
 */
const opening = {
  acrossFlats: entered('length', openingRange),
  looseness: entered('length', { min: 0, max: 0.005 }).nullable(),
};

const properties = z.discriminatedUnion('class', [
  z.strictObject({
    class: z.literal('drive unit'),
    ratedTorque: entered('torque', torqueRange),
    ratedPressure: entered('pressure', pressureRange),
    /** Family as the site defines it; parts of one family fit each other. */
    family: text(40),
    headRadius: entered('length', { min: 0.005, max: 0.5 }).nullable(),
  }),
  z.strictObject({
    class: z.literal('cassette'),
    ...opening,
    ratedTorque: entered('torque', torqueRange).nullable(),
    family: text(40),
    /** From the opening's centre to the outside of the head on the neighbour's side. */
    headRadius: entered('length', { min: 0.005, max: 0.5 }).nullable(),
  }),
  z.strictObject({
    class: z.literal('reducer'),
    /** Hex that goes into the cassette. */
    outerAcrossFlats: entered('length', openingRange),
    ...opening,
    ratedTorque: entered('torque', torqueRange).nullable(),
  }),
  z.strictObject({ class: z.literal('pump'), ratedPressure: entered('pressure', pressureRange) }),
  z.strictObject({
    class: z.literal('gauge'),
    scaleMax: entered('pressure', pressureRange),
    graduation: entered('pressure', { min: 1e3, max: 1e8 }),
    /** Largest error as a fraction of the full scale (EN 837-1 class 1.0 = 1 %). */
    accuracy: entered('ratio', { min: 0.0001, max: 0.1 }),
  }),
  z.strictObject({
    class: z.literal('hose'),
    ratedPressure: entered('pressure', pressureRange),
    madeOn: date.nullable(),
  }),
]);

export const toolData = z.strictObject({
  /** The site's own number, on the tool's label. */
  number: text(40),
  serial: optionalText(80),
  status: z.enum(['available', 'issued', 'at the laboratory', 'quarantined', 'scrapped']),
  place: optionalText(120),
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
});
const gaugePoint = z.strictObject({
  indicated: entered('pressure', { min: 0, max: 4e8 }),
  reference: entered('pressure', { min: 0, max: 4e8 }),
});

export const certificateData = z.strictObject({
  number: text(60),
  /** The tool it hangs on: the drive unit of a wrench, or a gauge. */
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
  measured: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('pressure-torque'),
      points: z.array(torquePoint).min(3, 'at least 3 points').max(200),
      /** Expanded uncertainty of the reference as a fraction of torque, common to all points; null means not stated. */
      expandedUncertainty: entered('ratio', { min: 0, max: 0.2 }).nullable(),
      coverageFactor: z.number().min(1).max(4),
    }),
    z.strictObject({ kind: z.literal('gauge'), points: z.array(gaugePoint).max(100) }),
  ]),
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

export const certificateDetail = z.strictObject({
  id,
  data: storedCertificate,
  recordedAt: z.string(),
  line: certificateLine.nullable(),
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

export const toolListInput = z.strictObject({
  text: optionalText(100),
  class: toolClass.nullable(),
  sort: z.enum(['number', 'class', 'status', 'validUntil']),
  direction: z.enum(['asc', 'desc']),
  ...page,
});
