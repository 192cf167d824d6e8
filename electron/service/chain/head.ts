import type { Kysely } from 'kysely';
import { merkleHead } from '../../../core/audit/merkle.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { sha256 } from './sha256.ts';

/** One hash over the last events of all origins; null on a register without events. */
export async function registerHead(db: Kysely<RegisterSchema>): Promise<string | null> {
  const heads = await db
    .selectFrom('event')
    .innerJoin(
      (last) =>
        last
          .selectFrom('event')
          .select(({ fn }) => ['origin_id', fn.max('sequence').as('sequence')])
          .groupBy('origin_id')
          .as('last'),
      (join) =>
        join.onRef('last.origin_id', '=', 'event.origin_id').onRef('last.sequence', '=', 'event.sequence'),
    )
    .select(['event.origin_id as originId', 'event.sequence as sequence', 'event.hash as hash'])
    .execute();
  return heads.length === 0 ? null : merkleHead(sha256, heads);
}
