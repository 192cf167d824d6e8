import type { EventDetail } from '../../../core/contract/event.ts';
import type { AffectedEvent } from '../../../core/contract/recall.ts';
import type { ReadContext } from '../context.ts';
import { casesTouching, closureOf, type StoredCase } from './cases.ts';
import { affectedRecord, asClosed, scopeOf } from './recall.ts';

type Place = Pick<ReadContext, 'db' | 'site'>;

interface NamedRecord {
  readonly eventId: string;
  readonly jointId: string;
}

/** Cases that reach a record, with what each of them says of it. */
export async function casesOfRecord(place: Place, record: NamedRecord): Promise<EventDetail['cases']> {
  const reached: EventDetail['cases'] = [];
  for (const one of await casesTouching(place.db, record.eventId)) {
    const affected = await asSeenBy(place, one, record);
    if (affected === null) continue;
    const { error, worst } = affected;
    const state = one.closed === null ? 'open' : 'closed';
    reached.push({ id: one.id, number: one.number, state, error, worst });
  }
  return reached;
}

/** A closed case says what it said on closing; a record that came later is looked at anew. */
async function asSeenBy(place: Place, one: StoredCase, record: NamedRecord): Promise<AffectedEvent | null> {
  const scope = await scopeOf(place, one.data);
  if (one.closed === null) return affectedRecord(place, scope, record);
  const { recall } = await closureOf(place.db, one.closed.id);
  const frozen = recall.affected.find((event) => event.eventId === record.eventId);
  return frozen ?? affectedRecord(place, asClosed(scope, recall), record);
}
