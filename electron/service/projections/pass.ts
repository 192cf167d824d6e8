import type { Projector } from '../chain/projector.ts';
import { lifeOfPass } from '../life/events.ts';
import { insertRows } from '../register/insert.ts';
import { toUtc } from '../time.ts';
import { advanceStanding } from './life.ts';
import { toolLinks } from './tool-links.ts';

export const projectPasses: Projector<'pass recorded'> = async (db, events) => {
  for (const event of events) {
    const { data, lastBolt, flags } = event.data;
    await db
      .insertInto('pass_record')
      .values({
        id: event.id,
        run_id: data.runId,
        joint_id: data.jointId,
        setting_id: data.settingId,
        bolt_set: data.boltSet,
        pass: data.pass,
        of_passes: data.of,
        round: data.round,
        name: data.name,
        bolts_done: data.boltsDone.length,
        last_bolt: lastBolt,
        stopped: data.stoppedBecause?.reason ?? null,
        started_at: data.startedAt,
        started_at_utc: toUtc(data.startedAt),
        ended_at: data.endedAt,
        ended_at_utc: toUtc(data.endedAt),
        flags: JSON.stringify(flags),
      })
      .execute();
    await insertRows(db, 'event_joint', [{ event_id: event.id, joint_id: data.jointId }]);
    await insertRows(db, 'event_person', [
      ...data.personIds.map((personId, position) => ({
        event_id: event.id,
        person_id: personId,
        role: 'did the work' as const,
        position,
      })),
      ...part(event.id, data.setBy, 'set the gauge', data.personIds.length),
      ...part(event.id, data.confirmedBy, 'confirmed the setting', data.personIds.length + 1),
    ]);
    // A use is counted once, with the tightening the pass belongs to.
    await insertRows(db, 'event_tool', await toolLinks(db, event.id, data, null));
    await advanceStanding(db, data.jointId, lifeOfPass(event.id, event.happenedAt, event.data));
  }
};

function part(
  eventId: string,
  personId: string | null,
  role: 'set the gauge' | 'confirmed the setting',
  position: number,
) {
  return personId === null ? [] : [{ event_id: eventId, person_id: personId, role, position }];
}
