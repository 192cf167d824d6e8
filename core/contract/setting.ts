import * as z from 'zod';
import { FINDING_CODES } from '../findings/codes.ts';
import { SEVERITIES } from '../findings/finding.ts';
import { UNIT_CODES } from '../units/units.ts';
import {
  gasketView,
  hotView,
  limitRow,
  ratingRow,
  reactionView,
  retighteningView,
  rule,
  selectionView,
  simulationView,
  splitView,
  strengthRow,
  stretchView,
  stripView,
  toolOrderView,
} from './card-views.ts';
import { originMark } from './joint.ts';
import { competenceState } from './roles.ts';
import { planOrder, planTools, tableCells } from './site.ts';
import { toolClass, toolData } from './tool.ts';
import { date, entered, id, optionalText, text } from './values.ts';

const unit = z.enum(UNIT_CODES);

export const workKind = z.enum(['tightening', 'breakout']);
export type WorkKind = z.infer<typeof workKind>;

/** One wrench with the lines that feed it. */
const wrench = {
  driveId: id.nullable(),
  /** A cassette, or a square-drive head with its socket. */
  cassetteId: id.nullable(),
  /** From the cassette towards the nut. */
  reducerIds: z.array(id).max(3),
  hoseIds: z.array(id).max(8),
};

/** Which parts are put together for this job. A part not chosen is a finding, not an error. */
export const toolSetInput = z.strictObject({
  ...wrench,
  pumpId: id.nullable(),
  gaugeId: id.nullable(),
  couplerIds: z.array(id).max(8).default([]),
  /** Wrench that holds the far nut. */
  counterholdId: id.nullable().default(null),
  /** More wrenches on the same pump and gauge. */
  further: z.array(z.strictObject(wrench)).max(3, 'at most 3 beside the first').default([]),
});
export type ToolSetInput = z.input<typeof toolSetInput>;
export type ToolSetData = z.output<typeof toolSetInput>;

/** What the load is brought in with. Only the hydraulic wrench has a pressure to dial. */
export const method = z.enum([
  'hydraulic wrench',
  'hand torque wrench',
  'battery torque tool',
  'pneumatic torque tool',
  'tensioner',
]);
export type Method = z.infer<typeof method>;

const setTorque = entered('torque', { min: 0.1, max: 2e5 });

/** A tool that is set to a torque or to a numbered step, with the certificate that says what the setting gives. */
export const torqueTool = z.strictObject({
  /** The hand torque wrench of the register; what the register says of it counts before what is typed here. */
  toolId: id.nullable().default(null),
  number: text(60),
  scale: z.discriminatedUnion('by', [
    z.strictObject({
      by: z.literal('torque'),
      least: setTorque,
      most: setTorque,
      graduation: entered('torque', { min: 0.01, max: 2e4 }),
    }),
    z.strictObject({
      by: z.literal('step'),
      steps: z
        .array(z.strictObject({ label: text(20), torque: setTorque }))
        .min(1, 'at least one step')
        .max(60, 'at most 60 steps'),
    }),
  ]),
  certificate: optionalText(80).default(''),
  validUntil: date.nullable().default(null),
});
export type TorqueTool = z.output<typeof torqueTool>;

export const settingInput = z.strictObject({
  jointId: id,
  kind: workKind,
  startsOn: date,
  endsOn: date,
  tools: toolSetInput,
  planId: z.string().max(60),
  /** 0 is the joint's own bolting; 1 and up its further bolt sets in their order. */
  boltSet: z.int().min(0).max(8, 'allowed 0 to 8').default(0),
  method: method.default('hydraulic wrench'),
  torqueTool: torqueTool.nullable().default(null),
  /** Simulates the spread of the load; it takes a fraction of a second. */
  withUncertainty: z.boolean().default(false),
});
export type SettingInput = z.input<typeof settingInput>;
export type SettingData = z.output<typeof settingInput>;

export const finding = z.strictObject({
  code: z.enum(FINDING_CODES),
  severity: z.enum(SEVERITIES),
  subject: z.string(),
  value: z.union([z.number(), z.string()]).nullable(),
  limit: z.union([z.number(), z.string()]).nullable(),
  unit: unit.nullable(),
  source: z.string(),
  title: z.string(),
  detail: z.string(),
  remedy: z.string(),
  place: z.strictObject({
    screen: z.enum(['joint', 'tool', 'settings']),
    id: z.string().nullable(),
    field: z.string().nullable(),
  }),
  confirm: tableCells.nullable(),
});

