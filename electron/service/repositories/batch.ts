import { type Kysely, sql } from 'kysely';
import type { BatchRow } from '../../../core/contract/recall.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { likePatterns } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** Batches that went into recorded work, by kind and name, with how often. */
export async function batchPage(
  db: Kysely<RegisterSchema>,
  { text, page, pageSize }: ParsedInput<'batch.list'>,
): Promise<{ rows: BatchRow[]; total: number }> {
  let matching = db.selectFrom('batch');
  for (const pattern of likePatterns(text)) {
    matching = matching.where(
      sql<boolean>`(batch.name_key || ' ' || batch.number_key || ' ' || batch.kind) like ${pattern} escape '\\'`,
    );
  }
  const { total } = await matching
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const rows = await matching
    .select([
      'batch.id',
      'batch.kind',
      'batch.name',
      'batch.number',
      sql<number>`(select count(*) from event_batch where event_batch.batch_id = batch.id)`.as('uses'),
    ])
    .orderBy('batch.kind')
    .orderBy('batch.name_key')
    .orderBy('batch.number_key')
    .limit(pageSize)
    .offset((page - 1) * pageSize)
    .execute();
  return { rows, total };
}
