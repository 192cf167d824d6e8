import type { Projector } from '../chain/projector.ts';
import { nameKey, searchText } from '../fold.ts';
import { insertRows } from '../register/insert.ts';
import { refreshJointsOnFlange } from './joint.ts';

export const projectSiteRows: Projector<'site row saved'> = async (db, events) => {
  for (const { data } of events) {
    const { kind, key, source, retired } = data.data;
    const row = {
      version: data.version,
      source,
      retired: retired ? 1 : 0,
      search: searchText(key, source),
      data: JSON.stringify(data.data),
    };
    await db
      .insertInto('site_row')
      .values({ id: data.id, kind, key, name_key: nameKey(key), ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    if (kind === 'flange') await refreshJointsOnFlange(db, key);
  }
};

export const projectPlans: Projector<'pass plan saved'> = async (db, events) => {
  for (const { data } of events) {
    const { name, source } = data.data;
    const row = {
      version: data.version,
      name,
      name_key: nameKey(name),
      source,
      data: JSON.stringify(data.data),
      approved_by: null,
      approved_at: null,
    };
    await db
      .insertInto('pass_plan')
      .values({ id: data.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};

export const projectPlanApprovals: Projector<'pass plan approved'> = async (db, events) => {
  for (const { id, happenedAt, data } of events) {
    await db
      .updateTable('pass_plan')
      .set({ approved_by: data.personId, approved_at: happenedAt })
      .where('id', '=', data.id)
      .where('version', '=', data.version)
      .execute();
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: data.personId, role: 'approved', position: 0 },
    ]);
  }
};

export const projectConfirmations: Projector<'table values confirmed'> = async (db, events) => {
  for (const { id, happenedAt, data } of events) {
    const { table, key, values, personId, sourceSeen } = data.data;
    await insertRows(
      db,
      'table_confirmation',
      values.map(({ field, value }, position) => ({
        event_id: id,
        position,
        table_name: table,
        row_key: key,
        field,
        value,
        person_id: personId,
        source_seen: sourceSeen,
        happened_at: happenedAt,
      })),
    );
    await insertRows(db, 'event_person', [
      { event_id: id, person_id: personId, role: 'confirmed', position: 0 },
    ]);
  }
};
