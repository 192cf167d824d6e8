import { type Kysely, sql } from 'kysely';
import type { JointData } from '../../../core/contract/joint.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import type { SiteTables } from '../../../core/joint/site-tables.ts';
import { describeBolting, describeFlange } from '../../../core/text/describe.ts';
import type { RecordedEvent } from '../chain/events.ts';
import type { Projector } from '../chain/projector.ts';
import { nameKey, searchText, sortKey } from '../fold.ts';
import { chunks, insertRows } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';

export const projectJoints: Projector<'joint saved'> = async (db, events) => {
  for (const part of chunks(events)) {
    const rows = [];
    for (const { data } of part) {
      const columns = jointColumns(data.data, await siteTablesFor(db, data.data));
      rows.push({ id: data.id, version: data.version, ...columns });
    }
    await db
      .insertInto('joint')
      .values(rows)
      .onConflict((conflict) =>
        conflict.column('id').doUpdateSet(({ ref }) => ({
          unit_id: ref('excluded.unit_id'),
          version: ref('excluded.version'),
          tag: ref('excluded.tag'),
          tag_key: ref('excluded.tag_key'),
          tag_sort: ref('excluded.tag_sort'),
          location: ref('excluded.location'),
          service: ref('excluded.service'),
          service_sort: ref('excluded.service_sort'),
          flange: ref('excluded.flange'),
          bolting: ref('excluded.bolting'),
          grade: ref('excluded.grade'),
          search: ref('excluded.search'),
          valve_key: ref('excluded.valve_key'),
          data: ref('excluded.data'),
        })),
      )
      .execute();
  }
  await nameConfusables(db, events);
  await insertRows(
    db,
    'event_joint',
    events.map(({ id, data }) => ({ event_id: id, joint_id: data.id })),
  );
};

/** The joints each names as confusable with it, as its newest version does. */
async function nameConfusables(
  db: Kysely<RegisterSchema>,
  events: readonly RecordedEvent<'joint saved'>[],
): Promise<void> {
  const newest = new Map(events.map(({ data }) => [data.id, data.data]));
  for (const part of chunks([...newest])) {
    await db
      .deleteFrom('joint_confusable')
      .where(
        'joint_id',
        'in',
        part.map(([id]) => id),
      )
      .execute();
    const rows = part.flatMap(([id, data]) => {
      const keys = new Set((identityOf(data).confusableWith ?? []).map(({ tag }) => nameKey(tag)));
      return [...keys].map((key) => ({ joint_id: id, tag_key: key }));
    });
    await insertRows(db, 'joint_confusable', rows);
  }
}

/** Joints that take their bolting from a site's flange row, once the row has changed. */
export async function refreshJointsOnFlange(db: Kysely<RegisterSchema>, key: string): Promise<void> {
  const rows = await db
    .selectFrom('joint')
    .select(['id', 'data'])
    .where(sql<string>`json_extract(data, '$.flange.siteRow')`, 'is not', null)
    .execute();
  for (const { id, data: text } of rows) {
    const data = JSON.parse(text) as JointData;
    if (data.flange.kind !== 'custom' || nameKey(data.flange.siteRow ?? '') !== nameKey(key)) continue;
    const { bolting, search } = jointColumns(data, await siteTablesFor(db, data));
    await db.updateTable('joint').set({ bolting, search }).where('id', '=', id).execute();
  }
}

function jointColumns(data: JointData, site: SiteTables) {
  const flange = describeFlange(data.flange);
  const { boltCount, thread } = resolveJoint(data, site);
  const bolting = describeBolting({ count: boltCount, thread: thread?.value.designation ?? null });
  const { grade } = data.bolting;
  const { system, line, drawing, valve, testPack, isolationBoundary } = identityOf(data);
  const identity = [system, line, drawing, valve, testPack, isolationBoundary];
  return {
    unit_id: data.unitId,
    tag: data.tag,
    tag_key: nameKey(data.tag),
    tag_sort: sortKey(data.tag),
    location: data.location,
    service: data.service,
    service_sort: sortKey(data.service),
    flange,
    bolting,
    grade,
    search: searchText(data.tag, data.location, data.service, flange, bolting, grade, ...identity),
    valve_key: nameKey(valve),
    data: JSON.stringify(data),
  };
}
