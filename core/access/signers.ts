import type { RequestName } from '../contract/names.ts';
import { valueAt } from './value-at.ts';

/**
 * Fields in which a person answers for what the request does: with sign-in they name whoever is signed in, and nobody
 * else. Who did the work, and who read the gauge beside them, is told of several people by one of them; it is a
 * statement of whoever recorded it, and each of them can sign the record.
 */
export const SIGNERS: Readonly<Partial<Record<RequestName, readonly string[]>>> = {
  'tool.move': ['data.personId'],
  'tool.check': ['data.personId'],
  'attachment.add': ['data.personId'],
  'case.open': ['data.personId'],
  'case.decide': ['data.personId'],
  'case.close': ['data.personId'],
  'joint.step': ['data.by', 'data.evidence.witnessId'],
  'deviation.decide': ['data.personId'],
  'cycles.record': ['data.personId'],
  'event.sign': ['data.personId'],
  'setting.issue': ['personId'],
  'job.save': ['personId'],
  'plan.approve': ['personId'],
  'tableValue.confirm': ['data.personId'],
};

/** A field that names another person than the one who is signed in. */
export interface SignedForAnother {
  readonly field: string;
  readonly personId: string;
}

/**
 * Finds fields in which somebody would sign for another person.
 *
 * @param name request of the map
 * @param input what is sent with it
 * @param personId whoever is signed in
 * @returns the fields that name somebody else; none when nobody is signed for
 * @example signedForAnother('plan.approve', { personId: 'b' }, 'a')[0].field // 'personId'
 * @source rule of this program
 */
export function signedForAnother(name: RequestName, input: unknown, personId: string): SignedForAnother[] {
  return (SIGNERS[name] ?? []).flatMap((field) => {
    const named = valueAt(input, field);
    return typeof named === 'string' && named !== personId ? [{ field, personId: named }] : [];
  });
}
