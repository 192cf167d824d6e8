import * as z from 'zod';
import { unitsOf } from '../units/units.ts';
import { id, text } from './values.ts';

export const importKind = z.enum(['joints', 'tools', 'certificate', 'jobs']);
export type ImportKind = z.infer<typeof importKind>;

const choice = (units: string[]) => z.enum(units as [string, ...string[]]);

/** Asked once for the file and never guessed. Units apply to every column of that quantity. */
export const importOptions = z.strictObject({
  encoding: z.enum(['utf-8', 'windows-1252', 'utf-16le']),
  delimiter: z.enum([',', ';', '\t']),
  decimalSign: z.enum(['.', ',']),
  units: z.strictObject({
    length: choice(unitsOf('length')),
    stress: choice(unitsOf('stress')),
    pressure: choice(unitsOf('pressure')),
    torque: choice(unitsOf('torque')),
    temperature: choice(unitsOf('temperature')),
  }),
});
export type ImportOptions = z.infer<typeof importOptions>;

export const importInput = z.strictObject({
  kind: importKind,
  fileName: text(260),
  /** The file's bytes, base64. */
  content: z.base64().max(60_000_000, 'at most 45 MB'),
  options: importOptions,
  /** Jobs are of a campaign; of no other kind. */
  campaignId: id.nullable().default(null),
});
export type ImportInput = z.input<typeof importInput>;

/** One fault: line in the file, column heading, what stood there, what is allowed. */
export const importFault = z.strictObject({
  line: z.int(),
  column: z.string(),
  value: z.string(),
  allowed: z.string(),
});
export type ImportFault = z.infer<typeof importFault>;

export const importReport = z.strictObject({
  /** Hash of bytes and options; the confirmation must name it, so that what was seen is what is written. */
  fingerprint: z.string(),
  columns: z.array(z.string()),
  unknownColumns: z.array(z.string()),
  missingColumns: z.array(z.string()),
  rows: z.int(),
  good: z.int(),
  added: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  /** First faults, in file order; `faultCount` counts all. */
  faults: z.array(importFault),
  faultCount: z.int(),
  faultyRows: z.int(),
  /** First good rows as they will be read: heading → text with unit. */
  sample: z.array(z.record(z.string(), z.string())),
  /** Faults of the file as a whole; when there is one, nothing can be imported. */
  fileFault: z.string().nullable(),
});
export type ImportReport = z.infer<typeof importReport>;

export const importConfirm = importInput.extend({
  fingerprint: z.string(),
  /** Faulty rows may be left out only when the person says so. */
  leaveOutFaulty: z.boolean(),
});

export const importDone = z.strictObject({
  eventId: id,
  added: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  leftOut: z.int(),
});
export type ImportDone = z.infer<typeof importDone>;

/** Headings a file may have, for the import page and the downloadable empty file. */
export const importColumn = z.strictObject({
  heading: z.string(),
  needed: z.boolean(),
  meaning: z.string(),
  example: z.string(),
});
export type ImportColumn = z.infer<typeof importColumn>;
