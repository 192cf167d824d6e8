import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';

export const projectAttachments: Projector<'attachment added'> = async (db, events) => {
  for (const { id, happenedAt, data } of events) {
    const { owner, hash, name, mediaType, size, personId, remarks } = data;
    const known = await db
      .selectFrom('attachment')
      .select('hash')
      .where('hash', '=', hash)
      .executeTakeFirst();
    if (!known) {
      const added_on = happenedAt.slice(0, 10);
      await insertRows(db, 'attachment', [{ hash, name, media_type: mediaType, size, added_on }]);
    }
    await insertRows(db, 'event_attachment', [{ event_id: id, attachment_hash: hash }]);
    const use = {
      event_id: id,
      attachment_hash: hash,
      name,
      person_id: personId,
      happened_at: happenedAt,
      remarks,
    };
    if (owner.kind === 'joint') {
      await insertRows(db, 'joint_attachment', [{ ...use, joint_id: owner.id }]);
      await insertRows(db, 'event_joint', [{ event_id: id, joint_id: owner.id }]);
    } else {
      const tool_id = owner.kind === 'tool' ? owner.id : null;
      const owner_event_id = owner.kind === 'event' ? owner.id : null;
      await insertRows(db, 'attachment_use', [{ ...use, tool_id, owner_event_id }]);
    }
    if (owner.kind === 'tool') {
      await insertRows(db, 'event_tool', [
        { event_id: id, tool_id: owner.id, role: 'attached', position: 0 },
      ]);
    }
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: personId, role: 'attached', position: 0 },
    ]);
  }
};
