import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';
import { toolLinks } from './tool-links.ts';

export const projectSettings: Projector<'setting issued'> = async (db, events) => {
  for (const { id, recordedAt, data } of events) {
    const { input, card } = data;
    await db
      .insertInto('setting')
      .values({
        id,
        number: data.number,
        kind: input.kind,
        joint_id: input.jointId,
        joint_version: card.jointVersion,
        starts_on: input.startsOn,
        ends_on: input.endsOn,
        issued_at: recordedAt,
        issued_by: data.personId,
        dial_value: card.dial?.value ?? null,
        dial_unit: card.dial?.unit ?? null,
        dial_pa: card.dial?.pressure ?? null,
      })
      .execute();
    await insertRows(db, 'event_joint', [{ event_id: id, joint_id: input.jointId }]);
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: data.personId, role: 'issued', position: 0 },
    ]);
    await insertRows(db, 'event_tool', await toolLinks(db, id, input, null));
    await insertRows(
      db,
      'setting_override',
      (data.overrides ?? []).map(({ code, reason }) => ({ setting_id: id, code, reason })),
    );
  }
};
