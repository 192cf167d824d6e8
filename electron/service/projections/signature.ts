import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';

export const projectSignatures: Projector<'record signed'> = async (db, events) => {
  for (const { id, recordedAt, data } of events) {
    const { eventId, hash, meaning, personId, knownBy, jointIds } = data;
    await insertRows(db, 'signature', [
      {
        id,
        event_id: eventId,
        hash,
        meaning,
        person_id: personId,
        known_by: knownBy,
        signed_at: recordedAt,
      },
    ]);
    await insertRows(
      db,
      'event_joint',
      jointIds.map((jointId) => ({ event_id: id, joint_id: jointId })),
    );
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: personId, role: 'signed', position: 0 },
    ]);
  }
};
