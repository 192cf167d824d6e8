import type { Projector } from '../chain/projector.ts';
import { nameKey, searchText, sortKey } from '../fold.ts';
import { insertRows } from '../register/insert.ts';
import { toUtc } from '../time.ts';

export const projectCampaigns: Projector<'campaign saved'> = async (db, events) => {
  for (const { data: saved } of events) {
    const { id, version, data } = saved;
    const row = {
      version,
      name: data.name,
      name_key: nameKey(data.name),
      starts_at: data.startsAt,
      starts_at_utc: toUtc(data.startsAt),
      ends_at: data.endsAt,
      ends_at_utc: toUtc(data.endsAt),
      closed: data.closed ? 1 : 0,
      data: JSON.stringify(data),
    };
    await db
      .insertInto('campaign')
      .values({ id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};

export const projectJobs: Projector<'job saved'> = async (db, events) => {
  for (const { id: eventId, happenedAt, happenedAtUtc, data: saved } of events) {
    const { id, version, data, personId, reason } = saved;
    const row = {
      campaign_id: data.campaignId,
      version,
      number: data.number,
      number_key: nameKey(data.number),
      number_sort: sortKey(data.number),
      joint_id: data.jointId,
      scope: data.scope,
      system_key: nameKey(data.system),
      test_pack_key: nameKey(data.testPack),
      dropped: data.dropped ? 1 : 0,
      search: searchText(data.number, data.workOrder, data.system, data.testPack, data.remarks),
      data: JSON.stringify(data),
    };
    await db
      .insertInto('job')
      .values({ id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    await insertRows(db, 'job_version', [
      {
        event_id: eventId,
        job_id: id,
        campaign_id: data.campaignId,
        version,
        happened_at: happenedAt,
        happened_at_utc: happenedAtUtc,
        person_id: personId,
        reason,
        data: JSON.stringify(data),
      },
    ]);
    if (personId !== null) {
      await insertRows(db, 'event_person', [
        { event_id: eventId, person_id: personId, role: 'changed the job', position: 0 },
      ]);
    }
  }
};
