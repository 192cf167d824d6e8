import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';

export const projectSite: Projector<'register created'> = async (db, events) => {
  for (const { data } of events) {
    const { id, name, timeZone, demo } = data.site;
    await db
      .insertInto('site')
      .values({ id, name, time_zone: timeZone, demo: demo ? 1 : 0 })
      .execute();
  }
};

export const projectUnits: Projector<'unit saved'> = async (db, events) => {
  for (const { data } of events) {
    const row = { version: data.version, name: data.data.name, name_key: nameKey(data.data.name) };
    await db
      .insertInto('plant_unit')
      .values({ id: data.id, site_id: data.siteId, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};

export const projectPeople: Projector<'person saved'> = async (db, events) => {
  for (const { data } of events) {
    const { name, role } = data.data;
    const row = { version: data.version, name, name_key: nameKey(name), role };
    await db
      .insertInto('person')
      .values({ id: data.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
};
