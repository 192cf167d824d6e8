import * as z from 'zod';
import { attachmentRow } from './attachment.ts';
import { checkRow, dueRow } from './check.ts';
import { moveRow } from './custody.ts';
import { caseSummary } from './recall.ts';
import { certificateDetail, type toolData } from './tool.ts';
import { date, id, instant } from './values.ts';

/** One event in which the tool was really used. */
export const useRow = z.strictObject({
  eventId: id,
  kind: z.enum(['tightening', 'breakout']),
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  role: z.string(),
  /** Pressure that was dialled, Pa; the highest reading of a breakout. */
  pressure: z.number().nullable(),
  /** N·m */
  torque: z.number().nullable(),
  flags: z.int(),
});
export type UseRow = z.infer<typeof useRow>;

/** Delivered torque at one pressure by two successive certificates. */
const driftPoint = z.strictObject({
  pressure: z.number(),
  before: z.number(),
  after: z.number(),
  /** (after − before)/before */
  change: z.number(),
  uncertainty: z.number().nullable(),
});

/** What the certificates say together: each in words, with the numbers behind it. */
export const calibrationHistory = z.strictObject({
  drift: z
    .strictObject({
      from: z.string(),
      to: z.string(),
      points: z.array(driftPoint),
      significant: z.boolean().nullable(),
      text: z.string(),
    })
    .nullable(),
  /** When as-found results reach their limit; the text says when there are too few. */
  forecast: z.strictObject({
    on: date.nullable(),
    earliest: date.nullable(),
    latest: date.nullable(),
    text: z.string(),
  }),
  interval: z.strictObject({ days: z.int().nullable(), uses: z.int().nullable(), text: z.string() }),
});
export type CalibrationHistory = z.infer<typeof calibrationHistory>;

/** Everything an auditor asks of one tool, for one page. */
export const toolRecord = z.strictObject({
  id,
  version: z.int(),
  data: z.custom<z.output<typeof toolData>>((value) => typeof value === 'object' && value !== null),
  holder: z.string().nullable(),
  due: z.array(dueRow),
  certificates: z.array(certificateDetail),
  history: calibrationHistory,
  moves: z.array(moveRow),
  checks: z.array(checkRow),
  cases: z.array(caseSummary),
  attachments: z.array(attachmentRow),
  counters: z.strictObject({
    uses: z.int(),
    sinceCertificate: z.int().nullable(),
    /** Studs turned since the certificate, each pass counted once; null where no record says. */
    turnsSinceCertificate: z.int().nullable(),
    firstUse: instant.nullable(),
    lastUse: instant.nullable(),
  }),
  /** Newest first, at most 50; `tool.uses` has all. */
  uses: z.array(useRow),
  /** Head of the register when it was read. */
  head: z.string().nullable(),
  readAt: instant,
});
export type ToolRecord = z.infer<typeof toolRecord>;
