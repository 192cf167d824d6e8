import * as z from 'zod';
import { gasketData, pressureCases } from './gasket.ts';
import { hotData, retighteningData } from './hot.ts';
import { jointIdentity } from './identity.ts';
import { jointState } from './life.ts';
import { role } from './roles.ts';
import { entered, id, instant, optionalText, page, text } from './values.ts';

/** Which cross-section a bolt stress is divided by. Never implied. */
export const stressArea = z.enum(['tensile', 'root']);
export type StressArea = z.infer<typeof stressArea>;

/** A flange named by a standard, or a bolt circle of its own. */
const flange = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('standard'),
    standard: z.enum(['ASME B16.5', 'ASME B16.47 A', 'ASME B16.47 B', 'EN 1092-1']),
    /** NPS or DN as the standard writes it: "8", "1 1/2", "200". */
    size: text(12),
    /** Pressure class or PN: "300", "16". */
    rating: text(12),
    facing: z.enum(['raised face', 'flat face', 'ring joint', 'other']),
  }),
  z.strictObject({
    kind: z.literal('custom'),
    description: text(200),
    /** Row of the site's own flange table that fills what is left blank. */
    siteRow: text(60).nullable().default(null),
  }),
]);

/** Blank (null) bolting fields are taken from the flange standard when it has them; otherwise they are "not known". */
const bolting = z.strictObject({
  count: z.int('a whole number').min(1, 'allowed 1 to 400').max(400, 'allowed 1 to 400').nullable(),
  /** Thread designation as in the thread tables: "7/8-9 UNC", "1-1/8-8 8UN", "M24x3". */
  thread: text(30).nullable(),
  circle: entered('length', { min: 0.02, max: 20 }).nullable(),
  /** Stud specification and grade: "ASTM A193 B7". */
  grade: text(60).nullable(),
  /** Yield strength entered by hand for grades without a table row; overrides the table, with its origin. */
  yieldStrength: entered('stress', { min: 50e6, max: 2000e6 }).nullable(),
  yieldOrigin: optionalText(200),
  studLength: entered('length', { min: 0.02, max: 5 }).nullable(),
  /** Clamped length between the two nuts. */
  grip: entered('length', { min: 0.005, max: 5 }).nullable(),
  nutSeries: z
    .enum(['ASME B18.2.2 heavy hex', 'ASME B18.2.4.6M heavy hex', 'ISO 4032', 'DIN 934'])
    .nullable(),
  /** Tensile strengths for the check against stripping; blank is taken from the grade where the tables have it. */
  tensileStrength: entered('stress', { min: 50e6, max: 3000e6 }).nullable().default(null),
  nutGrade: text(60).nullable().default(null),
  nutTensileStrength: entered('stress', { min: 50e6, max: 3000e6 }).nullable().default(null),
  /** Why entered values differ from the flange standard. */
  reason: optionalText(300).default(''),
  /** They hold the pressure in; null while nobody has said. Bolts of an actuator or a guard do not. */
  pressureRetaining: z.boolean().nullable().default(null),
});

/** Either friction form; `one of` is checked when a setting is computed, so that an unfinished joint can be kept. */
export const lubricantData = z.strictObject({
  /** Product class, never a brand: "nickel-based anti-seize". */
  name: text(120),
  batch: optionalText(80),
  /** Nut factor K. */
  nutFactor: entered('ratio', { min: 0.03, max: 0.8 }).nullable(),
  /** Coefficient of variation of K from bolt to bolt. */
  nutFactorCv: entered('ratio', { min: 0, max: 1 }).nullable(),
  /** Coefficient of variation of the mean of K from batch to batch: the same for every bolt of a joint. */
  nutFactorBatchCv: entered('ratio', { min: 0, max: 1 }).nullable().default(null),
  frictionThread: entered('ratio', { min: 0.02, max: 0.6 }).nullable(),
  frictionBearing: entered('ratio', { min: 0.02, max: 0.6 }).nullable(),
  evidence: z.enum(['published', 'measured', 'assumed']),
  source: optionalText(300),
});

