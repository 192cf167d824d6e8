import type { SignatureData, SignatureMeaning } from '../../../core/contract/signature.ts';
import { MEANING_SHORT } from '../../../core/text/signature.ts';
import { append } from '../chain/append.ts';
import type { EventKind } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import type { PersonRole } from '../register/schema.ts';

const OF_WORK: readonly SignatureMeaning[] = ['did', 'witnessed', 'reviewed', 'approved'];
const OF_DATA: readonly SignatureMeaning[] = ['did', 'reviewed', 'approved'];

/** What each kind of record can be signed as; a kind that is missing here is not signed. */
const SIGNABLE: Readonly<Partial<Record<EventKind, readonly SignatureMeaning[]>>> = {
  'tightening recorded': OF_WORK,
  'breakout recorded': OF_WORK,
  'pass recorded': OF_WORK,
  'tool checked': OF_WORK,
  'setting issued': OF_DATA,
  'certificate added': ['reviewed', 'approved'],
  'case decided': OF_DATA,
  'case closed': OF_DATA,
  'joint saved': ['reviewed', 'approved'],
};

export const signableAs = (kind: EventKind): readonly SignatureMeaning[] => SIGNABLE[kind] ?? [];

/** Parts of somebody who stood beside the work: their signature as a witness is one of another person. */
const BESIDE: readonly PersonRole[] = ['confirmed the setting', 'confirmed', 'approved', 'attached'];

/** Puts a signature on a record. Whether it is the person's own hand was made sure of before. */
export async function sign(
  context: WriteContext,
  { eventId, hash, meaning, personId }: SignatureData,
): Promise<string> {
  const { db, newId, actor } = context;
  const event = await db
    .selectFrom('event')
    .select(['kind', 'hash'])
    .where('id', '=', eventId)
    .executeTakeFirst();
  if (!event) throw notFound('record', 'data.eventId', eventId);
  const allowed = signableAs(event.kind);
  if (!allowed.includes(meaning)) {
    const may = allowed.length === 0 ? 'none: this kind of record is not signed' : allowed.join(', ');
    throw invalidField('data.meaning', meaning, may);
  }
  if (event.hash !== hash) {
    throw new RequestFailure(
      'refused',
      'The record does not have the content that was to be signed. Read it again; nothing was signed',
      [{ field: 'data.hash', value: hash, allowed: event.hash }],
    );
  }
  await checkPart(context, eventId, meaning, personId);
  const before = await db
    .selectFrom('signature')
    .select('id')
    .where('event_id', '=', eventId)
    .where('person_id', '=', personId)
    .where('meaning', '=', meaning)
    .executeTakeFirst();
  if (before) {
    throw new RequestFailure('duplicate', `This person has signed already: ${MEANING_SHORT[meaning]}`, [
      { field: 'data.meaning', value: meaning, allowed: 'one that this person has not signed with' },
    ]);
  }
  const joints = await db
    .selectFrom('event_joint')
    .select('joint_id')
    .where('event_id', '=', eventId)
    .orderBy('joint_id')
    .execute();
  const id = newId();
  await append(context, [
    {
      kind: 'record signed',
      id,
      data: {
        eventId,
        hash,
        meaning,
        personId,
        kind: event.kind,
        knownBy: actor === null ? 'name' : 'secret',
        jointIds: joints.map(({ joint_id: jointId }) => jointId),
      },
    },
  ]);
  return id;
}

/** Whoever did it signs for having done it; everybody else is another pair of eyes. */
async function checkPart(
  { db }: WriteContext,
  eventId: string,
  meaning: SignatureMeaning,
  personId: string,
): Promise<void> {
  const named = await db
    .selectFrom('event_person')
    .innerJoin('person', 'person.id', 'event_person.person_id')
    .select(['person.id', 'person.name', 'event_person.role'])
    .where('event_person.event_id', '=', eventId)
    .orderBy('event_person.position')
    .execute();
  const doers = named.filter(({ role }) => !BESIDE.includes(role));
  const isDoer = doers.some(({ id }) => id === personId);
  if (isDoer === (meaning === 'did')) return;
  const names = [...new Set(doers.map(({ name }) => name))].join(', ');
  const who = names === '' ? 'nobody is named in it' : names;
  throw new RequestFailure(
    'refused',
    meaning === 'did'
      ? `Only who is named in the record signs for having done it: ${who}`
      : `Nobody witnesses, reviews or approves what they did themselves: ${who}`,
    [
      {
        field: 'data.personId',
        value: personId,
        allowed: meaning === 'did' ? who : 'somebody who did not do it',
      },
    ],
  );
}
