import { append } from '../chain/append.ts';
import { nameKey } from '../fold.ts';
import { duplicateOf, nextVersion, saved } from '../operations/edit.ts';
import type { Read, Write } from './handler.ts';

export const listUnits: Read<'unit.list'> = async ({ db }) => {
  const rows = await db
    .selectFrom('plant_unit')
    .select(({ selectFrom }) => [
      'id',
      'name',
      'version',
      selectFrom('joint')
        .select(({ fn }) => fn.countAll<number>().as('joints'))
        .whereRef('joint.unit_id', '=', 'plant_unit.id')
        .as('joints'),
    ])
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  return {
    rows: rows.map(({ joints, ...unit }) => ({ ...unit, joints: joints ?? 0 })),
    total: rows.length,
  };
};

export const saveUnit: Write<'unit.save'> = async (context, { id, version, data }) => {
  const { db, site, newId } = context;
  const current =
    id === null
      ? null
      : await db
          .selectFrom('plant_unit')
          .select(['id', 'version', 'name'])
          .where('id', '=', id)
          .executeTakeFirst();
  const next = nextVersion('unit', id, version, current);
  const namesake = await db
    .selectFrom('plant_unit')
    .select('id')
    .where('name_key', '=', nameKey(data.name))
    .executeTakeFirst();
  if (namesake && namesake.id !== id) throw duplicateOf('unit', 'data.name', data.name);
  if (current?.name === data.name) return saved(current.id, current.version);
  const unitId = id ?? newId();
  await append(context, [
    {
      kind: 'unit saved',
      id: newId(),
      data: { id: unitId, version: next, siteId: site.id, data, importId: null },
    },
  ]);
  return saved(unitId, next);
};
