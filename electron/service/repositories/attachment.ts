import type { Kysely } from 'kysely';
import type { AttachmentData, AttachmentRow } from '../../../core/contract/attachment.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;

/** A row as the register holds it; how its file stands is not in the register. */
type StoredRow = Omit<AttachmentRow, 'state'>;

/** What is attached to a tool, a joint or an event, oldest first. */
export async function attachmentsOf(db: Db, owner: AttachmentData['owner']): Promise<StoredRow[]> {
  if (owner.kind === 'joint') return attachmentsOfJoint(db, owner.id);
  const rows = await db
    .selectFrom('attachment_use')
    .innerJoin('attachment', 'attachment.hash', 'attachment_use.attachment_hash')
    .innerJoin('event', 'event.id', 'attachment_use.event_id')
    .innerJoin('person', 'person.id', 'attachment_use.person_id')
    .select([
      'attachment_use.event_id as id',
      'attachment.hash',
      'attachment_use.name',
      'attachment.media_type as mediaType',
      'attachment.size',
      'attachment_use.happened_at as addedAt',
      'person.name as person',
      'attachment_use.remarks',
    ])
    .where(owner.kind === 'tool' ? 'attachment_use.tool_id' : 'attachment_use.owner_event_id', '=', owner.id)
    .orderBy('event.happened_at_utc')
    .orderBy('event.sequence')
    .execute();
  return rows.map((row) => ({ ...row, mediaType: row.mediaType as AttachmentRow['mediaType'] }));
}

async function attachmentsOfJoint(db: Db, jointId: string): Promise<StoredRow[]> {
  const rows = await db
    .selectFrom('joint_attachment')
    .innerJoin('attachment', 'attachment.hash', 'joint_attachment.attachment_hash')
    .innerJoin('event', 'event.id', 'joint_attachment.event_id')
    .innerJoin('person', 'person.id', 'joint_attachment.person_id')
    .select([
      'joint_attachment.event_id as id',
      'attachment.hash',
      'joint_attachment.name',
      'attachment.media_type as mediaType',
      'attachment.size',
      'joint_attachment.happened_at as addedAt',
      'person.name as person',
      'joint_attachment.remarks',
    ])
    .where('joint_attachment.joint_id', '=', jointId)
    .orderBy('event.happened_at_utc')
    .orderBy('event.sequence')
    .execute();
  return rows.map((row) => ({ ...row, mediaType: row.mediaType as AttachmentRow['mediaType'] }));
}

export async function findAttachment(db: Db, hash: string) {
  const row = await db
    .selectFrom('attachment')
    .select(['name', 'media_type as mediaType'])
    .where('hash', '=', hash)
    .executeTakeFirst();
  return row ? { ...row, mediaType: row.mediaType as AttachmentRow['mediaType'] } : null;
}
