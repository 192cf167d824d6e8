import { isDeepStrictEqual } from 'node:util';
import type { CompetenceData, CompetenceRow } from '../../../core/contract/access.ts';
import { append } from '../chain/append.ts';
import { invalidField } from '../failure.ts';
import { nextVersion, saved } from '../operations/edit.ts';
import { checkPerson } from '../operations/who-and-when.ts';
import { todayAt } from '../time.ts';
import type { Read, Write } from './handler.ts';

export const listCompetences: Read<'competence.list'> = async (context, { personId }) => {
  const rows = await context.db
    .selectFrom('competence')
    .innerJoin('person', 'person.id', 'competence.person_id')
    .select([
      'competence.id',
      'competence.version',
      'competence.last_good_day as lastGoodDay',
      'competence.data',
      'person.name as person',
    ])
    .$if(personId !== null, (query) => query.where('competence.person_id', '=', personId))
    .orderBy('person.name_key')
    .orderBy('competence.person_id')
    .orderBy('competence.issued_on')
    .orderBy('competence.id')
    .execute();
  const today = todayAt(context);
  return {
    rows: rows.map(({ data: text, ...row }) => {
      const data = JSON.parse(text) as CompetenceData;
      return { ...row, data, state: stateOf(data, row.lastGoodDay, today) };
    }),
    total: rows.length,
  };
};

function stateOf(
  { withdrawn, issuedOn }: CompetenceData,
  lastGoodDay: string | null,
  today: string,
): CompetenceRow['state'] {
  if (withdrawn) return 'withdrawn';
  if (issuedOn > today) return 'not yet';
  if (lastGoodDay === null) return 'not known';
  return lastGoodDay < today ? 'expired' : 'in date';
}

export const saveCompetence: Write<'competence.save'> = async (context, { id, version, data }) => {
  const { db, newId } = context;
  await checkPerson(context, 'data.personId', data.personId);
  const current =
    id === null
      ? null
      : await db
          .selectFrom('competence')
          .select(['version', 'data', 'person_id'])
          .where('id', '=', id)
          .executeTakeFirst();
  const next = nextVersion('competence', id, version, current);
  if (current && current.person_id !== data.personId) {
    throw invalidField(
      'data.personId',
      '',
      'the person it was entered for; enter another one for somebody else',
    );
  }
  if (current && isDeepStrictEqual(JSON.parse(current.data), data)) return saved(id ?? '', current.version);
  const competenceId = id ?? newId();
  await append(context, [
    { kind: 'competence saved', id: newId(), data: { id: competenceId, version: next, data } },
  ]);
  return saved(competenceId, next);
};
