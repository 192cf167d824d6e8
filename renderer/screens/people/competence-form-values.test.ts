import { expect, test } from 'vitest';
import { competenceData } from '../../../core/contract/access.ts';
import { competenceForm, competenceInput, EMPTY_COMPETENCE } from './competence-form-values.ts';

const personId = '01990000-0000-7000-8000-000000000001';

test('what is stored comes back as it was, through the form', () => {
  const data = competenceData.parse({
    personId,
    scheme: 'EN 1591-4',
    certificate: 'K-7',
    methods: ['tensioner'],
    issuedOn: '2024-01-10',
    validUntil: '2028-01-09',
    restrictions: 'flat faces',
  });
  expect(competenceData.parse(competenceInput(competenceForm(data), personId))).toEqual(data);
});

test('a day left empty is one the paper does not state; one that is needed is refused by name', () => {
  const input = competenceInput({ ...EMPTY_COMPETENCE, scheme: 'Site scheme' }, personId);
  expect(input.validUntil).toBeNull();
  expect(competenceData.safeParse(input).error?.issues.map(({ path }) => path.join('.'))).toEqual([
    'issuedOn',
  ]);
});
