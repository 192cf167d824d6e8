import type { Kysely } from 'kysely';
import { lastGoodDay } from '../../../core/access/competence.ts';
import type { Projector } from '../chain/projector.ts';
import { insertRows } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';

export const projectSignIn: Projector<'sign-in begun'> = async (db, events) => {
  for (const { id, recordedAt, data } of events) {
    await db
      .insertInto('sign_in')
      .values({ event_id: id, person_id: data.personId, begun_at: recordedAt })
      .execute();
    await link(db, id, data.personId);
  }
};

export const projectAccess: Projector<
  'signed in' | 'sign-in failed' | 'locked out' | 'secret changed'
> = async (db, events) => {
  for (const { id, data } of events) await link(db, id, data.personId);
};

export const projectRoles: Projector<'person roles saved'> = async (db, events) => {
  for (const { id, data } of events) {
    const row = { version: data.version, roles: JSON.stringify(data.roles) };
    await db
      .insertInto('person_roles')
      .values({ person_id: data.personId, ...row })
      .onConflict((conflict) => conflict.column('person_id').doUpdateSet(row))
      .execute();
    await link(db, id, data.personId);
  }
};

export const projectCompetences: Projector<'competence saved'> = async (db, events) => {
  for (const { id, data: saved } of events) {
    const { data } = saved;
    const row = {
      version: saved.version,
      person_id: data.personId,
      scheme: data.scheme,
      issued_on: data.issuedOn,
      last_good_day: lastGoodDay(data),
      withdrawn: data.withdrawn ? 1 : 0,
      data: JSON.stringify(data),
    };
    await db
      .insertInto('competence')
      .values({ id: saved.id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    await link(db, id, data.personId);
  }
};

/** A name that nobody has leads to nobody. */
async function link(db: Kysely<RegisterSchema>, eventId: string, personId: string | null): Promise<void> {
  if (personId === null) return;
  await insertRows(db, 'event_person', [
    { event_id: eventId, person_id: personId, role: 'access', position: 0 },
  ]);
}
