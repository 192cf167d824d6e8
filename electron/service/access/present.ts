import type { Kysely } from 'kysely';
import { admission } from '../../../core/access/rights.ts';
import { rolesInWords } from '../../../core/access/roles.ts';
import { signedForAnother } from '../../../core/access/signers.ts';
import type { PresentRow, SignedInPerson } from '../../../core/contract/access.ts';
import type { RequestName } from '../../../core/contract/names.ts';
import type { Role } from '../../../core/contract/roles.ts';
import { RequestFailure } from '../failure.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { atSite } from '../time.ts';
import type { OpenSession, Session, Sessions } from './sessions.ts';

type Db = Kysely<RegisterSchema>;

/** A person as the register knows them now: roles that were taken away are gone at once. */
export async function signedInPerson(db: Db, session: Session): Promise<SignedInPerson | null> {
  const row = await db
    .selectFrom('person')
    .innerJoin('person_secret', 'person_secret.person_id', 'person.id')
    .leftJoin('person_roles', 'person_roles.person_id', 'person.id')
    .select(['person.id', 'person.name', 'person_roles.roles', 'person_secret.to_be_changed as toBeChanged'])
    .where('person.id', '=', session.personId)
    .where('person_secret.version', '=', session.secretVersion)
    .executeTakeFirst();
  if (!row) return null;
  return {
    personId: row.id,
    name: row.name,
    roles: storedRoles(row.roles),
    secretToBeChanged: row.toBeChanged === 1,
  };
}

export function storedRoles(text: string | null): Role[] {
  return text === null ? [] : (JSON.parse(text) as Role[]);
}

export async function presentAt(
  db: Db,
  sessions: Sessions,
  token: string | null,
): Promise<SignedInPerson | null> {
  const session = token === null ? null : sessions.find(token);
  return session === null ? null : signedInPerson(db, session);
}

/** Who is signed in now; a session that a changed secret has ended is nobody's. */
export async function everybodyPresent(
  db: Db,
  sessions: readonly OpenSession[],
  timeZone: string,
): Promise<PresentRow[]> {
  const secrets = await db.selectFrom('person_secret').select(['person_id', 'version']).execute();
  const open = sessions.filter(({ personId, secretVersion }) =>
    secrets.some((secret) => secret.person_id === personId && secret.version === secretVersion),
  );
  return [...Map.groupBy(open, ({ personId }) => personId)].map(([personId, windows]) => ({
    personId,
    since: atSite(new Date(Math.min(...windows.map(({ began }) => began))), timeZone),
    lastAsked: atSite(new Date(Math.max(...windows.map(({ lastAsked }) => lastAsked))), timeZone),
    windows: windows.length,
  }));
}

/** Refuses a request of a window at which nobody is signed in, before its input is looked at. */
export function checkPresent(name: RequestName, person: SignedInPerson | null): void {
  if (admission(name, null, null).is !== 'sign in first') return;
  if (person === null) {
    throw new RequestFailure(
      'not_signed_in',
      'Nobody is signed in at this window, or no longer. Nothing was done; sign in, then repeat it',
    );
  }
  if (person.secretToBeChanged && name !== 'access.changeSecret') {
    throw new RequestFailure(
      'refused',
      'The secret was given by an administrator; choose one of your own first',
    );
  }
}

/** Refuses what the person's roles don't reach, and a field in which they would sign for somebody else. */
export function checkAllowed(name: RequestName, input: unknown, person: SignedInPerson): void {
  const answer = admission(name, input, person.roles);
  if (answer.is === 'refused') {
    const may = rolesInWords(answer.roles);
    const has = person.roles.length === 0 ? 'no role' : rolesInWords(person.roles).replace(/ or /, ' and ');
    throw new RequestFailure('refused', `This is for ${may}; ${person.name} has ${has}. Nothing was done`, [
      { field: 'role', value: person.roles.join(', '), allowed: may },
    ]);
  }
  const [another] = signedForAnother(name, input, person.personId);
  if (another) {
    throw new RequestFailure('refused', `Nobody signs for another: ${person.name} is signed in`, [
      { field: another.field, value: another.personId, allowed: person.name },
    ]);
  }
}
