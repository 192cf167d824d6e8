import * as z from 'zod';
import { hashText } from './attachment.ts';
import { notApplicable } from './evidence-fields.ts';
import { entered, optionalText, text } from './values.ts';

const words = (max: number) => optionalText(max).default('');

/** Which side of a valve a joint lies on, by the direction of normal flow. */
export const valveSide = z.enum(['upstream', 'downstream', 'bonnet']);

export const jointType = z.enum([
  'pipe flange',
  'valve or equipment nozzle',
  'girth flange',
  'manway',
  'bonnet',
  'blind',
  'clamp connector',
  'compact flange',
  'other',
]);

/** What tells this joint from the ones beside it. Blank is not known. */
export const jointIdentity = z
  .strictObject({
    type: jointType.nullable().default(null),
    system: words(80),
    /** Number of the line or the equipment it belongs to. */
    line: words(80),
    drawing: words(80),
    revision: words(20),
    /** A fixed thing nearby, and where the joint lies from it. */
    landmark: words(160),
    direction: words(80),
    distance: entered('length', { min: 0, max: 1000 }).nullable().default(null),
    /** Grid or elevation as the drawing gives it. */
    grid: words(80),
    valve: words(60),
    valveSide: valveSide.nullable().default(null),
    /** Tags or names of the joints next to it on the same line; null: not known. */
    neighbours: z.array(text(60)).max(8, 'at most 8').nullable().default(null),
    testPack: words(80),
    isolationBoundary: words(80),
    /** Where bolt 1 is marked. */
    numberingMark: words(160),
    photo: hashText.nullable().default(null),
    /** Joints it has been, or could be, taken for, and how to tell them apart; null: nobody has looked. */
    confusableWith: z
      .array(z.strictObject({ tag: text(60), tell: words(200) }))
      .max(20, 'at most 20')
      .nullable()
      .default(null),
    notApplicable,
  })
  .prefault({});
export type JointIdentity = z.output<typeof jointIdentity>;
