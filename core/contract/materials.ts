import * as z from 'zod';
import { id } from './values.ts';

export const materialKind = z.enum(['gasket', 'stud', 'nut', 'lubricant']);
export type MaterialKind = z.infer<typeof materialKind>;

/** One thing that is needed, with the jobs it is for. */
export const materialRow = z.strictObject({
  kind: materialKind,
  what: z.string(),
  /** Pieces in the joints; of a lubricant the bolts it goes on. */
  pieces: z.int(),
  /** To have ready for studs that are expected seized, from the forecasts; 0 where nothing is opened. */
  spare: z.int(),
  jobs: z.array(z.string()),
});
export type MaterialRow = z.infer<typeof materialRow>;

export const materials = z.strictObject({
  finding: z.string(),
  rows: z.array(materialRow),
  /** What is not known of a job, and what to enter. */
  notKnown: z.array(z.strictObject({ jobId: id, number: z.string(), tag: z.string(), words: z.string() })),
});
export type Materials = z.infer<typeof materials>;