/** What the stud should carry at the end of tightening, from the site's approved procedure. */
const target = z.discriminatedUnion('mode', [
  z.strictObject({
    mode: z.literal('percent of yield'),
    percent: entered('ratio', { min: 0.01, max: 1 }),
    area: stressArea,
    basis: text(300),
  }),
  z.strictObject({
    mode: z.literal('bolt stress'),
    stress: entered('stress', { min: 1e6, max: 2000e6 }),
    area: stressArea,
    basis: text(300),
  }),
  z.strictObject({
    mode: z.literal('bolt load'),
    load: entered('force', { min: 100, max: 2e7 }),
    basis: text(300),
  }),
  z.strictObject({
    mode: z.literal('torque'),
    torque: entered('torque', { min: 1, max: 2e5 }),
    basis: text(300),
  }),
  /** The gasket's target stress alone. */
  z.strictObject({ mode: z.literal('gasket stress'), basis: text(300) }),
  /** The gasket's target stress, held between the limits of bolt and flange. */
  z.strictObject({ mode: z.literal('component limits'), basis: text(300) }),
]);

/** Limits from the site or from the gasket's and flange's data sheets; null means not known. */
const limits = z.strictObject({
  boltStressMax: entered('stress', { min: 1e6, max: 2000e6 }).nullable(),
  boltStressMin: entered('stress', { min: 0, max: 2000e6 }).nullable(),
  /** Area both bolt limits refer to. */
  boltStressArea: stressArea,
  flangeBoltStressMax: entered('stress', { min: 1e6, max: 2000e6 }).nullable(),
  /** θf,max: rotation of the flange at its largest bolt stress. */
  flangeRotationMax: entered('angle', { min: 0, max: 1 }).nullable().default(null),
  source: optionalText(300),
});

const space = z.strictObject({
  /** Free radial distance from the stud's centre to the hub or pipe. */
  radialGap: entered('length', { min: 0, max: 2 }).nullable(),
  /** Free distance along the stud, from the flange's face outwards, on the side the tool is put on. */
  axialGap: entered('length', { min: 0, max: 10 }).nullable().default(null),
});

/** Further bolts of the same joint with a size, circle or load of their own. Null lubricant is the joint's. */
const boltSet = z.strictObject({
  name: text(80),
  bolting,
  lubricant: lubricantData.nullable(),
  target: target.nullable(),
  limits,
  space,
});

export const jointData = z.strictObject({
  tag: text(60),
  unitId: id,
  /** Where a person finds it: landmark, elevation, side of valve. */
  location: optionalText(300),
  /** What flows through it. */
  service: optionalText(120),
  serviceTemperature: entered('temperature', { min: -273, max: 1200 }).nullable(),
  identity: jointIdentity,
  flange,
  bolting,
  /** Material or material group as the rating tables name it: "1.1". */
  flangeMaterial: text(60).nullable().default(null),
  gasket: gasketData.nullable(),
  /** Gaskets in series with the first, as in an exchanger's girth joint: each carries the whole bolt load. */
  furtherGaskets: z.array(gasketData).max(3, 'at most 3 beside the first').default([]),
  pressures: pressureCases,
  hot: hotData,
  retightening: retighteningData,
  lubricant: lubricantData.nullable(),
  target: target.nullable(),
  limits,
  space,
  boltSets: z.array(boltSet).max(8, 'at most 8 beside the first').default([]),
  remarks: optionalText(2000),
});
export type JointInput = z.input<typeof jointData>;
export type JointData = z.output<typeof jointData>;

/** Master data as answered: same shape, already validated when it was stored. */
const storedJoint = z.custom<JointData>((value) => typeof value === 'object' && value !== null);

export const jointSummary = z.strictObject({
  id,
  tag: z.string(),
  unitName: z.string(),
  location: z.string(),
  service: z.string(),
  /** "NPS 8 Class 300", "PN 16 DN 200" or the custom description. */
  flange: z.string(),
  /** "12 × 7/8-9 UNC" or "not known". */
  bolting: z.string(),
  grade: z.string().nullable(),
  lastEvent: z.strictObject({ kind: z.enum(['tightening', 'breakout']), happenedAt: instant }).nullable(),
  state: jointState,
  /** Work out of order waits for a decision. */
  deviation: z.boolean(),
});
export type JointSummary = z.infer<typeof jointSummary>;

export const jointSort = z.enum(['tag', 'unit', 'service', 'lastEvent']);

