import type { WriteContext } from '../context.ts';
import { notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';

/** Two people may bear one name, but not two who sign in: a name and a secret have to lead to one person. */
export async function checkNameIsFree(
  { db }: Pick<WriteContext, 'db'>,
  personId: string,
  newName: string | null = null,
): Promise<void> {
  const person = await db.selectFrom('person').select('name').where('id', '=', personId).executeTakeFirst();
  if (!person) throw notFound('person', 'personId', personId);
  const name = newName ?? person.name;
  const other = await db
    .selectFrom('person')
    .innerJoin('person_secret', 'person_secret.person_id', 'person.id')
    .select('person.id')
    .where('person.name_key', '=', nameKey(name))
    .where('person.id', '<>', personId)
    .executeTakeFirst();
  if (!other) return;
  throw new RequestFailure(
    'duplicate',
    `Somebody else signs in as "${name}"; give one of them a name that tells them apart`,
    [
      {
        field: newName === null ? 'personId' : 'data.name',
        value: name,
        allowed: 'a name nobody else signs in with',
      },
    ],
  );
}
