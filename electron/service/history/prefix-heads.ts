import type Database from 'better-sqlite3';
import { rootOfLeaves } from '../../../core/audit/merkle.ts';
import { sha256 } from '../chain/sha256.ts';
import { headLeaf } from './link-hash.ts';

interface LoggedHash {
  readonly id: string;
  readonly originId: string;
  readonly sequence: number;
  readonly hash: string;
  readonly recordedAt: string;
}

export interface PrefixHead extends Omit<LoggedHash, 'hash'> {
  /** Head over this record and all that were written to this file before it. */
  readonly head: string;
  readonly events: number;
}

/**
 * The head after each record, in the order in which they came into this file. Records of several origins may have come
 * in any order; the file keeps that order.
 */
export function* prefixHeads(database: Database.Database, events: number): Generator<PrefixHead> {
  const rows = database
    .prepare<[number], LoggedHash>(
      `select id, origin_id as originId, sequence, hash, recorded_at as recordedAt from event order by rowid limit ?`,
    )
    .iterate(events);
  const leaves = new Map<string, Buffer>();
  let origins: string[] = [];
  let count = 0;
  for (const { hash, ...row } of rows) {
    if (!leaves.has(row.originId)) origins = [...origins, row.originId].toSorted();
    leaves.set(row.originId, headLeaf(row.originId, row.sequence, hash));
    count += 1;
    const inOrder = origins.flatMap((origin) => leaves.get(origin) ?? []);
    const root = inOrder.length === 1 ? inOrder[0] : rootOfLeaves(sha256, inOrder);
    yield { ...row, head: Buffer.from(root ?? []).toString('hex'), events: count };
  }
}
