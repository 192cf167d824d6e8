import { isDeepStrictEqual } from 'node:util';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { RequestFailure } from '../failure.ts';
import { nextVersion, saved } from '../operations/edit.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import type { Write } from '../requests/handler.ts';
import { storedRoles } from './present.ts';
import { checkBegun, giveSecret } from './sign-in.ts';

export const saveRoles: Write<'person.saveRoles'> = async (context, { id, version, roles }) => {
  const { db, newId } = context;
  await checkBegun(context);
  await checkPerson(context, 'id', id);
  const current = await db
    .selectFrom('person_roles')
    .select(['version', 'roles'])
    .where('person_id', '=', id)
    .executeTakeFirst();
  const next = nextVersion('person’s roles', current ? id : null, version, current);
  if (current && isDeepStrictEqual(storedRoles(current.roles).toSorted(), roles.toSorted())) {
    return saved(id, current.version);
  }
  if (!roles.includes('administrator')) await checkAnotherAdministrator(context, id);
  await append(context, [
    { kind: 'person roles saved', id: newId(), data: { personId: id, version: next, roles } },
  ]);
  return saved(id, next);
};

/** Without one who can sign in, nobody could give roles or secrets ever again. */
async function checkAnotherAdministrator({ db }: WriteContext, personId: string): Promise<void> {
  const holders = await db
    .selectFrom('person_roles')
    .innerJoin('person_secret', 'person_secret.person_id', 'person_roles.person_id')
    .select(['person_roles.person_id as id', 'person_roles.roles'])
    .execute();
  const others = holders.filter(
    ({ id, roles }) => id !== personId && storedRoles(roles).includes('administrator'),
  );
  if (others.length > 0) return;
  throw new RequestFailure(
    'refused',
    'This is the only administrator who can sign in; name another one first',
    [{ field: 'roles', value: '', allowed: 'roles with administrator among them' }],
  );
}

export const giveSecretTo: Write<'access.giveSecret'> = async (context, input) => {
  await giveSecret(context, input);
  return saved(input.personId, null);
};
