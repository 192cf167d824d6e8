import * as z from 'zod';
import type { Entered } from '../units/entered.ts';
import { dialled, torque } from './reading.ts';
import { method, toolSetInput, torqueTool } from './setting.ts';
import { entered, id, instant, optionalText, text } from './values.ts';

const bolt = z.int().min(1).max(400, 'allowed 1 to 400');
const bolts = z.array(bolt).max(400);
const passNumber = z.int().min(1).max(40, 'allowed 1 to 40');
const round = z.int().min(1).max(20, 'allowed 1 to 20');

export const STOP_REASONS = [
  'shift change',
  'tool or pump',
  'nut or stud',
  'alarm or permit',
  'weather',
  'other',
] as const;

/** What was seen on one bolt: in a last round a nut stands or turns; one that is left out would not turn or was cut. */
export const passOutcome = z.enum(['done', 'stood', 'turned', 'would not turn', 'cut']);
export type PassOutcome = z.infer<typeof passOutcome>;

export const passReading = z.strictObject({
  bolt,
  outcome: passOutcome,
  dialled: dialled.nullable().default(null),
  torque: torque.nullable().default(null),
  /** Rotation of the nut in this pass, where somebody looked. */
  rotation: entered('angle', { min: 0, max: 63 }).nullable().default(null),
});
export type PassReading = z.output<typeof passReading>;

export const stopped = z.strictObject({
  reason: z.enum(STOP_REASONS),
  words: optionalText(500).default(''),
});
export type Stopped = z.output<typeof stopped>;

/** What one crew did of one pass, until it was finished or the work stopped. */
export const passData = z.strictObject({
  /** One for all passes of one tightening, made by the window that begins it. */
  runId: id,
  jointId: id,
  /** The setting it followed; null is recorded and flagged. */
  settingId: id.nullable(),
  boltSet: z.int().min(0).max(8, 'allowed 0 to 8').default(0),
  method: method.default('hydraulic wrench'),
  torqueTool: torqueTool.nullable().default(null),
  /** Number in the plan, from 1, and how many the plan has. */
  pass: passNumber,
  of: passNumber,
  name: text(80),
  /** A last pass is gone round again while nuts turn: which time round this was. */
  round: round.default(1),
  goRoundAgain: z.boolean().default(false),
  /** In the order they were turned. */
  boltsDone: bolts,
  /** Bolts left as they are, because they would not turn or were cut. */
  leftOut: bolts.default([]),
  /** What was really dialled for this pass; null for a pass by hand. */
  dialled: dialled.nullable(),
  torque: torque.nullable().default(null),
  tools: toolSetInput,
  personIds: z.array(id).min(1, 'at least one person').max(12),
  /** Who set the gauge, and the second person who read it before the first nut; null where nobody did. */
  setBy: id.nullable().default(null),
  confirmedBy: id.nullable(),
  startedAt: instant,
  endedAt: instant,
  readings: z.array(passReading).max(400).default([]),
  /** Null for a pass that was finished. */
  stoppedBecause: stopped.nullable(),
  remarks: optionalText(2000).default(''),
});
export type PassInput = z.input<typeof passData>;
export type PassData = z.output<typeof passData>;

export const passRecordInput = {
  /** Newest event of this joint that the window knows; null for none. */
  seen: id.nullable(),
  data: passData,
};

/** A pass of the plan with the bolts turned at the same moment, one per tool; null where a tool waits. */
export const plannedPass = z.strictObject({
  name: z.string(),
  steps: z.array(z.array(z.int().nullable())),
  /** Shortest wait before it, s; null where it follows at once. */
  wait: z.number().nullable(),
});

/** As it was typed, already validated when it was stored. */
const shownValue = z.custom<Entered>((value) => typeof value === 'object' && value !== null);

export const stintView = z.strictObject({
  eventId: id,
  pass: passNumber,
  name: z.string(),
  round,
  goRoundAgain: z.boolean(),
  people: z.array(z.string()),
  setBy: z.string().nullable(),
  confirmedBy: z.string().nullable(),
  startedAt: instant,
  endedAt: instant,
  dialled: shownValue.nullable(),
  torque: shownValue.nullable(),
  boltsDone: z.array(z.int()),
  leftOut: z.array(z.int()),
  readings: z.array(z.custom<PassReading>((value) => typeof value === 'object' && value !== null)),
  stoppedBecause: stopped.nullable(),
  remarks: z.string(),
  flags: z.array(z.string()),
});
export type StintView = z.infer<typeof stintView>;

export const runStandingView = z.strictObject({
  state: z.enum(['go on', 'finished', 'record unclear']),
  pass: z.int().nullable(),
  passName: z.string().nullable(),
  round: z.int(),
  done: z.array(z.int()),
  next: z.array(z.int()),
  remaining: z.array(z.int()),
  leftOut: z.array(z.int()),
  skipped: z.array(z.int()),
  finishedPasses: z.array(z.int()),
  problems: z.array(z.string()),
});

/** A tightening that was begun and has no record of its end yet. */
export const runView = z.strictObject({
  runId: id,
  settingId: id.nullable(),
  settingNumber: z.string().nullable(),
  boltSet: z.int(),
  of: z.int(),
  lastBolt: z.int().nullable(),
  stints: z.array(stintView),
  /** Null while it follows no setting, so that no plan is known. */
  standing: runStandingView.nullable(),
});
export type RunView = z.infer<typeof runView>;

/** What is half-done on a joint, from whom, and where the crew left off. */
export const openPasses = z.strictObject({
  seen: id.nullable(),
  /** Plan of the setting asked for, or of the open tightening; null where neither is known. */
  plan: z.array(plannedPass).nullable(),
  run: runView.nullable(),
});
export type OpenPasses = z.infer<typeof openPasses>;
