import * as z from 'zod';
import { GROUPS } from '../record/field.ts';
import { RECORD_FIELDS } from '../record/field-names.ts';
import { criticality } from './assembly.ts';
import { id } from './values.ts';

const group = z.enum(Object.keys(GROUPS) as [keyof typeof GROUPS, ...(keyof typeof GROUPS)[]]);

/** Where a field is entered: what kind of record, and which field or step of it. */
const place = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('joint'), field: z.string() }),
  z.strictObject({ at: z.literal('step'), step: z.string() }),
  z.strictObject({ at: z.enum(['setting', 'tightening', 'breakout', 'pass', 'people', 'signature']) }),
]);

export const fieldStanding = z.strictObject({
  field: z.enum(RECORD_FIELDS),
  group,
  state: z.enum(['known', 'not applicable', 'missing']),
  required: z.boolean(),
  /** Belongs to the least record of a critical joint. */
  minimum: z.boolean(),
  /** What is known, or why it does not apply; null when missing. */
  shown: z.string().nullable(),
  why: z.string(),
  origins: z.array(z.string()),
  place,
});
export type FieldStanding = z.infer<typeof fieldStanding>;

/** How complete one assembly's record is for the class of its joint. "Not known" counts as missing. */
export const completeness = z.strictObject({
  /** Null while nobody has assessed the joint. */
  class: criticality.nullable(),
  /** Class whose list it is held against: without an assessment the most demanding. */
  heldAgainst: criticality,
  required: z.int(),
  answered: z.int(),
  fields: z.array(fieldStanding),
});
export type Completeness = z.infer<typeof completeness>;

/** The assembly as it stands now, or the one a tightening or breakout belongs to. */
export const completenessInput = z.strictObject({ jointId: id, eventId: id.nullable() });
