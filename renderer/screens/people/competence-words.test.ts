import { expect, test } from 'vitest';
import type { CompetenceRow } from '../../../core/contract/access.ts';
import { competenceData } from '../../../core/contract/access.ts';
import { bestOf, competenceWords } from './competence-words.ts';

const row = (state: CompetenceRow['state'], lastGoodDay: string | null, scheme = 'EN 1591-4') => ({
  id: crypto.randomUUID(),
  version: 1,
  person: 'A',
  state,
  lastGoodDay,
  data: competenceData.parse({ personId: crypto.randomUUID(), scheme, issuedOn: '2024-01-10' }),
});

test.each([
  [row('in date', '2029-01-09'), 'counts to 9 Jan 2029', false],
  [row('expired', '2026-03-15'), 'expired, counted to 15 Mar 2026', true],
  [row('withdrawn', '2029-01-09'), 'withdrawn', true],
  [row('not yet', '2029-01-09'), 'from 10 Jan 2024', false],
  [row('not known', null), 'last day not known', true],
])('one paper, %#', (given, words, against) => {
  expect(competenceWords(given)).toEqual({ words, against });
});

test('of several the one that counts longest; of none nothing is known, which is no pass', () => {
  const rows = [
    row('in date', '2027-01-09', 'Site'),
    row('in date', '2029-01-09'),
    row('expired', '2020-01-01'),
  ];
  expect(bestOf(rows)).toEqual({ words: 'EN 1591-4 counts to 9 Jan 2029', against: false });
  expect(bestOf([row('withdrawn', '2029-01-09'), row('expired', '2026-03-15')])).toEqual({
    words: 'EN 1591-4 expired, counted to 15 Mar 2026',
    against: true,
  });
  expect(bestOf([])).toEqual({ words: 'not known', against: true });
});
