import * as z from 'zod';
import { id, instant } from './values.ts';

const MOST = 65_536;

/** Work in progress that is kept in the register until it is recorded or dropped; one of a kind for each record. */
export const draftKind = z.enum(['tightening at the joint', 'breakout at the joint']);
export type DraftKind = z.infer<typeof draftKind>;

const about = { kind: draftKind, subjectId: id };

/** Which window writes, and the version it started from (null for none): what another one wrote is not written over. */
const guard = { writer: id, version: z.int().min(1).nullable() };

export const draftGetInput = z.strictObject(about);

export const draftSaveInput = z.strictObject({
  ...about,
  ...guard,
  /** JSON as text: what stands in it is the window's own business. */
  data: z.string().max(MOST, `at most ${MOST} characters`).refine(isJson, { error: 'text in JSON' }),
});

export const draftDropInput = z.strictObject({ ...about, ...guard });

export const keptDraft = z.strictObject({
  data: z.string(),
  version: z.int(),
  writer: id,
  savedAt: instant,
});

export const draftFound = z.strictObject({ draft: keptDraft.nullable() });
export const draftSaved = z.strictObject({ version: z.int(), savedAt: instant });

function isJson(value: string): boolean {
  try {
    JSON.parse(value);
    return true;
  } catch {
    return false;
  }
}
