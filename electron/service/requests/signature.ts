import { verifySecret } from '../access/verify.ts';
import { invalidField, notFound } from '../failure.ts';
import { saved } from '../operations/edit.ts';
import { sign, signableAs } from '../operations/sign.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import type { Read, Write } from './handler.ts';

export const signEvent: Write<'event.sign'> = async (context, { data, secret }) => {
  if (context.actor !== null) {
    if (secret === null) throw invalidField('secret', '', 'the secret of the person who signs');
    // Before anything is written: a wrong one is counted although the signature is refused.
    await verifySecret(context, data.personId, secret, 'signature');
  } else {
    if (secret !== null) throw invalidField('secret', '', 'none: this register works without sign-in');
    await checkPerson(context, 'data.personId', data.personId);
  }
  return saved(await sign(context, data), null);
};

export const readRecord: Read<'history.record'> = async ({ db }, { id }) => {
  const event = await db
    .selectFrom('event')
    .innerJoin('origin', 'origin.id', 'event.origin_id')
    .selectAll('event')
    .select('origin.name as originName')
    .where('event.id', '=', id)
    .executeTakeFirst();
  if (!event) throw notFound('record', 'id', id);
  const { recordedBy = null } = JSON.parse(event.body) as { recordedBy?: string | null };
  const by =
    recordedBy === null
      ? undefined
      : await db.selectFrom('person').select('name').where('id', '=', recordedBy).executeTakeFirst();
  const newer = await db
    .selectFrom('event')
    .select('id')
    .where('supersedes', '=', id)
    .orderBy('recorded_at', 'desc')
    .executeTakeFirst();
  const people = await db
    .selectFrom('event_person')
    .innerJoin('person', 'person.id', 'event_person.person_id')
    .select(['person.id', 'person.name', 'event_person.role as part'])
    .where('event_person.event_id', '=', id)
    .orderBy('event_person.position')
    .execute();
  const joints = await db
    .selectFrom('event_joint')
    .innerJoin('joint', 'joint.id', 'event_joint.joint_id')
    .select(['joint.id', 'joint.tag'])
    .where('event_joint.event_id', '=', id)
    .orderBy('joint.tag_sort')
    .execute();
  const signatures = await db
    .selectFrom('signature')
    .innerJoin('person', 'person.id', 'signature.person_id')
    .select([
      'signature.id',
      'signature.meaning',
      'signature.hash',
      'signature.person_id as personId',
      'person.name as person',
      'signature.known_by as knownBy',
      'signature.signed_at as signedAt',
    ])
    .where('signature.event_id', '=', id)
    .orderBy('signature.signed_at')
    .orderBy('signature.id')
    .execute();
  return {
    id,
    kind: event.kind,
    originName: event.originName,
    sequence: event.sequence,
    hash: event.hash,
    previousHash: event.previous_hash,
    happenedAt: event.happened_at,
    recordedAt: event.recorded_at,
    recordedBy: by?.name ?? null,
    supersedes: event.supersedes,
    supersededBy: newer?.id ?? null,
    body: event.body,
    people,
    joints,
    signatures: signatures.map(({ hash, ...row }) => ({ ...row, matches: hash === event.hash })),
    signable: [...signableAs(event.kind)],
  };
};
