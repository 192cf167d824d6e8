import type { EventDetail } from '../../../core/contract/event.ts';
import type { AffectedEvent } from '../../../core/contract/recall.ts';
import type { ReadContext } from '../context.ts';
import { casesTouching, closureOf, type StoredCase } from './cases.ts';
import { affectedRecord, scopeOf } from './recall.ts';

type Place = Pick<ReadContext, 'db' | 'site'>;

/** Cases that reach a record, with what each of them says of it. */
export async function casesOfRecord(place: Place, eventId: string): Promise<EventDetail['cases']> {
  const reached: EventDetail['cases'] = [];
  for (const one of await casesTouching(place.db, eventId)) {
    const affected = await asSeenBy(place, one, eventId);
    if (affected === null) continue;
    const { error, worst } = affected;
    const state = one.closed === null ? 'open' : 'closed';
    reached.push({ id: one.id, number: one.number, state, error, worst });
  }
  return reached;
}

/** A closed case says what it said on closing; a record that came later is looked at anew. */
async function asSeenBy(place: Place, one: StoredCase, eventId: string): Promise<AffectedEvent | null> {
  if (one.closed !== null) {
    const { recall } = await closureOf(place.db, one.closed.id);
    const frozen = recall.affected.find((event) => event.eventId === eventId);
    if (frozen !== undefined) return frozen;
  }
  return affectedRecord(place, await scopeOf(place, one.data), eventId);
}