/** A value the bolting rests on, and where it came from. */
export const originMark = z.enum(['standard', 'certificate', 'entered', 'calculated', 'assumed']);
export type OriginMark = z.infer<typeof originMark>;

/** One line of the joint page: the value in force after blanks are filled from the standard. */
export const resolvedValue = z.strictObject({
  name: z.string(),
  /** Text to show; null is shown as "not known". */
  text: z.string().nullable(),
  si: z.number().nullable(),
  origin: originMark,
  source: z.string(),
  /** Status of the table row behind it when people should know it: "one source only", "sources disagree". */
  status: z.string().nullable(),
});
export type ResolvedValue = z.infer<typeof resolvedValue>;

export const jointDetail = z.strictObject({
  id,
  version: z.int(),
  unitName: z.string(),
  data: storedJoint,
  resolved: z.array(resolvedValue),
  /** Count used for the drawing; null when not known. */
  boltCount: z.int().nullable(),
});
export type JointDetail = z.infer<typeof jointDetail>;

/** What a tag's code or a typed tag says; null when no joint has it. */
export const jointFound = z.strictObject({ id, tag: z.string() }).nullable();

export const jointListInput = z.strictObject({
  text: optionalText(100),
  unitId: id.nullable(),
  /** Null for joints in any state. */
  state: jointState.nullable().default(null),
  sort: jointSort,
  direction: z.enum(['asc', 'desc']),
  ...page,
});

const historyKind = z.enum([
  'tightening',
  'breakout',
  'joint saved',
  'setting issued',
  'pass',
  'case decided',
  'file added',
  'step',
  'deviation decided',
  'cycles counted',
  'signed',
]);

/** A joint that could be taken for another, and what tells them apart. */
export const lookAlikeRow = z.strictObject({
  id,
  tag: z.string(),
  unitName: z.string(),
  flange: z.string(),
  service: z.string(),
  location: z.string(),
  /** Words of its state; null when the register does not know it. */
  state: z.string().nullable(),
  reasons: z.array(z.string()),
  /** What somebody wrote down to tell them apart. */
  tells: z.array(z.string()),
  differences: z.array(
    z.strictObject({ what: z.string(), here: z.string().nullable(), there: z.string().nullable() }),
  ),
  /** One of the two is isolated and the other is not. */
  oneIsLive: z.boolean(),
});
export type LookAlikeRow = z.infer<typeof lookAlikeRow>;

/** One event in a joint's history, newest first. */
export const historyRow = z.strictObject({
  eventId: id,
  sequence: z.int(),
  kind: historyKind,
  happenedAt: instant,
  recordedAt: instant,
  by: z.string(),
  summary: z.string(),
  flags: z.array(z.string()),
  settingId: id.nullable(),
  /** Out-of-tolerance case that was decided on for this joint. */
  caseId: id.nullable().default(null),
  /** Record that a signature stands on. */
  signedId: id.nullable().default(null),
});
export type HistoryRow = z.infer<typeof historyRow>;

/** A point of the joint's chart; torques in N·m. The table beside the chart shows the same rows. */
export const chartPoint = z.strictObject({
  eventId: id,
  kind: z.enum(['tightening', 'breakout']),
  happenedAt: instant,
  /** Installed torque, or the median breakout reading. */
  torque: z.number(),
  /** Largest breakout reading; equals `torque` for a tightening. */
  highest: z.number(),
  readings: z.int(),
  /** Studs that were cut or would not turn. */
  notTurned: z.int(),
  /** What was done broke a limit that refuses a setting; it was recorded all the same. */
  refused: z.boolean(),
});
export type ChartPoint = z.infer<typeof chartPoint>;

export const jointChart = z.strictObject({
  /** One sentence, computed in core. */
  finding: z.string(),
  points: z.array(chartPoint),
  shown: z.int(),
  total: z.int(),
});

export const unitSummary = z.strictObject({ id, name: z.string(), version: z.int(), joints: z.int() });
export const personSummary = z.strictObject({
  id,
  name: z.string(),
  version: z.int(),
  /** Trade or position in the site's own words; what a person may do follows from `roles`. */
  role: z.string(),
  roles: z.array(role),
  /** Version of the roles; null where none were given yet. */
  rolesVersion: z.int().nullable(),
  /** Whether the person can sign in. */
  secret: z.enum(['none', 'own', 'to be changed']),
});
