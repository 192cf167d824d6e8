import type Database from 'better-sqlite3';
import type { HeadComparison } from '../../../core/contract/history.ts';
import { type EarlierClaim, earlierClaims } from './earlier-heads.ts';
import { type PrefixHead, prefixHeads } from './prefix-heads.ts';
import type { Place, TaskOf } from './tasks.ts';

type At = HeadComparison['at'];

/** Looks for every earlier head that is known, typed or found in the data folder, in the history as it stands. */
export function findHeads(
  database: Database.Database,
  place: Place,
  { typed, events }: TaskOf<'heads'>,
  onTick: (records: number) => void,
): HeadComparison[] {
  const claims = earlierClaims(database, place.folder, typed);
  const wanted = new Set(claims.flatMap((claim) => ('head' in claim ? claim.head : [])));
  /** Of a head typed in part, its first digits. */
  const start = typed !== null && typed.head.length < WHOLE ? typed.head : null;
  const reached = new Map<string, PrefixHead>();
  let newest: string | null = null;
  let ticked = 0;
  if (wanted.size > 0) {
    for (const prefix of prefixHeads(database, events)) {
      newest = prefix.head;
      if (wanted.has(prefix.head) && !reached.has(prefix.head)) reached.set(prefix.head, prefix);
      if (start !== null && prefix.head.startsWith(start) && !reached.has(start)) reached.set(start, prefix);
      if (prefix.events % TICK === 0) {
        onTick(TICK);
        ticked += TICK;
      }
    }
  }
  onTick(events - ticked);
  const names = new Map(database.prepare<[], [string, string]>('select id, name from origin').raw().all());
  const placeOf = ({ head: _, id, ...prefix }: PrefixHead): At => ({
    ...prefix,
    eventId: id,
    originName: names.get(prefix.originId) ?? 'not named',
  });
  return claims.map((claim) => compare(database, claim, { reached, newest, placeOf }));
}

const TICK = 10_000;
const WHOLE = 64;

interface Reached {
  readonly reached: ReadonlyMap<string, PrefixHead>;
  readonly newest: string | null;
  readonly placeOf: (prefix: PrefixHead) => At;
}

function compare(
  database: Database.Database,
  claim: EarlierClaim,
  { reached, newest, placeOf }: Reached,
): HeadComparison {
  const { source, name } = claim;
  if ('problem' in claim) return { source, name, head: '', events: null, outcome: claim.problem, at: null };
  const { head, events } = claim;
  const common = { source, name, head, events };
  const prefix = reached.get(head);
  if (prefix) {
    return { ...common, outcome: prefix.head === newest ? 'is the newest' : 'reached', at: placeOf(prefix) };
  }
  const record = source === 'typed' ? recordWithHash(database, head) : undefined;
  if (record) return { ...common, outcome: 'is a record', at: placeOf(record) };
  return { ...common, outcome: 'not in this history', at: null };
}

/** An event page shows the hash of its record; whoever types that one is told so. */
function recordWithHash(database: Database.Database, hash: string): PrefixHead | undefined {
  return database
    .prepare<[string, string], PrefixHead>(
      `select id, origin_id as originId, sequence, recorded_at as recordedAt, hash as head,
         (select count(*) from event as before where before.rowid <= event.rowid) as events
         from event where hash between ? and ? || 'g' limit 1`,
    )
    .get(hash, hash);
}
