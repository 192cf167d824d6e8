import { append } from '../chain/append.ts';
import { nextVersion, saved } from '../operations/edit.ts';
import type { Read, Write } from './handler.ts';

export const listPeople: Read<'person.list'> = async ({ db }) => {
  const rows = await db
    .selectFrom('person')
    .select(['id', 'name', 'version', 'role'])
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  return { rows, total: rows.length };
};

/** Two people may bear one name. */
export const savePerson: Write<'person.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  const current =
    id === null
      ? null
      : await db
          .selectFrom('person')
          .select(['id', 'version', 'name', 'role'])
          .where('id', '=', id)
          .executeTakeFirst();
  const next = nextVersion('person', id, version, current);
  if (current && current.name === data.name && current.role === data.role) {
    return saved(current.id, current.version);
  }
  const personId = id ?? newId();
  await append(context, [
    { kind: 'person saved', id: newId(), data: { id: personId, version: next, data, importId: null } },
  ]);
  return saved(personId, next);
};
