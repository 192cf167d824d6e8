import * as z from 'zod';
import { RECORD_FIELDS } from '../record/field-names.ts';
import { hashText } from './attachment.ts';
import { entered, id, instant, optionalText, text } from './values.ts';

/*
 * What is written down at each step of a joint. A field left blank is not known: null for a value or a list nobody
 * looked at, '' for words, 'not known' for an answer. An empty list says that somebody looked and there was none.
 */

export const answer = z.enum(['yes', 'no', 'not known']).default('not known');

export const length = (max: number) => entered('length', { min: 0, max }).nullable().default(null);
export const temperature = entered('temperature', { min: -273, max: 1200 }).nullable().default(null);
export const pressure = entered('pressure', { min: 0, max: 1e9 }).nullable().default(null);
export const torque = entered('torque', { min: 0, max: 2e5 }).nullable().default(null);
export const words = (max: number) => optionalText(max).default('');
export const person = id.nullable().default(null);
export const moment = instant.nullable().default(null);
export const boltNumber = z.int('a whole number').min(1, 'allowed 1 to 400').max(400, 'allowed 1 to 400');
/** Null: nobody looked. Empty: looked at, none. */
export const bolts = z.array(boltNumber).max(400).nullable().default(null);
const pictures = z.array(hashText).max(20, 'at most 20 pictures').default([]);
export const clock = z.int('a whole hour').min(1, 'allowed 1 to 12').max(12, 'allowed 1 to 12');

/** Fields of the record that don't apply here; each needs its reason, or it counts as missing. */
export const notApplicable = z
  .array(z.strictObject({ field: z.enum(RECORD_FIELDS), reason: text(300) }))
  .max(RECORD_FIELDS.length)
  .default([]);

export const common = {
  notApplicable,
  pictures,
  /** What went otherwise than planned and how it was met; what the next crew should know. */
  problems: words(1000),
  advice: words(1000),
  /** Deviations, management of change. */
  references: words(300),
};

export const soundness = z.enum(['as it should be', 'not as it should be', 'not known']).default('not known');
