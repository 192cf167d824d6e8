import type Database from 'better-sqlite3';
import { NO_PREVIOUS } from '../../../core/audit/chain.ts';
import { collector } from './findings.ts';
import { linkHash } from './link-hash.ts';
import type { Found } from './tasks.ts';

interface KeptRefusal {
  readonly origin_id: string;
  readonly sequence: number;
  readonly previous_hash: string;
  readonly hash: string;
  readonly body: string;
}

/** What was refused stands in a chain of its own, outside the head: a cut end of it does not show. */
export function checkRefusals(database: Database.Database): Found {
  const found = collector();
  const rows = database
    .prepare<[], KeptRefusal>(
      `select origin_id, sequence, previous_hash, hash, body from refusal order by origin_id, sequence`,
    )
    .iterate();
  let before = { origin: '', sequence: 0, hash: NO_PREVIOUS };
  let looked = 0;
  for (const row of rows) {
    const { origin_id: origin, sequence, hash } = row;
    if (origin !== before.origin) before = { origin, sequence: 0, hash: NO_PREVIOUS };
    if (sequence !== before.sequence + 1) {
      found.add('record missing', `Kept refusals between ${before.sequence} and ${sequence} are gone`);
    } else if (row.previous_hash !== before.hash) {
      found.add('link broken', `Kept refusal ${sequence} follows another one than stands before it`);
    }
    if (linkHash(row.previous_hash, row.body) !== hash) {
      found.add('text changed', `The text of kept refusal ${sequence} no longer gives its hash`);
    }
    before = { origin, sequence, hash };
    looked += 1;
  }
  return found.found(looked);
}
