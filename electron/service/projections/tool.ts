import type { ToolData } from '../../../core/contract/tool.ts';
import { describeTool } from '../../../core/text/describe.ts';
import type { Projector } from '../chain/projector.ts';
import { nameKey, searchText, sortKey } from '../fold.ts';
import { insertRows } from '../register/insert.ts';

export const projectTools: Projector<'tool saved'> = async (db, events) => {
  for (const { data } of events) {
    const row = { version: data.version, ...toolColumns(data.data) };
    await db
      .insertInto('tool')
      .values({ id: data.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
  }
  await insertRows(
    db,
    'event_tool',
    events.map(({ id, data }) => ({ event_id: id, tool_id: data.id, role: 'saved', position: 0 })),
  );
};

/** What the register's columns say of a tool. */
export function toolColumns(data: ToolData) {
  const ratings = describeTool(data.properties);
  return {
    number: data.number,
    number_key: nameKey(data.number),
    number_sort: sortKey(data.number),
    serial: data.serial,
    class: data.properties.class,
    status: data.status,
    place: data.place,
    ratings,
    search: searchText(data.number, data.serial, data.properties.class, ratings, data.place, data.status),
    data: JSON.stringify(data),
    serial_key: nameKey(data.serial),
  };
}