/** One input of a relation. `si` null is shown as "not known"; `text` is set for inputs that are not numbers. */
const workingInput = z.strictObject({
  symbol: z.string(),
  name: z.string(),
  si: z.number().nullable(),
  text: z.string().nullable(),
  unit: unit.nullable(),
  origin: originMark,
  source: z.string(),
});

/** How one number came about. `of` names the number it belongs to. */
export const working = z.strictObject({
  of: z.enum([
    'dial',
    'torque',
    'load',
    'stressTensile',
    'stressRoot',
    'axialOfYield',
    'combinedOfYield',
    'targetLoad',
    'capacity',
    'breakout',
    'studCeiling',
    'uncertainty',
    'protrusion',
    'space',
    'selection',
    'gasketArea',
    'gasketStress',
    'endForce',
    'residualLoad',
    'codeMinimum',
    'limit',
    'split',
    'strength',
    'hotLoad',
    'stretch',
    'strip',
    'rating',
    'toolSetting',
    'interval',
    'reaction',
  ]),
  title: z.string(),
  /** The relation in the trade's symbols. */
  relation: z.string(),
  inputs: z.array(workingInput),
  result: workingInput,
  source: z.string(),
});
export type Working = z.infer<typeof working>;
export type WorkingInput = z.infer<typeof workingInput>;

/** A pressure as dialled: number in the gauge's own unit, and in SI. */
const dial = z.strictObject({ value: z.number(), unit, pressure: z.number() });
export type Dial = z.infer<typeof dial>;

export const passRow = z.strictObject({
  name: z.string(),
  order: z.enum(['by hand', ...planOrder.options]),
  /** Tools that turn at the same time in this pass. */
  tools: planTools,
  /** Studs of each group in the order the groups are turned; null unless the order is in groups and the count known. */
  groups: z.array(z.array(z.int())).nullable(),
  /** Fraction of the target; null for snug. */
  fraction: z.number().nullable(),
  dial: dial.nullable(),
  /** What to set on a tool without pressure. */
  set: z.string().nullable(),
  torque: z.number().nullable(),
  load: z.number().nullable(),
  /** How the technician knows that this bolt is done in this pass. */
  stopWhen: z.string(),
});
export type PassRow = z.infer<typeof passRow>;

export const boltOrder = z.strictObject({
  /** Bolt numbers in the order they are turned, in groups for reading. */
  groups: z.array(z.array(z.int())),
  /** "published list" or "rule of this program". */
  origin: z.enum(['published', 'own rule']),
  source: z.string(),
});
export type BoltOrder = z.infer<typeof boltOrder>;

/** Part of the set with what it may stand. */
export const setPart = z.strictObject({
  role: toolClass,
  toolId: id,
  number: z.string(),
  description: z.string(),
  ratedPressure: z.number().nullable(),
  ratedTorque: z.number().nullable(),
  weakest: z.boolean(),
});
export type SetPart = z.infer<typeof setPart>;

export const breakoutView = z.strictObject({
  /** Torque it was tightened with, and where that is known from. */
  installedTorque: z.number(),
  installedOrigin: originMark,
  installedSource: z.string(),
  /** Common practice: up to 2.5. */
  ratio: z.number(),
  allowance: z.number(),
  /** What a clean joint at unchanged load would need. */
  cleanTorque: z.number().nullable(),
  /** What this set can give, N·m; null when not known. */
  capacity: z.number().nullable(),
  /** Torque at which the stud itself yields when its thread is seized, elastic and plastic section modulus. */
  studCeilingElastic: z.number().nullable(),
  studCeilingPlastic: z.number().nullable(),
  start: dial.nullable(),
  never: dial.nullable(),
});
export type BreakoutView = z.infer<typeof breakoutView>;

export const uncertaintyView = z.strictObject({
  /** Standard uncertainty of the torque, by contributor, N·m. */
  parts: z.array(z.strictObject({ name: z.string(), u: z.number(), basis: z.string() })),
  /** What is missing from the budget, in words; empty when complete. */
  missing: z.array(z.string()),
  torqueRelative: z.number(),
  /** Null when the scatter of K is not known. */
  loadRelative: z.number().nullable(),
  /** Share of the load's variance that comes from friction. */
  frictionShare: z.number().nullable(),
  /** Share of each contributor in the load's variance; empty while the scatter of K is not known. */
  shares: z.array(
    z.strictObject({ name: z.string(), share: z.number(), scope: z.enum(['common', 'per bolt']) }),
  ),
  /** Null unless asked for and everything it needs is known. */
  simulation: simulationView.nullable(),
});

export const caution = z.strictObject({ text: z.string(), source: z.string() });

