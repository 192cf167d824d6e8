import type { RequestOutput } from '../../../core/contract/requests.ts';
import { checkNameIsFree } from '../access/names.ts';
import { storedRoles } from '../access/present.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { RequestFailure } from '../failure.ts';
import { nextVersion, saved } from '../operations/edit.ts';
import type { Read, Write } from './handler.ts';

type PersonRow = RequestOutput<'person.list'>['rows'][number];

export const listPeople: Read<'person.list'> = async ({ db }) => {
  const rows = await db
    .selectFrom('person')
    .leftJoin('person_roles', 'person_roles.person_id', 'person.id')
    .leftJoin('person_secret', 'person_secret.person_id', 'person.id')
    .select([
      'person.id',
      'person.name',
      'person.version',
      'person.role',
      'person_roles.roles',
      'person_roles.version as rolesVersion',
      'person_secret.to_be_changed as toBeChanged',
    ])
    .orderBy('person.name_key')
    .orderBy('person.id')
    .execute();
  return {
    rows: rows.map(
      ({ roles, toBeChanged, ...row }): PersonRow => ({
        ...row,
        roles: storedRoles(roles),
        secret: toBeChanged === null ? 'none' : toBeChanged === 1 ? 'to be changed' : 'own',
      }),
    ),
    total: rows.length,
  };
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
  if (current && current.name !== data.name) await checkRename(context, current.id, data.name);
  const personId = id ?? newId();
  await append(context, [
    { kind: 'person saved', id: newId(), data: { id: personId, version: next, data, importId: null } },
  ]);
  return saved(personId, next);
};

/** Records show a person by name: whoever signs in under it is renamed by an administrator alone. */
async function checkRename(context: WriteContext, personId: string, name: string): Promise<void> {
  const secret = await context.db
    .selectFrom('person_secret')
    .select('person_id')
    .where('person_id', '=', personId)
    .executeTakeFirst();
  if (!secret) return;
  await checkNameIsFree(context, personId, name);
  if (context.actor?.roles.includes('administrator')) return;
  throw new RequestFailure('refused', 'Somebody who signs in is renamed by an administrator', [
    { field: 'data.name', value: name, allowed: 'the name as it is' },
  ]);
}
