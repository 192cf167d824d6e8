import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';
import { insertRows } from '../register/insert.ts';

export const projectKits: Projector<'kit saved'> = async (db, events) => {
  for (const { id: eventId, data: saved } of events) {
    const { id, version, data } = saved;
    const row = {
      version,
      name: data.name,
      name_key: nameKey(data.name),
      from_day: data.from,
      to_day: data.to,
      closed: data.closed ? 1 : 0,
      data: JSON.stringify(data),
    };
    await db
      .insertInto('kit')
      .values({ id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    await db.deleteFrom('kit_tool').where('kit_id', '=', id).execute();
    await db.deleteFrom('kit_joint').where('kit_id', '=', id).execute();
    await insertRows(
      db,
      'kit_tool',
      data.toolIds.map((toolId, position) => ({ kit_id: id, tool_id: toolId, position })),
    );
    await insertRows(
      db,
      'kit_joint',
      data.jointIds.map((jointId, position) => ({ kit_id: id, joint_id: jointId, position })),
    );
    await insertRows(
      db,
      'event_tool',
      data.toolIds.map((toolId, position) => ({
        event_id: eventId,
        tool_id: toolId,
        role: 'in kit' as const,
        position,
      })),
    );
  }
};
