import * as z from 'zod';
import { id, instant } from './values.ts';

/**
 * What a verification can find. "Text changed": a record's text no longer gives its hash. "Link broken": it follows
 * another record than the one before it. "Column differs from text": what lists show is not what was recorded.
 */
export const tamperKind = z.enum([
  'text changed',
  'link broken',
  'record missing',
  'records reordered',
  'head not reached',
  'cut tail or older file',
  'column differs from text',
  'row without its record',
  'row missing',
  'signature differs',
  'attachment changed',
  'attachment missing',
  'trigger missing',
  'schema differs',
  'file damaged',
]);
export type TamperKind = z.infer<typeof tamperKind>;

export const historyFinding = z.strictObject({
  kind: tamperKind,
  /** The record it is about; null where it is about none, or about one that is gone. */
  originId: z.string().nullable(),
  sequence: z.int().nullable(),
  eventId: z.string().nullable(),
  detail: z.string(),
});
export type HistoryFinding = z.infer<typeof historyFinding>;

/**
 * A head as it stands on paper, spaces and all: without the number of records it is looked for in the whole history.
 * Its first 16 digits tell it from every other as well as a person will ever need; nobody types 64.
 */
export const earlierHead = z.strictObject({
  head: z
    .string()
    .max(200, 'at most 64 digits')
    .transform((typed) => typed.replace(/\s/g, '').toLowerCase())
    .pipe(z.string().regex(/^[0-9a-f]{16,64}$/, 'the first 16 digits at least, of 0 to 9 and a to f')),
  events: z.int().min(1).max(1e9).nullable().default(null),
});
export type EarlierHead = z.output<typeof earlierHead>;

export const headSource = z.enum(['typed', 'backup', 'export']);

/** Where a history stood when it had a head. */
export const headPlace = z.strictObject({
  originId: z.string(),
  originName: z.string(),
  sequence: z.int(),
  eventId: z.string(),
  recordedAt: instant,
  /** Records in all, over every origin, up to and with this one. */
  events: z.int(),
});

export const headComparison = z.strictObject({
  source: headSource,
  /** Which backup or export; empty for a typed one. */
  name: z.string(),
  head: z.string(),
  events: z.int().nullable(),
  outcome: z.enum([
    'is the newest',
    'reached',
    /** What was given is the hash of one record, not a head. */
    'is a record',
    'not in this history',
    /** A copy of another register that lies in the same folder. */
    'another register',
    'can not be read',
  ]),
  at: headPlace.nullable(),
});
export type HeadComparison = z.infer<typeof headComparison>;

/** "chain": texts, links, columns of the log, heads, schema, files. "everything": every table worked out again too. */
export const verifyDepth = z.enum(['chain', 'everything']);

export const verifyInput = z.strictObject({
  depth: verifyDepth.default('chain'),
  earlier: earlierHead.nullable().default(null),
});

export const verification = z.strictObject({
  sound: z.boolean(),
  depth: verifyDepth,
  events: z.int(),
  head: z.string().nullable(),
  origins: z.array(
    z.strictObject({ id: z.string(), name: z.string(), events: z.int(), hash: z.string().nullable() }),
  ),
  /** At most so many are listed; `findingsTotal` counts them all. */
  findings: z.array(historyFinding),
  findingsTotal: z.int(),
  comparisons: z.array(headComparison),
  /** What was looked at, and how much of it: nothing that was not looked at is called sound. */
  looked: z.array(z.strictObject({ what: z.string(), count: z.int() })),
  notLooked: z.array(z.string()),
});
export type Verification = z.infer<typeof verification>;

/** A finished export, in the data folder. */
export const historyExport = z.strictObject({
  name: z.string(),
  folder: z.string(),
  bytes: z.int(),
  events: z.int(),
  attachments: z.int(),
  head: z.string().nullable(),
});
export type HistoryExport = z.infer<typeof historyExport>;

/** Work in the background, as it stands. */
export const historyJob = z.strictObject({
  id,
  task: z.enum(['verify', 'export']),
  state: z.enum(['running', 'done', 'cancelled', 'failed']),
  startedAt: instant,
  seconds: z.number(),
  /** Amount of work done and in all; a record to be read counts one. */
  done: z.number(),
  total: z.number(),
  verification: verification.nullable(),
  exported: historyExport.nullable(),
  problem: z.string().nullable(),
});
export type HistoryJob = z.infer<typeof historyJob>;

/** One piece of an export, so that the window can hand the file on. */
export const exportPart = z.strictObject({
  /** In base64. */
  content: z.string(),
  /** Where the next piece begins; null after the last. */
  next: z.int().nullable(),
  bytes: z.int(),
});

export type ExportPart = z.infer<typeof exportPart>;

/** Name of a file the service wrote itself; nothing else is read by it. */
export const exportName = z
  .string()
  .regex(/^history-\d{8}T\d{6}Z(-\d+)?\.jsonl$/, 'the name of an export in the data folder');
