import * as z from 'zod';
import { loadMeasurement } from './measured-load.ts';
import { stintView } from './pass.ts';
import { dialled, torque } from './reading.ts';
import { affectedEvent, caseState } from './recall.ts';
import { method, toolSetInput, torqueTool, workKind } from './setting.ts';
import { entered, id, instant, optionalText, text } from './values.ts';

const common = {
  jointId: id,
  /** The setting it followed; null when the work was done without one, which is recorded and flagged. */
  settingId: id.nullable(),
  happenedAt: instant,
  /** Who did it. */
  personIds: z.array(id).min(1, 'at least one person').max(12),
  /** What was really used; not what the setting said. */
  tools: toolSetInput,
  method: method.default('hydraulic wrench'),
  /** Tool without pressure, for the methods that have one. */
  torqueTool: torqueTool.nullable().default(null),
  /** 0 is the joint's own bolting; 1 and up its further bolt sets in their order. */
  boltSet: z.int().min(0).max(8, 'allowed 0 to 8').default(0),
  remarks: optionalText(2000),
};

/** Something that comes in lots, so that all joints of one lot can be found again. */
export const batchUsed = z.strictObject({
  kind: z.enum(['lubricant', 'gasket', 'stud', 'nut']),
  /** Product class, gasket type or grade; never a brand. */
  name: text(120),
  number: text(80),
});
export type BatchUsed = z.output<typeof batchUsed>;

export const tighteningData = z.strictObject({
  ...common,
  /** What was dialled for the final pass; null for work done without pressure, then `torque` is needed. */
  dialled: dialled.nullable(),
  torque: torque.nullable(),
  /** Residual load of one bolt by the tensioning record; a tensioned joint has no torque. */
  load: entered('force', { min: 100, max: 2e7 }).nullable().default(null),
  /** Loads measured on bolts after the last pass; with the torque they give the nut factor that was really there. */
  loads: loadMeasurement.nullable().default(null),
  /** Studs tightened; fewer than the joint has is recorded as unfinished. */
  boltsTightened: z.int().min(0).max(400),
  finalPassNoTurn: z.boolean(),
  /** Batches as read off what went on; a kind that is not named here is taken from the joint's data. */
  batches: z.array(batchUsed).max(12, 'at most 12 batches').default([]),
  /** Passes it consists of, as they were recorded at the joint. */
  passIds: z.array(id).max(400, 'at most 400').default([]),
});
export type TighteningInput = z.input<typeof tighteningData>;
export type TighteningData = z.output<typeof tighteningData>;

export const breakoutReading = z.strictObject({
  bolt: z.int().min(1).max(400),
  outcome: z.enum(['turned', 'would not turn', 'cut']),
  /** First movement, as torque or as pressure on the gauge; both null when not read. */
  torque: torque.nullable(),
  dialled: dialled.nullable(),
});

export const breakoutData = z.strictObject({
  ...common,
  readings: z.array(breakoutReading).min(1, 'at least one stud').max(400),
});
export type BreakoutInput = z.input<typeof breakoutData>;
export type BreakoutData = z.output<typeof breakoutData>;

/** Torque a reading stands for, and how it is known. */
export const recordedTorque = z.strictObject({
  bolt: z.int().nullable(),
  /** What was dialled, with its unit, as typed. */
  dialled: z.string().nullable(),
  torque: z.number().nullable(),
  outcome: z.enum(['turned', 'would not turn', 'cut']).nullable(),
  /** "read as torque" or the certificate whose line turned the pressure into it. */
  basis: z.string(),
});

export const eventDetail = z.strictObject({
  id,
  kind: workKind,
  jointId: id,
  tag: z.string(),
  settingId: id.nullable(),
  happenedAt: instant,
  recordedAt: instant,
  sequence: z.int(),
  hash: z.string(),
  previousHash: z.string(),
  people: z.array(z.string()),
  tools: z.array(z.strictObject({ id, number: z.string(), role: z.string() })),
  /** Tool without pressure, as it was described with the record. */
  torqueTool: z.strictObject({ number: z.string(), certificate: z.string() }).nullable(),
  torques: z.array(recordedTorque),
  method,
  /** Name of the bolt set; null where the joint has only one. */
  boltSet: z.string().nullable(),
  /** Residual load of a tensioned joint, N. */
  load: z.number().nullable(),
  boltsTightened: z.int().nullable(),
  finalPassNoTurn: z.boolean().nullable(),
  batches: z.array(batchUsed).default([]),
  flags: z.array(z.string()),
  /** What is not known beside it, and stands for no flag. */
  notes: z.array(z.string()).default([]),
  /** Out-of-tolerance cases that reach it, with what each says of it. */
  cases: z
    .array(
      z.strictObject({
        id,
        number: z.string(),
        state: caseState,
        error: z.number().nullable(),
        worst: affectedEvent.shape.worst,
      }),
    )
    .default([]),
  /** Passes a tightening consists of, in their order. */
  passes: z.array(stintView).default([]),
  remarks: z.string(),
});
export type EventDetail = z.infer<typeof eventDetail>;

export const personData = z.strictObject({ name: text(120), role: optionalText(80) });
export const unitData = z.strictObject({ name: text(120) });
