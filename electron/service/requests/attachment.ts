import { type AttachmentData, LARGEST_ATTACHMENT } from '../../../core/contract/attachment.ts';
import { append } from '../chain/append.ts';
import type { EventKind } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { attachmentsWithState } from '../operations/attachment-states.ts';
import { saved } from '../operations/edit.ts';
import { looksLike } from '../operations/media.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import { hashOf, readAttachment, storeAttachment } from '../register/attachment-files.ts';
import { attachmentsOf, findAttachment } from '../repositories/attachment.ts';
import { findJoint } from '../repositories/joint.ts';
import { findTool } from '../repositories/tool.ts';
import type { Read, Write } from './handler.ts';

/** Records that a paper or picture can speak for. */
const OWNING: readonly EventKind[] = [
  'certificate added',
  'tool checked',
  'tool moved',
  'case opened',
  'tightening recorded',
  'breakout recorded',
];

export const listAttachments: Read<'attachment.list'> = async (context, owner) => {
  const rows = await attachmentsWithState(context, owner);
  return { rows, total: rows.length };
};

export const getAttachment: Read<'attachment.get'> = async ({ db, attachments }, { hash }) => {
  const known = await findAttachment(db, hash);
  if (known === null) throw notFound('attachment', 'hash', hash);
  const { state, content } = readAttachment(attachments, hash);
  return { ...known, content: content?.toString('base64') ?? null, intact: state === 'intact' };
};

/** The file is safe on the disk before the event names it; a file that no event names does no harm. */
export const addAttachment: Write<'attachment.add'> = async (context, { data }) => {
  const { content: encoded, ...named } = data;
  const content = Buffer.from(encoded, 'base64');
  checkContent(data, content);
  await checkOwner(context, data.owner);
  await checkPerson(context, 'data.personId', data.personId);
  const hash = hashOf(content);
  const twin = (await attachmentsOf(context.db, data.owner)).find((row) => row.hash === hash);
  if (twin) {
    throw new RequestFailure('duplicate', `The same file is attached here already, as "${twin.name}"`, [
      { field: 'data.content', value: data.name, allowed: 'a file that is not attached here yet' },
    ]);
  }
  storeAttachment(context.attachments, hash, content);
  const id = context.newId();
  await append(context, [{ kind: 'attachment added', id, data: { ...named, hash, size: content.length } }]);
  return saved(id, null);
};

function checkContent({ name, mediaType }: AttachmentData, content: Buffer): void {
  if (content.length === 0)
    throw invalidField('data.content', name, 'a file with content; this one is empty');
  if (content.length > LARGEST_ATTACHMENT) {
    throw invalidField('data.content', name, `at most ${LARGEST_ATTACHMENT / 1e6} MB`);
  }
  if (!looksLike(mediaType, content)) {
    throw invalidField('data.mediaType', mediaType, `what "${name}" is: its first bytes are of another type`);
  }
}

async function checkOwner({ db }: WriteContext, owner: AttachmentData['owner']): Promise<void> {
  if (owner.kind === 'tool') {
    if ((await findTool(db, owner.id)) === null) throw notFound('tool', 'data.owner.id', owner.id);
    return;
  }
  if (owner.kind === 'joint') {
    if ((await findJoint(db, owner.id)) === null) throw notFound('joint', 'data.owner.id', owner.id);
    return;
  }
  const event = await db.selectFrom('event').select('kind').where('id', '=', owner.id).executeTakeFirst();
  if (!event || !OWNING.includes(event.kind)) {
    throw notFound('certificate, check, move, case or piece of work', 'data.owner.id', owner.id);
  }
}
