import type { Kysely } from 'kysely';
import type { DraftKind } from '../../../core/contract/draft.ts';
import { RequestFailure } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import type { Read, Write } from './handler.ts';

interface About {
  readonly kind: DraftKind;
  readonly subjectId: string;
}

interface Guarded extends About {
  readonly writer: string;
  readonly version: number | null;
}

async function keptDraft(db: Kysely<RegisterSchema>, { kind, subjectId }: About) {
  const row = await db
    .selectFrom('draft')
    .select(['data', 'version', 'writer', 'saved_at as savedAt'])
    .where('kind', '=', kind)
    .where('subject_id', '=', subjectId)
    .executeTakeFirst();
  return row ?? null;
}

/** A window writes over what it wrote itself, whatever became of its last answer, and over what it has read. */
function checkGuard(draft: Awaited<ReturnType<typeof keptDraft>>, { writer, version }: Guarded): void {
  if (draft === null ? version === null : draft.writer === writer || draft.version === version) return;
  const allowed =
    draft === null ? 'none: it was recorded or dropped' : `the current version, ${draft.version}`;
  throw new RequestFailure(
    'conflict',
    'Another window has gone on with this work in the meantime; nothing was written over',
    [{ field: 'version', value: String(version ?? 'none'), allowed }],
  );
}

export const getDraft: Read<'draft.get'> = async ({ db }, about) => ({ draft: await keptDraft(db, about) });

export const saveDraft: Write<'draft.save'> = async ({ db, clock }, input) => {
  const draft = await keptDraft(db, input);
  checkGuard(draft, input);
  // Never a number that an earlier draft of this work had, so that a window that still holds that one is told.
  const version = Math.max((draft?.version ?? 0) + 1, clock().getTime());
  const savedAt = clock().toISOString();
  const values = { writer: input.writer, version, data: input.data, saved_at: savedAt };
  await db
    .insertInto('draft')
    .values({ kind: input.kind, subject_id: input.subjectId, ...values })
    .onConflict((conflict) => conflict.columns(['kind', 'subject_id']).doUpdateSet(values))
    .execute();
  return { version, savedAt };
};

export const dropDraft: Write<'draft.drop'> = async ({ db }, input) => {
  checkGuard(await keptDraft(db, input), input);
  await db
    .deleteFrom('draft')
    .where('kind', '=', input.kind)
    .where('subject_id', '=', input.subjectId)
    .execute();
  return {};
};
