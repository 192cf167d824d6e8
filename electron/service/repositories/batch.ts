import type { Kysely } from 'kysely';
import type { BatchRow } from '../../../core/contract/recall.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { searchText } from '../fold.ts';
import type { RegisterSchema } from '../register/schema.ts';

/**
 * Batches that went into recorded work, by kind and name, with how often. A site has few enough of them to be looked
 * through by their folded names, as every other search is.
 */
export async function batchPage(
  db: Kysely<RegisterSchema>,
  { text, page, pageSize }: ParsedInput<'batch.list'>,
): Promise<{ rows: BatchRow[]; total: number }> {
  const all = await db
    .selectFrom('batch')
    .select(['id', 'kind', 'name', 'number'])
    .orderBy('kind')
    .orderBy('name_key')
    .orderBy('number_key')
    .execute();
  const words = searchText(text).split(/\s+/);
  const matching = all.filter(({ kind, name, number }) => {
    const folded = searchText(kind, name, number);
    return words.every((word) => folded.includes(word));
  });
  const shown = matching.slice((page - 1) * pageSize, page * pageSize);
  const uses = await usesOf(
    db,
    shown.map(({ id }) => id),
  );
  return { rows: shown.map((row) => ({ ...row, uses: uses.get(row.id) ?? 0 })), total: matching.length };
}

async function usesOf(db: Kysely<RegisterSchema>, ids: readonly string[]): Promise<Map<string, number>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('event_batch')
    .select(({ fn }) => ['batch_id', fn.countAll<number>().as('uses')])
    .where('batch_id', 'in', [...ids])
    .groupBy('batch_id')
    .execute();
  return new Map(rows.map(({ batch_id: id, uses }) => [id, uses]));
}
