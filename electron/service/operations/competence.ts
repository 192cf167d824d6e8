import type { Kysely } from 'kysely';
import { type CompetenceStanding, competenceOn } from '../../../core/access/competence.ts';
import type { CompetenceData } from '../../../core/contract/access.ts';
import type { Method } from '../../../core/contract/setting.ts';
import type { PersonCompetence } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import type { RegisterSchema } from '../register/schema.ts';

/** How the competence of one person stands on a day. */
export async function competenceOf(
  db: Kysely<RegisterSchema>,
  personId: string,
  method: Method,
  on: string,
): Promise<CompetenceStanding> {
  const rows = await db.selectFrom('competence').select('data').where('person_id', '=', personId).execute();
  return competenceOn(
    rows.map(({ data }) => JSON.parse(data) as CompetenceData),
    method,
    on,
  );
}

interface CompetencesOnRecord {
  readonly competences: readonly PersonCompetence[];
  readonly flags: readonly string[];
}

/**
 * How the competence of each person named on a record stands on its day, and what is flagged of it. Where competences
 * are kept, having none is flagged like a lapsed one; with sign-in alone it is told beside the record. A site that does
 * neither is not told the same of everybody with every record.
 */
export async function competencesOf(
  { db, actor }: Pick<WriteContext, 'db' | 'actor'>,
  personIds: readonly string[],
  method: Method,
  on: string,
): Promise<CompetencesOnRecord> {
  const kept = await db.selectFrom('competence').select('id').limit(1).executeTakeFirst();
  if (actor === null && kept === undefined) return { competences: [], flags: [] };
  const people = await db
    .selectFrom('person')
    .select(['id', 'name'])
    .where('id', 'in', [...personIds])
    .execute();
  const competences: PersonCompetence[] = [];
  for (const personId of personIds) {
    const name = people.find(({ id }) => id === personId)?.name ?? personId;
    competences.push({ personId, name, ...(await competenceOf(db, personId, method, on)) });
  }
  const against = kept === undefined ? [] : competences.filter(({ state }) => state !== 'qualified');
  return { competences, flags: against.map(inWords) };
}

/** What is not known and was not flagged. */
export function competenceNotes({
  competences = [],
  flags,
}: {
  readonly competences?: readonly PersonCompetence[];
  readonly flags: readonly string[];
}): string[] {
  return competences
    .filter(({ state }) => state !== 'qualified')
    .map(inWords)
    .filter((words) => !flags.includes(words));
}

function inWords({ name, state, reason }: PersonCompetence): string {
  if (state === 'not qualified') return `${name} is not qualified: ${reason}`;
  return `competence of ${name} ${state}: ${reason}`;
}