/** The setting card. All numbers SI unless they carry a unit beside them. */
export const settingCard = z.strictObject({
  coreVersion: z.string(),
  kind: workKind,
  startsOn: date,
  endsOn: date,
  jointId: id,
  jointVersion: z.int(),
  tag: z.string(),
  location: z.string(),
  service: z.string(),
  description: z.string(),
  boltCount: z.int().nullable(),
  planName: z.string(),
  method,
  /** Set of bolts it is for; null when the joint has only one. */
  boltSet: z.strictObject({ index: z.int(), name: z.string() }).nullable(),
  /** What to set on a tool without pressure. */
  toolSetting: z
    .strictObject({
      tool: z.string(),
      kind: method,
      /** "125 N·m" or the step's label. */
      text: z.string(),
      torque: z.number(),
      /** Torque given over torque wanted, less one. */
      deviation: z.number(),
      basis: z.string(),
    })
    .nullable(),
  gauge: z.strictObject({ toolId: id, number: z.string(), unit }).nullable(),
  /** Tightening: what to dial for the full pass. Breakout: where to begin. */
  dial: dial.nullable(),
  targetTorque: z.number().nullable(),
  targetLoad: z.number().nullable(),
  /** What the dialled pressure really gives. */
  torque: z.number().nullable(),
  load: z.number().nullable(),
  stressTensile: z.number().nullable(),
  stressRoot: z.number().nullable(),
  axialOfYield: z.number().nullable(),
  /** With torsion, elastic section modulus. */
  combinedOfYield: z.number().nullable(),
  /** With torsion, plastic section modulus. */
  combinedPlasticOfYield: z.number().nullable(),
  split: splitView.nullable(),
  selection: selectionView.nullable(),
  limits: z.array(limitRow),
  gaskets: z.array(gasketView),
  strength: z.array(strengthRow),
  hot: hotView.nullable(),
  stretch: stretchView.nullable(),
  strip: stripView.nullable(),
  rating: z.array(ratingRow),
  retightening: retighteningView.nullable(),
  toolOrder: toolOrderView.nullable(),
  rules: z.array(rule),
  assumed: z.boolean(),
  passes: z.array(passRow),
  order: boltOrder.nullable(),
  set: z.array(setPart),
  capacity: z.number().nullable(),
  reaction: reactionView.nullable(),
  breakout: breakoutView.nullable(),
  uncertainty: uncertaintyView.nullable(),
  findings: z.array(finding),
  workings: z.array(working),
  cautions: z.array(caution),
  deferral: z.string(),
  /** False while any refusal stands. */
  issuable: z.boolean(),
});
export type SettingCard = z.infer<typeof settingCard>;

/** Whether a part of the register suits a joint, alone with what is chosen already. */
export const suitRow = z.strictObject({
  toolId: id,
  number: z.string(),
  class: toolClass,
  serial: z.string(),
  place: z.string(),
  status: toolData.shape.status,
  /** As in the list of tools. */
  ratings: z.string(),
  validUntil: date.nullable(),
  needsCertificate: z.boolean(),
  state: z.enum(['suits', 'does not suit', 'not known']),
  /** Reducers a head needs to reach the nut. */
  reducerIds: z.array(id),
  /** What stands against it, or what is not known. */
  reasons: z.array(z.string()),
});
export type SuitRow = z.infer<typeof suitRow>;

/** An issued setting: the card frozen at 12 significant digits, with the inputs it was computed from. */
export const issuedSetting = z.strictObject({
  id,
  number: z.string(),
  issuedAt: z.string(),
  issuedBy: z.string(),
  input: settingInput,
  card: settingCard,
  /** Refusals that were set aside, as they stood, with the reason. */
  overrides: z.array(
    z.strictObject({
      code: z.string(),
      findings: z.array(z.strictObject({ subject: z.string(), title: z.string(), detail: z.string() })),
      reason: z.string(),
    }),
  ),
  /** How the issuer's competence stood; null without sign-in. */
  issuerCompetence: z.strictObject({ state: competenceState, reason: z.string() }).nullable(),
  /** Hash of the event that froze it. */
  hash: z.string(),
});
export type IssuedSetting = z.infer<typeof issuedSetting>;

export const settingSummary = z.strictObject({
  id,
  number: z.string(),
  kind: workKind,
  tag: z.string(),
  jointId: id,
  startsOn: date,
  endsOn: date,
  issuedAt: z.string(),
  issuedBy: z.string(),
  dial: dial.nullable(),
  recorded: z.boolean(),
  /** Refusals that were set aside. */
  overrides: z.int(),
});
export type SettingSummary = z.infer<typeof settingSummary>;
